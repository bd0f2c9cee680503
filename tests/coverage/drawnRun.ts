import { tabFormat } from "../../samples/generator/logFormats.ts";
import { type RandomSource, randomSource } from "../../samples/generator/random.ts";
import { stairs } from "../../samples/generator/schedule.ts";
import { standLog } from "../../samples/generator/standLog.ts";
import { FLEXURE_STAND } from "../../samples/generator/stands.ts";
import { BENCH_SUPPLY, CONTROLLER_RESISTANCE, TRUE_MOTORS } from "../../samples/generator/truth.ts";
import { type RunRequest, reduceRun } from "../../shared/bench/reduceRun.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";

/** A run of which the truth is known: everything that was stated as uncertain is off by a draw from what was stated. */
export interface DrawnRun {
  readonly reduction: Reduction;
  readonly truth: { readonly thrustCoefficient: number; readonly powerCoefficient: number };
}

/** Celsius degrees that a stated water temperature is off by, one standard uncertainty; as the reduction takes it. */
const TEMPERATURE_UNCERTAINTY = 1;
const STATED_TEMPERATURE = 291.15;

/** Whether scales, callipers and thermometer are off as was stated, or exact: then only what the readings show is tried. */
export type Calibrated = "asStated" | "exactly";

/** One simulated run of a stand with force and torque cells, drawn from `seed`; the text of its log is read and reduced. */
export function drawnRun(seed: number, calibrated: Calibrated = "asStated"): DrawnRun {
  const { request, truth } = drawnRequest(seed, calibrated);
  return { reduction: reduceRun(request), truth };
}

/** The same before it is reduced. */
export function drawnRequest(
  seed: number,
  calibrated: Calibrated = "asStated",
): { readonly request: RunRequest; readonly truth: DrawnRun["truth"] } {
  const random = randomSource(seed, 7);
  // Neighbouring seeds of this generator start alike.
  for (let i = 0; i < 20; i++) random.uniform();
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const thrustCoefficient = between(0.12, 0.34);
  const torqueCoefficient = thrustCoefficient ** 1.5 / (2 * Math.PI * between(0.34, 0.55) * Math.sqrt(Math.PI / 2));
  const part = calibrated === "exactly" ? 0 : 1;
  const temperature = STATED_TEMPERATURE + part * TEMPERATURE_UNCERTAINTY * random.normal();
  const diameterUncertainty = part * between(0, 2e-4);
  const [forceUncertainty, torqueUncertainty] = [part * between(0, 0.01), part * between(0, 0.01)];
  const diameter = 0.076 + 1e-4 * random.normal();
  const text = standLog(
    {
      thruster: {
        motor: TRUE_MOTORS[random.uniform() < 0.5 ? "a" : "b"],
        propeller: { diameter, thrustCoefficient, torqueCoefficient },
        controllerResistance: CONTROLLER_RESISTANCE,
        supply: BENCH_SUPPLY,
        density: fluidProperties({ kind: "fresh", temperature }).density,
      },
      schedule: drawnStairs(random),
      stand: {
        ...FLEXURE_STAND,
        forceGain: 1 + forceUncertainty * random.normal(),
        forceTare: between(-1, 1),
        forceDrift: between(-0.1, 0.1),
        forceNoise: between(0.02, 0.15),
        slosh: between(0, 0.3),
        shake: between(0, 0.015),
        torqueGain: 1 + torqueUncertainty * random.normal(),
        torqueTare: between(-0.002, 0.002),
        torqueNoise: between(0.0005, 0.003),
        rotationNoise: between(0.0005, 0.003),
      },
      format: tabFormat(`draw ${seed}`),
      interval: [0.05, 0.08, 0.1][random.integer(0, 2)]!,
      jitter: 0.004,
      faults: { missing: 2, spikes: random.integer(0, 2), overflows: 0 },
    },
    random,
  );
  const measured = diameter + diameterUncertainty * random.normal();
  return {
    request: requestOf(text, { diameter: measured, diameterUncertainty, forceUncertainty, torqueUncertainty }),
    truth: { thrustCoefficient, powerCoefficient: 2 * Math.PI * torqueCoefficient },
  };
}

function drawnStairs(random: RandomSource) {
  const count = random.integer(4, 7);
  const levels = Array.from({ length: count }, (_, i) => 0.25 + (0.65 * i) / (count - 1));
  return stairs({ levels, hold: 5 + 5 * random.uniform(), rest: 5 + 4 * random.uniform() });
}

interface Stated {
  readonly diameter: number;
  readonly diameterUncertainty: number;
  readonly forceUncertainty: number;
  readonly torqueUncertainty: number;
}

function requestOf(text: string, stated: Stated): RunRequest {
  const roles = ["time", "command", "thrust", "torque", "rotationRate", "voltage", "current"];
  const units = ["s", "%", "N", "N·mm", "rpm", "V", "A"];
  return {
    table: readLog(new TextEncoder().encode(text), "draw.tsv"),
    recipe: Recipe.parse({
      columns: roles.map((role, column) => ({ column, role, unit: units[column] })),
      fluid: { kind: "fresh", temperature: STATED_TEMPERATURE },
      corrections: {
        thrust: { relativeUncertainty: stated.forceUncertainty },
        torque: { relativeUncertainty: stated.torqueUncertainty },
      },
    }),
    propeller: Propeller.parse({
      name: "drawn",
      diameter: stated.diameter,
      diameterUncertainty: stated.diameterUncertainty,
    }),
    source: { sha256: "0".repeat(64), program: "coverage study" },
  };
}

/** The coefficients whose intervals are tried, each with its true value. */
export const TRIED: readonly {
  readonly name: string;
  readonly of: (run: DrawnRun) => { readonly stated: Uncertain; readonly truth: number };
}[] = [
  {
    name: "K_T",
    of: ({ reduction, truth }) => ({ stated: reduction.thrustCoefficient, truth: truth.thrustCoefficient }),
  },
  {
    name: "C_P",
    of: ({ reduction, truth }) => ({ stated: reduction.powerCoefficient!, truth: truth.powerCoefficient }),
  },
  {
    name: "static merit",
    of: ({ reduction, truth }) => ({
      stated: reduction.staticMerit!,
      truth: truth.thrustCoefficient ** 1.5 / (truth.powerCoefficient * Math.sqrt(Math.PI / 2)),
    }),
  },
  { name: "exponent", of: ({ reduction }) => ({ stated: reduction.exponent!, truth: 2 }) },
  { name: "intercept", of: ({ reduction }) => ({ stated: reduction.intercept!, truth: 0 }) },
];

export interface Coverage {
  readonly name: string;
  /** Share of the 95 % intervals that hold the truth. */
  readonly covered: number;
  /** Standard deviation and mean of (estimate - truth) / standard uncertainty; near 1 and 0. */
  readonly deviation: number;
  readonly mean: number;
}

/** How often the stated intervals of `runs` hold the truth. */
export function coverageOf(runs: readonly DrawnRun[]): Coverage[] {
  return TRIED.map(({ name, of }) => {
    const outcomes = runs.map(of);
    const hits = outcomes.filter(
      ({ stated: { interval95 }, truth }) => interval95[0] <= truth && truth <= interval95[1],
    );
    const errors = outcomes.map(({ stated, truth }) => (stated.value - truth) / stated.standardUncertainty);
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    const deviation = Math.sqrt(errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / (errors.length - 1));
    return { name, covered: hits.length / runs.length, deviation, mean };
  });
}

import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";
import { normalFrom, quietStand, type Stand, simulatedLog, uniformFrom } from "../property/benchSimulatedRun.ts";
import { covers, share } from "../property/coverage.ts";
import { propellerOf, recipeOf, reduce } from "../unit/benchTable.ts";

/** A kind of stand and run, drawn anew for each seed; readings are all that is in doubt. */
export interface StandKind {
  readonly name: string;
  readonly drawn: (between: (low: number, high: number) => number) => Partial<Stand>;
}

const STEPS = (count: number) => Array.from({ length: count }, (_, i) => 15.13 + (30.2 * i) / Math.max(1, count - 1));
const THERE_AND_BACK = [...STEPS(6), ...STEPS(6).reverse().slice(1)];

export const STAND_KINDS: readonly StandKind[] = [
  { name: "white noise", drawn: (between) => ({ noiseFloor: between(0.02, 0.3) }) },
  { name: "white noise, up and down", drawn: (between) => ({ noiseFloor: between(0.02, 0.3), steps: THERE_AND_BACK }) },
  { name: "white noise, short holds", drawn: (between) => ({ noiseFloor: between(0.02, 0.3), dwell: 2, rest: 2 }) },
  { name: "white noise, two steps", drawn: (between) => ({ noiseFloor: between(0.02, 0.3), steps: STEPS(2) }) },
  { name: "white noise, three steps", drawn: (between) => ({ noiseFloor: between(0.02, 0.3), steps: STEPS(3) }) },
  { name: "one reading a second", drawn: () => ({ noiseFloor: 0.1, samplingRate: 1, dwell: 20, rest: 20 }) },
  {
    name: "slow noise AR(0.9)",
    drawn: () => ({ noiseFloor: 0.2, samplingRate: 20, correlation: 0.9, dwell: 8, rest: 8 }),
  },
  {
    name: "slow noise AR(0.97)",
    drawn: () => ({ noiseFloor: 0.2, samplingRate: 20, correlation: 0.97, dwell: 15, rest: 8 }),
  },
  {
    name: "slow noise AR(0.97), up and down",
    drawn: () => ({ noiseFloor: 0.2, samplingRate: 20, correlation: 0.97, dwell: 15, rest: 8, steps: THERE_AND_BACK }),
  },
  {
    name: "plateaus scatter by 1 %, up and down",
    drawn: (between) => ({ noiseFloor: between(0.02, 0.1), plateauScatter: 0.01, steps: THERE_AND_BACK }),
  },
  { name: "plateaus scatter by 1 %", drawn: (between) => ({ noiseFloor: between(0.02, 0.1), plateauScatter: 0.01 }) },
  { name: "straight drift", drawn: (between) => ({ noiseFloor: 0.08, drift: between(-0.5, 0.5) }) },
  {
    name: "drift that dies out",
    drawn: (between) => ({ noiseFloor: 0.08, drift: between(-0.5, 0.5), driftBend: 0.5 }),
  },
  { name: "drift that grows", drawn: (between) => ({ noiseFloor: 0.08, drift: between(-0.5, 0.5), driftBend: 1.8 }) },
  { name: "zero that bows out and back", drawn: (between) => ({ noiseFloor: 0.08, bow: between(-0.3, 0.3) }) },
  {
    name: "quiet scale with 5 g steps",
    drawn: (between) => ({ noiseFloor: 0.002, noisePart: 0, thrustStep: 0.049, zero: between(-1, 1) }),
  },
  {
    name: "tachometer with 30 rpm steps",
    drawn: (between) => ({ noiseFloor: 0.02, noisePart: 0, rateNoise: 0.02, rateStep: 0.5, zero: between(-1, 1) }),
  },
  { name: "tiring battery, glitches", drawn: () => ({ noiseFloor: 0.1, sag: 0.02, glitchChance: 0.005 }) },
];

/** One number of a reduced run with its truth. */
const TRIED: readonly {
  readonly name: string;
  readonly of: (run: Reduction, stand: Stand) => readonly [Uncertain, number];
}[] = [
  { name: "K_T", of: (run, stand) => [run.thrustCoefficient, stand.thrustCoefficient] },
  { name: "C_P", of: (run, stand) => [run.powerCoefficient!, 2 * Math.PI * stand.torqueCoefficient!] },
  { name: "K_Q", of: (run, stand) => [run.torqueCoefficient!, stand.torqueCoefficient!] },
  {
    name: "merit",
    of: (run, { thrustCoefficient, torqueCoefficient }) => [
      run.staticMerit!,
      thrustCoefficient ** 1.5 / (2 * Math.PI * torqueCoefficient! * Math.sqrt(Math.PI / 2)),
    ],
  },
  { name: "exponent", of: (run) => [run.exponent!, 2] },
  { name: "intercept", of: (run) => [run.intercept!, 0] },
];

export const TRIED_NAMES = TRIED.map(({ name }) => name);

/** Whether the interval of each tried number holds its truth, in one simulated run of a kind. */
function hitsOf(kind: StandKind, seed: number): boolean[] {
  const { stand, reduction } = runOf(kind, seed);
  return TRIED.map(({ of }) => {
    const [{ interval95 }, truth] = of(reduction, stand);
    return covers(interval95, truth);
  });
}

function runOf(kind: StandKind, seed: number): { stand: Stand; reduction: Reduction } {
  const uniform = uniformFrom(seed);
  // Neighbouring seeds of this generator start alike.
  for (let i = 0; i < 10; i++) uniform();
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const drawn = kind.drawn(between);
  const stand = quietStand({
    ...{ thrustCoefficient: between(0.12, 0.34), torqueCoefficient: between(0.02, 0.04), zero: between(-3, 3) },
    // No stand is taken to repeat better than this.
    ...{ noisePart: 0, rateNoise: 0.05, plateauScatter: 1e-4, torqueDrift: 0 },
    // A stated temperature is taken as known to 1 K.
    density: fluidProperties({ kind: "fresh", temperature: 291.15 + normalFrom(uniform)() }).density,
    ...drawn,
    steps: (drawn.steps ?? STEPS(5)).map((rate) => rate + between(-0.5, 0.5)),
  });
  const reduction = reduce({ table: simulatedLog(stand, uniform), recipe: RECIPE, propeller: propellerOf() });
  return { stand, reduction };
}

const RECIPE = recipeOf([
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["torque", "N·m"],
  ["command", "us"],
]);

/** Seeds apart enough that no two kinds share a run by chance. */
const SEED_STEP = 7919;

/** Share of the intervals of each tried number, in the order of `TRIED_NAMES`, that hold the truth in `runs` runs. */
export function coverageOfKind(kind: StandKind, runs: number, firstSeed: number): number[] {
  const hits = Array.from({ length: runs }, (_, i) => hitsOf(kind, firstSeed + SEED_STEP * i));
  return TRIED.map((_, k) => share(hits.map((hit) => hit[k]!)));
}

import { describe, expect, test } from "vitest";
import type { DragFit } from "../../shared/model/vehicle/dragFit.ts";
import { TowData } from "../../shared/model/vehicle/dragFit.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import { slowed } from "../../shared/vehicle/motion/closedForms.ts";
import { normalFrom } from "./benchSimulatedRun.ts";
import { covers, normalisedErrors, share } from "./coverage.ts";

const DRAWS = 400;
const TRUTH = 0.045;
const DENSITY = 1000;
/** b = ½ ρ C_D A, N·s²/m². */
const B = 22.5;

/** Noise of standard deviation 1 whose neighbours hang together by `rho`. */
function noiseFrom(seed: number, rho = 0): () => number {
  const normal = normalFrom(uniformsFrom(seed));
  let last = normal();
  return () => {
    const now = last;
    last = rho * last + Math.sqrt(1 - rho * rho) * normal();
    return now;
  };
}

const steps = (count: number, step: number) => Array.from({ length: count }, (_, i) => i * step);

function tow(seed: number, rho = 0): DragFit {
  const noise = noiseFrom(seed, rho);
  const time = steps(200, 0.1);
  const speed = time.map((_, i) => 0.4 + 0.3 * Math.floor(i / 50));
  const force = speed.map((V) => B * V * V + 1.5 * noise());
  return fitDrag(TowData.parse({ method: "tow", density: DENSITY, time, speed, force }));
}

function towTable(seed: number): DragFit {
  const noise = noiseFrom(seed);
  const speed = [0.4, 0.4, 0.7, 0.7, 1, 1, 1.3, 1.3];
  const force = speed.map((V) => B * V * V + noise());
  return fitDrag(TowData.parse({ method: "tow", density: DENSITY, speed, force }));
}

const BODY = { mass: 12.5, addedMass: 5, startSpeed: 1.5 };
const SLOWING = { quadratic: B / 17.5, linear: 0 };

function coastDown(seed: number, measured: "speed" | "distance", rho = 0): DragFit {
  const noise = noiseFrom(seed, rho);
  const draw = normalFrom(uniformsFrom(seed, 2));
  const time = steps(100, 0.08);
  const states = time.map((t) => slowed(SLOWING, BODY.startSpeed, t));
  const values = states.map((state) => state[measured] + (measured === "speed" ? 0.03 : 0.01) * noise());
  return fitDrag({
    ...{
      method: "coastDown",
      density: DENSITY,
      time,
      measured,
      values,
      model: "quadratic",
      valuesRelativeUncertainty: 0,
    },
    mass: { value: BODY.mass, standardUncertainty: 0 },
    addedMass: { value: BODY.addedMass + 0.2 * draw(), standardUncertainty: 0.2 },
  });
}

function terminal(seed: number, rho = 0): DragFit {
  const noise = noiseFrom(seed, rho);
  const time = steps(120, 0.1);
  const netWeight = -4;
  const speed = Math.sqrt(4 / B);
  const depth = time.map((t) => 8 - speed * t + 0.03 * noise());
  return fitDrag({
    ...{ method: "terminal", density: DENSITY, runs: [{ netWeight, time, depth }] },
    ...{ netWeightRelativeUncertainty: 0, depthRelativeUncertainty: 0 },
  });
}

function severalTerminal(seed: number): DragFit {
  const noise = noiseFrom(seed);
  const other = normalFrom(uniformsFrom(seed, 3));
  const runs = [2, 2, 4, 4, 8].map((netWeight) => {
    const time = steps(40, 0.2);
    // Each run goes a little differently, by something no single log shows.
    const speed = Math.sqrt(netWeight / B) + 0.01 * other();
    return { netWeight, time, depth: time.map((t) => speed * t + 0.01 * noise()) };
  });
  const none = { netWeightRelativeUncertainty: 0, depthRelativeUncertainty: 0 };
  return fitDrag({ method: "terminal", density: DENSITY, runs, ...none });
}

function timedRuns(seed: number): DragFit {
  const noise = noiseFrom(seed);
  const calibration = normalFrom(uniformsFrom(seed, 4))();
  const runs = [5, 5, 15, 15, 30, 30].map((thrust, i) => {
    const way = i % 2 === 0 ? ("there" as const) : ("back" as const);
    const speed = Math.sqrt(thrust / B) + (way === "there" ? 0.1 : -0.1) + 0.01 * noise();
    return { thrust: thrust * (1 + 0.03 * calibration), distance: 20, duration: 20 / speed, way };
  });
  const doubt = { thrustRelativeUncertainty: 0.03, speedRelativeUncertainty: 0 };
  return fitDrag({ method: "timedRuns", density: DENSITY, runs, ...doubt });
}

const WHITE = [
  { what: "a tow log of 200 rows", simulate: (seed: number) => tow(seed) },
  { what: "a table of eight tow points", simulate: towTable },
  { what: "speeds of a coast-down", simulate: (seed: number) => coastDown(seed, "speed") },
  { what: "distances of a coast-down", simulate: (seed: number) => coastDown(seed, "distance") },
  { what: "depths of one climb", simulate: (seed: number) => terminal(seed) },
  { what: "depths of five dives", simulate: severalTerminal },
  { what: "timed runs both ways in a current", simulate: timedRuns },
];

describe.each(WHITE)("C_D A from $what", ({ simulate }) => {
  const fits = Array.from({ length: DRAWS }, (_, i) => simulate(10_000 + i));

  test("its 95 % interval holds the truth in 93 to 97 % of 400 draws", () => {
    const covered = share(fits.map(({ dragArea }) => covers(dragArea.interval95, TRUTH)));
    expect(covered).toBeGreaterThanOrEqual(0.93);
    expect(covered).toBeLessThanOrEqual(0.97);
  });

  // Each of up to three tests is allowed one false alarm in a hundred; three standard errors of 400 draws on top.
  test("draws a warning in no more than 6 of 100 such good measurements", () => {
    expect(share(fits.map(({ warnings }) => warnings.length > 0))).toBeLessThanOrEqual(0.06);
  });

  test("is right on the average, and its standard uncertainty is of the right size", () => {
    const { mean, deviation } = normalisedErrors(fits.map(({ dragArea }) => ({ found: dragArea, truth: TRUTH })));
    expect(Math.abs(mean)).toBeLessThan(0.2);
    // An error over its own estimate is Student's t, whose variance is ν/(ν - 2).
    const dof = Math.min(...fits.map(({ degreesOfFreedom }) => degreesOfFreedom ?? 1e9));
    const expected = Math.sqrt(dof / (dof - 2));
    expect(deviation / expected).toBeGreaterThan(0.8);
    expect(deviation / expected).toBeLessThan(1.2);
  });
});

const CORRELATED = [
  { what: "tow", simulate: (seed: number) => tow(seed, 0.8) },
  { what: "coast-down", simulate: (seed: number) => coastDown(seed, "speed", 0.8) },
  { what: "climb", simulate: (seed: number) => terminal(seed, 0.8) },
];

test.each(CORRELATED)("errors of a $what that hang together by 0.8 widen the interval enough", ({ simulate }) => {
  const fits = Array.from({ length: DRAWS }, (_, i) => simulate(30_000 + i));
  const covered = share(fits.map(({ dragArea }) => covers(dragArea.interval95, TRUTH)));
  expect(covered).toBeGreaterThanOrEqual(0.91);
  expect(covered).toBeLessThanOrEqual(0.99);
});

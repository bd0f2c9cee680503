import { describe, expect, test } from "vitest";
import { type DragFitData, DragFitData as DragFitSchema } from "../../shared/model/vehicle/dragFit.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import { coastDown, startUp } from "../motionClosedForms.ts";

const parse = (data: Record<string, unknown>): DragFitData => DragFitSchema.parse({ density: 1000, ...data });
const TIME = Array.from({ length: 30 }, (_, i) => 0.2 * i);
const BODY = { mass: 17.5, quadratic: 22.5 };
const SPEEDS = TIME.map((t) => coastDown(BODY, 1.5, t).speed);
const coast = (more: Record<string, unknown>) =>
  parse({
    ...{ method: "coastDown", time: TIME, measured: "speed", values: SPEEDS },
    ...{ mass: { value: 12.5 }, addedMass: { value: 5 }, ...more },
  });
const dive = (netWeight: number, depth: (t: number) => number, more: Record<string, unknown> = {}) => ({
  ...{ netWeight, time: TIME, depth: TIME.map(depth) },
  ...more,
});
const terminal = (...runs: unknown[]) => parse({ method: "terminal", runs });
const tow = (speed: number[], force: number[], more: Record<string, unknown> = {}) =>
  parse({ method: "tow", speed, force, ...more });

test.each([
  {
    what: "a coast-down that speeds up",
    data: coast({ values: [...SPEEDS].reverse() }),
    code: "vehicle.coast-speeds-up",
    says: /from .* to .* m\/s without thrust/,
  },
  {
    what: "a coast-down astern",
    data: coast({ values: SPEEDS.map((V) => -V) }),
    code: "vehicle.coast-speeds-up",
    says: /starts with −/,
  },
  {
    what: "a distance that speeds up",
    data: coast({ measured: "distance", values: TIME.map((t) => t * t) }),
    code: "vehicle.coast-speeds-up",
    says: /without thrust/,
  },
  {
    what: "a coast-down of five rows",
    data: coast({ time: TIME.slice(0, 5), values: SPEEDS.slice(0, 5) }),
    code: "vehicle.fit-too-few",
    says: /5 rows/,
  },
  {
    what: "columns of unlike length",
    data: coast({ values: SPEEDS.slice(1) }),
    code: "vehicle.fit-lengths",
    says: /29 rows of speed, but 30 rows of time/,
  },
  {
    what: "a clock that goes back",
    data: coast({ time: TIME.map((t, i) => (i === 20 ? 0 : t)) }),
    code: "vehicle.fit-time-order",
    says: /time, row 21/,
  },
  {
    what: "a net weight of the wrong sign",
    data: terminal(dive(-3, (t) => 0.4 * t)),
    code: "vehicle.net-weight-sign",
    says: /sinks at 0\.400 m\/s with a net weight of −3\.00 N/,
  },
  {
    what: "a net weight of 0",
    data: terminal(dive(0, (t) => 0.4 * t)),
    code: "vehicle.net-weight-sign",
    says: /net weight of 0 N/,
  },
  {
    what: "ups and downs in one fit",
    data: terminal(
      dive(3, (t) => 0.4 * t),
      dive(-3, (t) => -0.4 * t),
    ),
    code: "vehicle.mixed-directions",
    says: /fit them apart/i,
  },
  {
    what: "a dive whose steady part is too short",
    data: terminal(dive(3, (t) => 0.4 * t, { steadyFrom: 5.5 })),
    code: "vehicle.fit-too-few",
    says: /run 1: 2 rows/,
  },
  { what: "one tow point", data: tow([1], [20]), code: "vehicle.fit-too-few", says: /1 row\./ },
  {
    what: "a force that pushes",
    data: tow([0.5, 1, 1.5], [-5, -20, -45]),
    code: "vehicle.fit-no-drag",
    says: /does not grow/,
  },
  { what: "a force of 0", data: tow([0.5, 1, 1.5], [0, 0, 0]), code: "vehicle.fit-no-drag", says: /does not grow/ },
  {
    what: "a timed run without time",
    data: parse({
      method: "timedRuns",
      runs: [
        { thrust: 5, distance: 10 },
        { thrust: 5, speed: 1 },
      ],
    }),
    code: "vehicle.run-no-speed",
    says: /run 1/,
  },
  {
    what: "a single timed run",
    data: parse({ method: "timedRuns", runs: [{ thrust: 5, speed: 1 }] }),
    code: "vehicle.fit-too-few",
    says: /at least 2/,
  },
  {
    what: "two timed runs that have nothing in common",
    data: parse({
      method: "timedRuns",
      runs: [
        { thrust: 5, speed: 0.1 },
        { thrust: 5, speed: 3 },
      ],
    }),
    code: "vehicle.fit-speed-not-shown",
    says: /no upper end/,
  },
])("$what is refused: $code", ({ data, code, says }) => {
  expect(() => fitDrag(data)).toThrow(says);
  expect(() => fitDrag(data)).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code }) }));
});

test("a cell that holds no number is named", () => {
  const data = { ...tow([1, 2, 3], [20, 80, 180]), speed: [1, Number.NaN, 3] } as DragFitData;
  expect(() => fitDrag(data)).toThrow(/speed, row 2: the cell holds no number/);
});

test("the example of fitDrag is 0.045 m²", () => {
  expect(fitDrag(tow([1, 2], [22.5, 90])).dragArea.value).toBeCloseTo(0.045, 12);
});

const noisy = (seed: number, deviation: number) => {
  const uniform = uniformsFrom(seed);
  // Even, not normal: only that it scatters matters here.
  return () => deviation * Math.sqrt(12) * (uniform() - 0.5);
};

describe("warnings stand next to the result", () => {
  const noise = noisy(3, 0.02);
  const ramp = Array.from({ length: 100 }, (_, i) => 0.3 + 0.01 * i);
  test.each([
    {
      code: "vehicle.coast-added-mass",
      data: parse({ method: "coastDown", time: TIME, measured: "speed", values: SPEEDS, mass: { value: 12.5 } }),
    },
    { code: "vehicle.fit-narrow-speeds", data: tow([1, 1.1, 1.2, 1, 1.1], [22, 27.5, 32, 23, 27]) },
    { code: "vehicle.fit-few-points", data: tow([0.5, 1, 1.5], [5.5, 22, 51]) },
    { code: "vehicle.fit-drag-not-shown", data: tow([0.5, 0.6, 0.9], [-8, 20, 9]) },
    {
      code: "vehicle.fit-not-steady",
      data: tow(
        ramp,
        ramp.map((V) => 22.5 * V * V),
        { time: ramp.map((_, i) => 0.05 * i) },
      ),
    },
    {
      code: "vehicle.fit-not-steady",
      data: terminal(dive(4, (t) => startUp(BODY, 4, t).distance + noise())),
    },
    {
      code: "vehicle.fit-one-way",
      data: parse({
        method: "timedRuns",
        runs: [
          { thrust: 5, speed: 0.47 },
          { thrust: 20, speed: 0.95 },
        ],
      }),
    },
  ])("$code", ({ code, data }) => {
    const fit = fitDrag(data);
    expect(fit.warnings.map((one) => one.code)).toContain(code);
    expect(fit.dragArea.value).toBeGreaterThan(0);
  });

  test("a good dive has none, and its sentence has number, doubt and unit", () => {
    const steady = dive(4, (t) => 10 + Math.sqrt(4 / 22.5) * t + noise());
    const fit = fitDrag(terminal(steady));
    expect(fit.warnings).toEqual([]);
    expect(fit.sentence).toMatch(
      /^C_D A is 0\.04\d* (± 0\.00\d*|\(0\.04\d* to 0\.04\d*\))\sm² \(95 %\), from 1 run at terminal speed/,
    );
  });

  test("a start that is not steady may be cut off", () => {
    const start = dive(4, (t) => startUp(BODY, 4, 3 * t).distance + noise(), { steadyFrom: 3.5 });
    expect(fitDrag(terminal(start)).warnings).toEqual([]);
  });
});

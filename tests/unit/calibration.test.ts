import { describe, expect, test } from "vitest";
import { calibrationOf } from "../../shared/calibration/calibrationOf.ts";
import { calibrationTable } from "../../shared/calibration/calibrationTable.ts";
import { calibrationWarnings } from "../../shared/calibration/calibrationWarnings.ts";
import { calibrationSentence } from "../../shared/calibration/calibrationWords.ts";
import { directionsOf } from "../../shared/calibration/direction.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { Instrument } from "../../shared/model/instrument.ts";

const pairs = (points: readonly (readonly [number, number])[]) =>
  points.map(([applied, reading]) => ({ applied, reading }));
const SCALE = pairs([
  [0, 1],
  [500, 501],
  [1000, 1002],
  [1500, 1501],
  [2000, 2003],
  [1500, 1502],
  [1000, 1001],
  [500, 502],
  [0, 1],
]);

const thrust = (calibration: object) => Instrument.parse({ name: "cell", role: "thrust", calibration });
const weights = (more: object = {}) =>
  thrust({ kind: "deadWeights", appliedUnit: "g", readingUnit: "gf", points: SCALE, ...more });
const arm = (millimetres: number, tolerance = 0) => ({ length: millimetres / 1000, tolerance: tolerance / 1000 });

describe("arms, dividers and markers", () => {
  test("a lever turns scale force into propeller force by the ratio of its arms, each with its tolerance over √3", () => {
    const lever = thrust({ kind: "lever", scaleArm: arm(300, 0.5), propellerArm: arm(240, 0.5) });
    const { factor, relativeUncertainty } = calibrationOf(lever);
    expect(factor).toBeCloseTo(1.25, 12);
    // Rectangular half-width a: a/√3, JCGM 100:2008 (GUM), 4.3.7; ratio of independent arms: 5.1.6.
    // sqrt((0.5/300)² + (0.5/240)²) / √3 = 0.001540352, python3 math.hypot.
    expect(relativeUncertainty).toBeCloseTo(0.001540352, 8);
  });

  test("a divider of 100 kΩ over 10 kΩ is eleven to one", () => {
    const calibration = { kind: "divider", upperResistance: 1e5, lowerResistance: 1e4, resistorTolerance: 0.01 };
    const { factor, relativeUncertainty } = calibrationOf(
      Instrument.parse({ name: "tap", role: "voltage", calibration }),
    );
    expect(factor).toBeCloseTo(11, 12);
    // ∂k/k = (10/11)(∂R1/R1 - ∂R2/R2): 10/11 × sqrt(2) × 0.01/√3 = 0.007422696, GUM 5.1.2, python3.
    expect(relativeUncertainty).toBeCloseTo(0.007422696, 8);
  });

  test.each([
    { role: "rotationRate", calibration: { kind: "markers", pulsesPerTurn: 3 }, factor: 1 / 3 },
    { role: "voltage", calibration: { kind: "reference", unit: "V", applied: 12.6, reading: 12 }, factor: 1.05 },
    // 1 gf = 9.80665e-3 N exactly (3rd CGPM, 1901), on an arm of 0.1 m.
    { role: "torque", calibration: { kind: "torqueArm", readingUnit: "gf", arm: arm(100) }, factor: 9.80665e-4 },
  ])("$calibration.kind gives the factor $factor", ({ role, calibration, factor }) => {
    expect(calibrationOf(Instrument.parse({ name: "x", role, calibration })).factor).toBeCloseTo(factor, 12);
  });
});

describe("dead weights", () => {
  test("give newton by gram-force, a zero, and the tolerances of weights and gravity", () => {
    const { factor, offset, scaleParts, range } = calibrationOf(weights({ appliedTolerance: 0.005 }));
    expect(factor / 9.80665e-3).toBeCloseTo(1, 2);
    expect(offset).toBeGreaterThan(0);
    expect(range?.[1]).toBeCloseTo(2 * 9.80665, 9);
    expect(scaleParts.map(({ name }) => name)).toEqual([
      "tolerance of the weights",
      "gravity, taken as the standard value",
    ]);
    expect(scaleParts[0]?.relative).toBeCloseTo(0.0028868, 7);
  });
  test("laid on the scale count with the arms, and pulled at the propeller without", () => {
    const lever = { scaleArm: arm(300), propellerArm: arm(240) };
    expect(calibrationOf(weights({ lever })).factor).toBeCloseTo(1.25 * calibrationOf(weights()).factor, 12);
  });
  test("where gravity was stated bring no doubt of it, and scale with it", () => {
    const { factor, scaleParts } = calibrationOf(weights({ gravity: 9.81 }));
    expect(factor / calibrationOf(weights()).factor).toBeCloseTo(9.81 / 9.80665, 12);
    expect(scaleParts).toEqual([]);
  });
  test("on an arm give a torque, and need the arm", () => {
    const torque = (more: object) =>
      Instrument.parse({
        name: "x",
        role: "torque",
        calibration: { kind: "deadWeights", appliedUnit: "g", readingUnit: "counts", points: SCALE, ...more },
      });
    expect(calibrationOf(torque({ arm: arm(100) })).factor).toBeCloseTo(0.1 * calibrationOf(weights()).factor, 12);
    expect(() => calibrationOf(torque({}))).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "calibration.no-arm" }) }),
    );
  });
  test.each([
    { unit: "gf", factor: 9.80665e-3 },
    { unit: "N", factor: 1 },
    { unit: "counts", factor: null },
    { unit: "", factor: null },
  ])("read in $unit are converted only where it is a unit of force", ({ unit, factor }) => {
    expect(calibrationOf(weights({ readingUnit: unit })).readingFactor).toBe(factor);
  });
  test("read in whole steps are not believed to be finer than a step over √12", () => {
    const exact = pairs([0, 500, 1000, 1500, 2000].map((load) => [load, load] as const));
    const { lineUncertainty, degreesOfFreedom } = calibrationOf(weights({ points: exact }));
    // 1/√12 over sqrt(Σ (x - x̄)²) = sqrt(2.5e6): 1.825742e-4, GUM F.2.2.1, python3.
    expect(lineUncertainty).toBeCloseTo(1.825742e-4, 9);
    expect(degreesOfFreedom).toBe(Infinity);
  });
});

const FRICTION = pairs([
  [0, 0],
  [500, 498],
  [1000, 995],
  [1500, 1494],
  [2000, 2000],
  [1500, 1512],
  [1000, 1016],
  [500, 513],
  [0, 3],
]);

test.each([
  { name: "a sound table", points: SCALE, codes: ["calibration.no-tolerance"] },
  { name: "friction", points: FRICTION, codes: ["calibration.hysteresis", "calibration.no-tolerance"] },
  {
    name: "the way up alone",
    points: SCALE.slice(0, 5),
    codes: ["calibration.one-way", "calibration.no-tolerance"],
  },
  {
    name: "three points",
    points: SCALE.slice(0, 3),
    codes: ["calibration.few-points", "calibration.one-way", "calibration.no-tolerance"],
  },
  {
    name: "a slip of the pen",
    points: SCALE.with(3, { applied: 1500, reading: 1571 }),
    codes: ["calibration.outlier", "calibration.no-tolerance"],
  },
  {
    name: "a bend",
    points: SCALE.map(({ applied, reading }) => ({ applied, reading: reading - (applied / 300) ** 2 })),
    codes: ["calibration.curved", "calibration.no-tolerance"],
  },
])("$name is told: $codes", ({ points, codes }) => {
  const instrument = weights({ points });
  expect(calibrationWarnings(instrument, calibrationOf(instrument)).map(({ code }) => code)).toEqual(codes);
});

test.each([
  {
    instrument: weights({ points: FRICTION }),
    says: /^1 gf of reading is 0\.009\d* N ± [\d.]+\s%; the zero is uncertain by [\d.]+ N\. Unloading read 0\.\d+\s% of span higher than loading: friction/,
  },
  { instrument: weights(), says: /Neither friction nor curvature shows\.$/ },
  {
    instrument: Instrument.parse({
      name: "x",
      role: "rotationRate",
      calibration: { kind: "markers", pulsesPerTurn: 3 },
    }),
    says: /^3 pulses are one turn/,
  },
])("the answer comes first: $says", ({ instrument, says }) => {
  expect(calibrationSentence(instrument, calibrationOf(instrument))).toMatch(says);
});

test.each([
  { points: [], code: "calibration.too-few-points" },
  {
    points: [
      [1, 1],
      [1, 2],
      [1, 3],
    ],
    code: "calibration.one-load",
  },
  {
    points: [
      [1, 5],
      [2, 5],
      [3, 5],
    ],
    code: "calibration.no-response",
  },
] as const)("a table of $points is refused: $code", ({ points, code }) => {
  const instrument = weights();
  const method = { ...instrument.calibration, points: pairs(points) } as Instrument["calibration"];
  expect(() => calibrationOf({ ...instrument, calibration: method })).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code }) }),
  );
});

test("a method that does not belong to the channel is refused", () => {
  const calibration = { kind: "markers", pulsesPerTurn: 3 };
  expect(Instrument.safeParse({ name: "x", role: "thrust", calibration }).success).toBe(false);
});

test("the way up and the way down are told from the order, also of negative loads", () => {
  expect(
    directionsOf(
      pairs([
        [0, 0],
        [-5, 0],
        [-5, 0],
        [-2, 0],
        [0, 0],
      ]),
    ),
  ).toEqual(["loading", "loading", "loading", "unloading", "unloading"]);
});

const read = (text: string) => calibrationTable(readLog(new TextEncoder().encode(text), "weights.csv"));

describe("a table from a file", () => {
  test.each([
    { text: "mass (g),reading (gf)\n0,1\n500,501\n1000,1002\n", why: "commas" },
    { text: "mass (g);reading (gf)\n0;1,0\n500;501,0\n1000;1002,0\n", why: "decimal commas" },
    { text: "reading (gf)\tmass (g)\n1\t0\n501\t500\n1002\t1000\n", why: "the other way round" },
  ])("is read with its units ($why)", ({ text }) => {
    expect(read(text)).toEqual({ appliedUnit: "g", readingUnit: "gf", points: SCALE.slice(0, 3) });
  });
  test.each([
    { text: "mass,reading\n0,1\n500,501\n1000,1002\n", code: "calibration.no-unit" },
    { text: "mass (g),reading (gf),note (s)\n0,1,1\n500,501,1\n1000,1002,1\n", code: "calibration.two-columns" },
    { text: "mass (g),reading (gf)\n0,1\n500,\n1000,1002\n", code: "calibration.gap" },
  ])("is refused with $code where it must be", ({ text, code }) => {
    expect(() => read(text)).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code }) }));
  });
});

import { describe, expect, test } from "vitest";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { codesOf, problemOf } from "./propellerProblems.ts";

describe("thrust at speed", () => {
  const request = {
    bollard: {
      thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 },
      torqueCoefficient: { value: 0.03, standardUncertainty: 0.0005 },
    },
    diameter: 0.076,
    density: 998.6,
    fixed: { given: "rotationRate", rotationRate: 45 },
    speeds: [0, 1],
  };
  const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.8 };
  // K_T = 0.25 - 0.2 J and C_P = 0.19 - 0.1 J, measured from J = 0.1 to 0.5.
  const openWater = {
    range: [0.1, 0.5],
    thrustCurve: {
      coefficients: [0.25, -0.2],
      covariance: [
        [1e-6, 0],
        [0, 1e-6],
      ],
    },
    powerCurve: {
      coefficients: [0.19, -0.1],
      covariance: [
        [1e-6, 0],
        [0, 1e-6],
      ],
    },
  };
  const bladeElements = [
    { advanceRatio: 0, thrustCoefficient: 0.2, torqueCoefficient: 0.025 },
    { advanceRatio: 0.5, thrustCoefficient: 0.1, torqueCoefficient: 0.02 },
    { advanceRatio: 1, thrustCoefficient: -0.01, torqueCoefficient: 0.01 },
  ];
  const at = (changes: object = {}) => thrustAtSpeed(ThrustAtSpeedRequest.parse({ ...request, ...changes }));

  test.each([
    { given: {}, source: "momentum" },
    { given: { bladeElements }, source: "bladeElements" },
    { given: { bladeElements, series }, source: "series" },
    { given: { bladeElements, series, openWater }, source: "openWater" },
    { given: { bladeElements, series, openWater, use: "bladeElements" }, source: "bladeElements" },
  ])("of what is given, $source is used, and the others stand beside it", ({ given, source }) => {
    const result = at(given);
    expect(result.source).toBe(source);
    expect(result.reason).toMatch(/\.$/);
    const others = ["openWater", "series", "bladeElements", "momentum"].filter(
      (one) => one !== source && (one === "momentum" || one in given),
    );
    expect(result.alternatives.map((alternative) => alternative.source)).toEqual(others);
  });

  test("a measured curve is used as it was measured, with its own doubt, and a wider one outside its range", () => {
    const { curve, points, warnings } = at({ openWater });
    const [rest, moving] = points;
    if (rest?.state !== "solved" || moving?.state !== "solved") throw new Error("no thrust");
    const J = 1 / (45 * 0.076);
    expect(moving.thrust.value).toBeCloseTo((0.25 - 0.2 * J) * 998.6 * 45 ** 2 * 0.076 ** 4, 9);
    const inside = curve.find(({ advanceRatio }) => advanceRatio > 0.2)!;
    const outside = curve.find(({ advanceRatio }) => advanceRatio > 0.7)!;
    expect(inside.thrustParts.shape).toBe(0);
    expect(outside.thrustParts.shape).toBeGreaterThan(0);
    expect(codesOf({ warnings })).toEqual(["propeller.curve-not-from-rest"]);
  });

  test("curves that disagree widen the band by what they differ in, over sqrt(3)", () => {
    const { curve } = at({ series, bladeElements });
    const both = curve.at(20)!;
    const { alternatives } = at({ series, bladeElements });
    const other = alternatives.find(({ source }) => source === "bladeElements")!.points;
    const J = both.advanceRatio;
    const after = other.findIndex(({ advanceRatio }) => advanceRatio >= J);
    const [low, high] = [other[after - 1]!, other[after]!];
    const part = (J - low.advanceRatio) / (high.advanceRatio - low.advanceRatio);
    const there = low.thrustCoefficient + part * (high.thrustCoefficient - low.thrustCoefficient);
    expect(both.thrustParts.spread).toBeCloseTo(Math.abs(there - both.thrustCoefficient.value) / Math.sqrt(3), 9);
  });

  test("past the end of the thrust a point says why it is missing", () => {
    const [point] = at({ series, speeds: [3.4] }).points;
    expect(point).toMatchObject({ state: "failed", reason: expect.stringContaining("the thrust ends at 0.881") });
  });

  test("where a measured curve is carried on to no torque, that point alone fails", () => {
    const powerCurve = { ...openWater.powerCurve, coefficients: [0.19, -0.3] };
    const { points } = at({ openWater: { ...openWater, powerCurve }, speeds: [1, 2.4] });
    expect(points.map(({ state }) => state)).toEqual(["solved", "failed"]);
    expect(points[1]).toHaveProperty("reason", expect.stringContaining("no torque"));
    const noneAtRest = { ...openWater, powerCurve: { ...powerCurve, coefficients: [-0.01, 0.3] } };
    const fixed = { given: "shaftPower", shaftPower: 40 };
    expect(at({ openWater: noneAtRest, fixed, speeds: [0] }).points[0]).toMatchObject({ state: "failed" });
  });

  test("momentum theory alone says that it knows no pitch", () => {
    expect(codesOf(at())).toEqual(["propeller.pitch-unknown"]);
    expect(codesOf(at({ speeds: [0] }))).toEqual([]);
  });

  test("in a nozzle momentum theory alone keeps the merit at rest too, and falls faster with speed than an open disc", () => {
    const thrusts = [null, 1].map((nozzleAreaRatio) =>
      at({ nozzleAreaRatio }).points.map((point) => (point.state === "solved" ? point.thrust.value : Number.NaN)),
    );
    const [open, nozzle] = thrusts as [number[], number[]];
    expect(nozzle[0]! / open[0]!).toBeCloseTo(1, 9);
    expect(nozzle[1]!).toBeLessThan(open[1]!);
  });

  test("at a fixed power thrust falls with speed and stays below what momentum theory allows", () => {
    const { points } = at({ series, fixed: { given: "shaftPower", shaftPower: 43 }, speeds: [0, 0.5, 1, 1.5, 2] });
    let before = Number.POSITIVE_INFINITY;
    for (const point of points) {
      if (point.state !== "solved") throw new Error(point.reason);
      expect(point.thrust.value).toBeLessThan(before);
      expect(point.thrust.value).toBeLessThan(point.idealThrust);
      before = point.thrust.value;
    }
  });

  test("the doubt at a fixed power is that of both coefficients: what a changed K_Q does agrees with solving again", () => {
    const powered = { ...request, series, fixed: { given: "shaftPower", shaftPower: 43 }, speeds: [1] };
    const thrustOf = (K_Q: number) => {
      const { thrustCoefficient } = request.bollard;
      const bollard = { thrustCoefficient: { value: thrustCoefficient.value }, torqueCoefficient: { value: K_Q } };
      const [point] = at({ ...powered, bollard }).points;
      if (point?.state !== "solved") throw new Error("no thrust");
      return point;
    };
    const step = 1e-5;
    const numeric = (thrustOf(0.03 * (1 + step)).thrust.value - thrustOf(0.03 * (1 - step)).thrust.value) / (2 * step);
    const shapeOnly = thrustOf(0.03).thrust.standardUncertainty;
    const bollard = {
      thrustCoefficient: { value: 0.25 },
      torqueCoefficient: { value: 0.03, standardUncertainty: 0.003 },
    };
    const [doubtful] = at({ ...powered, bollard }).points;
    if (doubtful?.state !== "solved") throw new Error("no thrust");
    const added = Math.sqrt(doubtful.thrust.standardUncertainty ** 2 - shapeOnly ** 2);
    expect(added / Math.abs(numeric * 0.1)).toBeCloseTo(1, 4);
  });

  // At rest and fixed power T goes with K_T K_Q^(-2/3), so u²(T)/T² = a² + (2b/3)² - (4/3) r a b (GUM 5.2.2, equation 16): with
  // a of 2 % and b of 3 % nothing for r = 1, 4 % for r = -1.
  test.each([
    { correlation: 1, relative: 0 },
    { correlation: 0, relative: Math.sqrt(8) / 100 },
    { correlation: -1, relative: 0.04 },
  ])("with a correlation of $correlation at rest the doubt of the thrust at fixed power is $relative", (row) => {
    const bollard = {
      thrustCoefficient: { value: 0.25, standardUncertainty: 0.005 },
      torqueCoefficient: { value: 0.03, standardUncertainty: 0.0009 },
      correlation: row.correlation,
    };
    const [point] = at({ series, bollard, fixed: { given: "shaftPower", shaftPower: 43 }, speeds: [0] }).points;
    if (point?.state !== "solved") throw new Error("no thrust");
    expect(point.thrust.standardUncertainty / point.thrust.value).toBeCloseTo(row.relative, 9);
  });

  test.each([
    { points: [{ ...bladeElements[0], advanceRatio: 0.1 }, bladeElements[1]], where: "bladeElements[0].advanceRatio" },
    { points: [bladeElements[0], bladeElements[2], bladeElements[1]], where: "bladeElements[2].advanceRatio" },
  ])("points that do not begin at rest or do not rise are refused at $where", ({ points, where }) => {
    expect(() => at({ bladeElements: points })).toThrow(problemOf("propeller.curve-order", where));
  });

  test("a curve that is asked for and not given is refused with those there are", () => {
    expect(() => at({ series, use: "openWater" })).toThrow(/Needed: series or momentum/);
  });
});

import { describe, expect, test } from "vitest";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";

const problemOf = (code: string, where: string) =>
  expect.objectContaining({ problem: expect.objectContaining({ code, where }) });

const codesOf = ({ warnings }: { readonly warnings: readonly { readonly code: string }[] }) =>
  warnings.map(({ code }) => code);

describe("cavitation", () => {
  const thruster = {
    thrust: 20,
    rotationRate: 45,
    diameter: 0.076,
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 0.8,
    shaftImmersion: 0.5,
    fluid: { kind: "fresh", temperature: 288.15 },
  };
  const judged = (changes: object = {}) => cavitation(CavitationRequest.parse({ ...thruster, ...changes }));

  test("a small thruster lies off the chart to the safe side, where no line is read", () => {
    const result = judged();
    expect(result.cavitationNumber).toBeGreaterThan(2);
    expect(codesOf(result)).toContain("propeller.off-burrill-chart");
    expect(result.lines.every(({ limit }) => limit === null)).toBe(true);
    expect(result.answer).toContain("beyond the chart");
    expect(result.lines[0]).toMatchObject({ line: "light", state: "unjudged", depthNeeded: null });
  });

  test("a lightly loaded one off the chart is judged by the chart's end, which is stricter", () => {
    const result = judged({ thrust: 3 });
    expect(result.lines.map(({ state }) => state)).toEqual(["below", "below", "below", "below", "below"]);
    expect(result.depthFreeOfCavitation).toBe(0);
    expect(result.answer).toContain("Under all limit lines");
  });

  test("a loading within a tenth of a line is near it, because the line is known no better", () => {
    const onChart = { rotationRate: 80, shaftImmersion: 0.1 };
    const limit = judged(onChart).lines[1]!.limit!;
    const { loading } = judged(onChart);
    const states = [0.85, 0.95, 1.05, 1.15].map(
      (factor) => judged({ ...onChart, thrust: (20 * factor * limit) / loading }).lines[1]!.state,
    );
    expect(states).toEqual(["below", "near", "near", "above"]);
  });

  test("sea water is heavier and boils later than fresh water: its cavitation number is its own", () => {
    const sea = judged({ fluid: { kind: "sea", temperature: 288.15, salinity: 35 } });
    expect(sea.cavitationNumber).not.toBe(judged().cavitationNumber);
  });

  test.each([
    { depth: 0.03, verdict: "likely" },
    { depth: 0.2, verdict: "possible" },
    { depth: 0.5, verdict: "unlikely" },
  ])("with the shaft $depth m deep air is $verdict", ({ depth, verdict }) => {
    const result = judged({ shaftImmersion: depth });
    expect(result.ventilation.verdict).toBe(verdict);
    expect(codesOf(result).includes("propeller.draws-air")).toBe(verdict === "likely");
  });

  test("a light propeller is not said to draw air only because it is shallow", () => {
    expect(judged({ thrust: 0.5, shaftImmersion: 0.06 }).ventilation.verdict).not.toBe("likely");
  });

  test("a nozzle that carries thrust makes the water move faster through the disc, so that air comes from deeper", () => {
    const open = judged().ventilation;
    const nozzle = judged({ thrust: 10, nozzleThrust: 10 }).ventilation;
    expect(nozzle.drawdown).toBeGreaterThan(open.drawdown);
  });
});

describe("carrying coefficients over", () => {
  const fresh = { kind: "fresh", temperature: 291.15 };
  const measured = {
    fluid: fresh,
    rotationRate: 45,
    diameter: 0.076,
    thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 },
    torqueCoefficient: { value: 0.03, standardUncertainty: 0.0005 },
    tankWidth: 0.6,
    tankDepth: 0.5,
  };
  const target = { fluid: fresh, rotationRate: 45, diameter: 0.076 };
  const blade = { bladeCount: 3, chordRatio: 0.28, pitchRatio: 0.9 };
  const carried = (changes: { measured?: object; target?: object; blade?: object } = {}) =>
    carryOver(
      CarryOverRequest.parse({
        measured: { ...measured, ...changes.measured },
        target: { ...target, ...changes.target },
        blade: { ...blade, ...changes.blade },
      }),
    );
  const factorOf = (result: ReturnType<typeof carried>, cause: string) =>
    result.factors.find((factor) => factor.cause === cause);

  test("only what changes is listed, and the doubt of the stand is kept", () => {
    const result = carried();
    expect(result.factors.map(({ cause }) => cause)).toEqual(["reynolds", "returnFlow"]);
    expect(factorOf(result, "reynolds")).toMatchObject({ thrust: 1, torque: 1, thrustUncertainty: 0 });
    expect(codesOf(result)).toEqual([]);
  });

  test("from air to water the Reynolds number rises: more thrust, less torque, and more doubt", () => {
    const air = { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 };
    const result = carried({ measured: { fluid: air, rotationRate: 120 } });
    const reynolds = factorOf(result, "reynolds")!;
    expect(result.reynolds.target!).toBeGreaterThan(result.reynolds.measured!);
    expect(reynolds.thrust).toBeGreaterThan(1);
    expect(reynolds.torque).toBeLessThan(1);
    expect(reynolds.thrustUncertainty).toBeGreaterThan(0.005);
    expect(factorOf(result, "density")!.thrust).toBeCloseTo(998.6 / 1.199, -1);
  });

  test("above Re 2e5 on both sides the change is that of drag alone, with a quarter of it as doubt", () => {
    const fast = { rotationRate: 200, diameter: 0.2 };
    const result = carried({
      measured: { ...fast, tankWidth: 3, tankDepth: 3 },
      target: { ...fast, rotationRate: 100 },
    });
    const reynolds = factorOf(result, "reynolds")!;
    expect(result.reynolds.target).toBeGreaterThan(2e5);
    expect(reynolds.torque).toBeGreaterThan(1);
    expect(reynolds.torqueUncertainty).toBeCloseTo((0.25 * (reynolds.torque - 1)) / reynolds.torque, 12);
  });

  test("the return flow of a tank is between nothing and an inflow, larger in a smaller tank", () => {
    const small = factorOf(carried({ measured: { tankWidth: 0.3, tankDepth: 0.25 } }), "returnFlow")!;
    const large = factorOf(carried({ measured: { tankWidth: 3, tankDepth: 2.5 } }), "returnFlow")!;
    expect(small.thrust).toBeGreaterThan(large.thrust);
    expect(large.thrust).toBeGreaterThan(1);
    // A rectangular distribution from 1: the doubt is the excess over sqrt(3) (GUM 4.3.7).
    expect(small.thrustUncertainty * small.thrust).toBeCloseTo((small.thrust - 1) / Math.sqrt(3), 12);
  });

  test("a disc that fills a third of the tank is refused", () => {
    const tiny = { tankWidth: 0.12, tankDepth: 0.12 };
    expect(() => carried({ measured: tiny })).toThrow(problemOf("propeller.tank-too-small", "measured.tankWidth"));
  });

  test("near the surface the thrust lost there is given back, in part", () => {
    const factor = factorOf(carried({ measured: { shaftImmersion: 0.038 } }), "surface")!;
    expect(factor.thrust).toBeGreaterThan(1);
    expect(factor.torque).toBeLessThan(factor.thrust);
    expect(factorOf(carried({ measured: { shaftImmersion: 0.2 } }), "surface")).toBeUndefined();
  });

  test("a nozzle that comes or goes is a wide range, and says to measure it", () => {
    const added = factorOf(carried({ target: { nozzle: true } }), "nozzle")!;
    expect(added.thrust).toBeCloseTo((1 + 2 ** (1 / 3)) / 2, 12);
    expect(added.reason).toContain("Measure it as it will work.");
    expect(factorOf(carried({ measured: { nozzle: true } }), "nozzle")!.thrust).toBeLessThan(1);
  });

  test("twice the diameter at the same rotation rate is 16 times the thrust and 32 times the torque but for the Reynolds number", () => {
    const size = factorOf(carried({ target: { diameter: 0.152 } }), "diameter")!;
    expect(size.thrust).toBeCloseTo(16, 12);
    expect(size.torque).toBeCloseTo(32, 12);
  });

  test("without blade and tank it says what is missing, and the Reynolds number is a range", () => {
    const { tankWidth: _, ...without } = measured;
    const sea = { kind: "sea", temperature: 281.15, salinity: 33 };
    const result = carryOver(CarryOverRequest.parse({ measured: without, target: { ...target, fluid: sea } }));
    expect(codesOf(result)).toEqual(["propeller.blade-not-stated", "propeller.tank-not-stated"]);
    expect(result.reynolds).toEqual({ measured: null, target: null });
    expect(factorOf(result, "reynolds")!.thrustUncertainty).toBeGreaterThan(0);
  });
});

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

import { describe, expect, test } from "vitest";
import { type MotorIdentificationInput, MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { polePairsFrom } from "../../shared/motor/identifyPolePairs.ts";
import { likelyFullCommand, readingsFrom } from "../../shared/motor/identifyReadings.ts";
import { covarianceOf, independentCauses, uncertaintiesOf } from "../../shared/motor/motorCovariance.ts";

/** A motor of 50 rad/(V·s), 0.1 Ω, I_0 = 0.5 A + 0.001 A·s/rad ω: what it does at a speed and a shaft torque. */
const KV = 50;
type Load = "noLoadDry" | "noLoadWet" | "loaded";
function point(load: Load, omega: number, torque = 0, more: object = {}) {
  const current = 0.5 + 0.001 * omega + torque * KV;
  return { load, voltage: omega / KV + 0.1 * current, current, rotationRate: omega / (2 * Math.PI), ...more };
}
const WORTH = { voltageUncertainty: 0.01, currentUncertainty: 0.01, rotationRateUncertainty: 0.02 };
const identify = (input: MotorIdentificationInput) => identifyMotor(MotorIdentificationRequest.parse(input));
const codes = ({ warnings }: ReturnType<typeof identify>) => warnings.map(({ code }) => code);

describe("what the points can tell", () => {
  test("free running at two voltages and a stated resistance give K_v and the line of losses", () => {
    const { constants } = identify({
      points: [200, 400, 550].map((omega) => point("noLoadDry", omega, 0, WORTH)),
      stated: { resistance: { value: 0.1, standardUncertainty: 0.01 } },
    });
    expect(constants!.speedConstant.value).toBeCloseTo(KV, 6);
    expect(constants!.resistance).toMatchObject({ value: expect.closeTo(0.1, 6) });
    expect(constants!.resistance.standardUncertainty).toBeGreaterThan(0.005);
    expect(constants!.noLoadCurrent!.value).toBeCloseTo(0.5, 6);
    expect(constants!.noLoadCurrentSlope!.value).toBeCloseTo(0.001, 8);
  });

  test("loaded points without torque tell K_v and resistance, and say that the losses stay unknown", () => {
    const found = identify({ points: [point("loaded", 300, 0.1, WORTH), point("loaded", 300, 0.4, WORTH)] });
    expect(found.constants!.speedConstant.value).toBeCloseTo(KV, 6);
    expect(found.constants!.resistance.value).toBeCloseTo(0.1, 6);
    expect(found.constants!.noLoadCurrent).toBeNull();
    expect(codes(found)).toContain("motor.friction-unknown");
    expect(found.sentence).toContain("can not be told");
  });

  test("free running at one voltage gives the no-load current there, and says why a and b can not be told apart", () => {
    const found = identify({
      points: [0, 1, 2].map((i) => point("noLoadDry", 400 + i, 0, WORTH)),
      stated: { resistance: { value: 0.1 } },
    });
    expect(found.constants!.noLoadCurrent!.value).toBeCloseTo(0.901, 3);
    expect(found.constants!.noLoadCurrentSlope).toMatchObject({ value: 0, standardUncertainty: 0 });
    expect(codes(found)).toEqual(["motor.one-speed"]);
    expect(found.warnings[0]!.message).toContain("rpm");
  });

  test("points of unknown throttle add the losses by their power alone", () => {
    const part = (omega: number) => {
      const { current: motorCurrent, voltage, ...rest } = point("noLoadDry", omega);
      return { ...rest, ...WORTH, voltage: 12, current: (voltage * motorCurrent) / 12, throttle: "unknown" as const };
    };
    const points = [part(150), part(300), point("noLoadDry", 500, 0, WORTH), point("loaded", 400, 0.3, WORTH)];
    const { constants } = identify({ points });
    expect(constants!.speedConstant.value).toBeCloseTo(KV, 5);
    expect(constants!.noLoadCurrent!.value).toBeCloseTo(0.5, 5);
    expect(constants!.noLoadCurrentSlope!.value).toBeCloseTo(0.001, 7);
  });

  test("a wet run without dry constants leaves the wet loss out and says what is needed", () => {
    const points = [point("noLoadWet", 300, 0.002, WORTH), point("noLoadWet", 500, 0.005, WORTH)];
    const found = identify({ points, stated: { resistance: { value: 0.1 } } });
    expect(found.wetLoss).toBeNull();
    expect(codes(found)).toContain("motor.dry-constants-unknown");
  });

  test("a wet run gives its torque and exponent, and a motor as it is under water", () => {
    const wet = (omega: number) => point("noLoadWet", omega, 1e-7 * omega ** 1.8, WORTH);
    const dry = [150, 300, 500].map((omega) => point("noLoadDry", omega, 0, WORTH));
    const points = [...dry, wet(150), wet(300), wet(480)];
    const { wetLoss, flooded, constants } = identify({ points, stated: { resistance: { value: 0.1 } } });
    expect(wetLoss!.exponent.value).toBeCloseTo(1.8, 4);
    expect(wetLoss!.coefficient.value / 1e-7).toBeCloseTo(1, 3);
    const at = (motor: typeof constants) => motor!.noLoadCurrent!.value + motor!.noLoadCurrentSlope!.value * 480;
    expect(at(flooded) - at(constants)).toBeCloseTo(1e-7 * 480 ** 1.8 * KV, 1);
  });

  test("a growth that is negative within its doubt is taken as none, and said", () => {
    const flat = [200, 400].map((omega) => ({ ...point("noLoadDry", omega, 0, WORTH), current: 0.5 - omega * 1e-6 }));
    const found = identify({ points: flat, stated: { resistance: { value: 0.1 } } });
    expect(found.constants!.noLoadCurrentSlope!.value).toBe(0);
    expect(codes(found)).toContain("motor.growth-not-seen");
  });

  test("without uncertainties of the readings their scatter tells, and equal readings have none", () => {
    const points = [200, 300, 400, 500].map((omega, i) => ({
      ...point("noLoadDry", omega),
      current: 0.5 + 0.001 * omega + (i % 2 ? 0.01 : -0.01),
    }));
    const loose = identify({ points, stated: { resistance: { value: 0.1 } } });
    expect(loose.constants!.noLoadCurrent!.standardUncertainty).toBeGreaterThan(0.002);
    expect(loose.degreesOfFreedom).toBe(5);
  });

  test("points that scatter more than their uncertainties explain widen the interval, and it is said", () => {
    const scattered = (off: number) =>
      [200, 300, 400, 500, 550].map((omega, i) => {
        const exact = point("noLoadDry", omega, 0, WORTH);
        return { ...exact, current: exact.current + (i % 2 ? off : -off) };
      });
    const stated = { resistance: { value: 0.1 } };
    const [calm, wild] = [identify({ points: scattered(0), stated }), identify({ points: scattered(0.1), stated })];
    const u = (found: typeof calm) => found.constants!.noLoadCurrent!.standardUncertainty;
    expect(wild.scatterRatio).toBeGreaterThan(2);
    expect(u(wild) / u(calm)).toBeCloseTo(wild.scatterRatio, 0);
    expect(codes(wild)).toContain("motor.scatter");
    expect(codes(calm)).not.toContain("motor.scatter");
  });

  test("a torque cell that reads 10 % too much is seen in the torque constant", () => {
    const points = [0.05, 0.15, 0.3, 0.45].map((torque) => ({
      ...point("loaded", 350, torque, WORTH),
      ...{ torque: 1.1 * torque, torqueUncertainty: 0.001 },
    }));
    const found = identify({
      points: [...points, point("noLoadDry", 200, 0, WORTH), point("noLoadDry", 500, 0, WORTH)],
    });
    expect(codes(found)).toContain("motor.torque-disagrees");
    expect(found.torqueConstantFromTorque!.value * KV).toBeCloseTo(1.1, 1);
  });
});

describe("what is refused", () => {
  const dry = [200, 400].map((omega) => point("noLoadDry", omega, 0, WORTH));
  test.each([
    { name: "no points", request: {}, code: "motor.no-throttle-known" },
    {
      name: "no known throttle",
      request: { points: dry.map((one) => ({ ...one, throttle: "unknown" as const })) },
      code: "motor.no-throttle-known",
    },
    { name: "free running without a resistance", request: { points: dry }, code: "motor.resistance-unknown" },
    {
      name: "a single point without uncertainties",
      request: { points: [point("noLoadDry", 400)], stated: { resistance: { value: 0.1 } } },
      code: "motor.too-few-points",
    },
    {
      name: "uncertainties at some points",
      request: { points: [...dry, point("noLoadDry", 300)], stated: { resistance: { value: 0.1 } } },
      code: "motor.uncertainty-missing",
    },
  ] as const)("$name is refused as $code", ({ request, code }) => {
    const asked = () => identify(request as unknown as MotorIdentificationInput);
    expect(asked).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code }) }));
  });
});

describe("pole pairs", () => {
  test.each([
    { electrical: 525.2, shaft: 75, pairs: 7, why: "a ratio of 7.003" },
    { electrical: 100, shaft: 100, pairs: 1, why: "one pair" },
    { electrical: 1092, shaft: 78, pairs: 14, why: "fourteen pairs" },
  ])("$electrical electrical turns at $shaft of the shaft are $pairs pairs ($why)", ({ electrical, shaft, pairs }) => {
    expect(polePairsFrom([{ electrical, shaft }]).polePairs).toBe(pairs);
  });

  test.each([
    { electrical: 487.5, shaft: 75, why: "6.5, between two" },
    { electrical: 15, shaft: 75, why: "0.2, below one" },
    { electrical: 6000, shaft: 75, why: "80, beyond any motor here" },
    { electrical: 4125, shaft: 75, why: "55 pairs, but 0.5 % of a tachometer is a quarter of one at both sides" },
  ])("$electrical at $shaft is refused ($why)", ({ electrical, shaft }) => {
    expect(() => polePairsFrom([{ electrical, shaft }])).toThrow(/whole number/);
  });

  test("readings that disagree are refused", () => {
    const readings = [
      { electrical: 525, shaft: 75 },
      { electrical: 525, shaft: 55 },
    ];
    expect(() => polePairsFrom(readings)).toThrow(/whole number/);
  });
});

describe("the throttle map", () => {
  /** A controller that starts at 1050 µs and is full at 1850 µs. */
  const commanded = (command: number, omega: number) => {
    const throttle = Math.min(1, (command - 1050) / 800);
    const { current, voltage, ...rest } = point("noLoadDry", omega);
    return {
      ...rest,
      ...WORTH,
      command,
      voltage: voltage / throttle,
      current: current * throttle,
      throttle: throttle === 1 ? null : ("unknown" as const),
    };
  };
  const points = [1100, 1250, 1450, 1650, 1800, 1850, 1950].map((command, i) =>
    commanded(command, [35, 140, 280, 410, 510, 545, 550][i]!),
  );

  test("finds where the duty starts, where it is full, and the dead band, and leaves the flat top out", () => {
    const { throttleMap } = identify({ points, stated: { resistance: { value: 0.1 } }, idleCommand: 1000 });
    expect(throttleMap!.commandAtZero.value).toBeCloseTo(1050, 1);
    expect(throttleMap!.commandAtFull.value).toBeCloseTo(1850, 1);
    expect(throttleMap!.deadBand).toBeCloseTo(50, 1);
    expect(throttleMap!.lowestTurning).toBe(1100);
    expect(throttleMap!.linearity).toBeLessThan(1e-4);
    expect(throttleMap!.points.filter(({ used }) => used)).toHaveLength(5);
  });

  test("is not made of fewer than three sloping points", () => {
    const few = points.slice(3);
    expect(identify({ points: few, stated: { resistance: { value: 0.1 } } }).throttleMap).toBeNull();
  });
});

describe("points from runs", () => {
  const uncertainOf = (value: number) => ({ value, standardUncertainty: 0.01, interval95: [value, value] as const });
  const plateau = (command: number | null) => ({
    ...{ firstLine: 1, lastLine: 9, start: 0, end: 5, command, torque: null },
    ...{ rotationRate: uncertainOf(60), voltage: uncertainOf(12), current: uncertainOf(1) },
  });
  const run = (
    commands: readonly (number | null)[],
    commandUnit: string | null,
    idleCommand: number | null = null,
  ) => ({
    ...{ fileName: "a.csv", commandUnit, idleCommand, warnings: [], plateaus: commands.map(plateau) },
    ...{ currentAtRest: uncertainOf(0.02), calibration: { voltage: 0.003 } },
  });

  test("commands at the stated full count as full, all others as unknown", () => {
    const source = { name: "a", purpose: "noLoadDry" as const, run: run([1500, 1899, 1900, 1950, 1100], "µs", 1500) };
    const { points } = readingsFrom([{ ...source, fullCommand: 1900 }]);
    expect(points.map(({ throttle }) => throttle)).toEqual(["unknown", null, null, null, "unknown"]);
  });

  test("a table without commands is unknown, unless all of it was at full throttle", () => {
    const source = { name: "a", purpose: "propeller" as const, run: run([null], null) };
    expect(readingsFrom([{ ...source, fullCommand: null }]).points[0]!.throttle).toBe("unknown");
    expect(readingsFrom([{ ...source, fullCommand: "all" }]).points[0]!.throttle).toBeNull();
  });

  test("runs share a meter of the same quality and have a zero each", () => {
    const one = { name: "a", purpose: "propeller" as const, run: run([100, 50], "%"), fullCommand: 100 };
    const { shared } = readingsFrom([one, { ...one, name: "b" }]);
    expect(shared).toEqual([
      { quantity: "current", relative: 0, offset: 0.01, points: [0, 1] },
      { quantity: "voltage", relative: 0.003, offset: 0, points: [0, 1, 2, 3] },
      { quantity: "current", relative: 0, offset: 0.01, points: [2, 3] },
    ]);
  });

  test.each([
    { runs: [run([20, 80], "%")], full: 100, why: "a run that stops at 80 % was not at full throttle" },
    { runs: [run([1500, 1900], "µs"), run([1700], "µs")], full: 1900, why: "the highest of all runs" },
    { runs: [run([null], null)], full: null, why: "no commands" },
  ])("full throttle is likely at $full ($why)", ({ runs, full }) => {
    expect(likelyFullCommand(runs)).toBe(full);
  });
});

describe("the covariance of a motor", () => {
  const covariance = [
    [4, -1.2, 0.5, 0],
    [-1.2, 1, 0, 0],
    [0.5, 0, 0.25, 0],
    [0, 0, 0, 0],
  ];

  test("is the same after it was kept as uncertainties and correlations", () => {
    const kept = uncertaintiesOf(covariance);
    expect(kept).not.toHaveProperty("noLoadCurrentSlope");
    const back = covarianceOf(kept);
    expect(back.flat().map((value) => Number(value.toFixed(12)))).toEqual(covariance.flat());
  });

  test("falls into independent causes that make it up", () => {
    const L = independentCauses(covariance);
    const product = L.map((row) => L.map((other) => row.reduce((sum, one, k) => sum + one * other[k]!, 0)));
    expect(product.flat().map((value) => Number(value.toFixed(12)))).toEqual(covariance.flat());
  });
});

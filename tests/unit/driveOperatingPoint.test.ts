import { describe, expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { OperatingPoint } from "../../shared/model/drive.ts";
import { relative } from "../relative.ts";
import { driveRequest } from "./driveRequest.ts";

const codes = (change: Parameters<typeof driveRequest>[0]) =>
  operatingPoint(driveRequest(change)).warnings.map((warning) => warning.code);

test("an ordinary point needs no warning and fits the document that is sent", () => {
  const point = operatingPoint(driveRequest());
  expect(point.warnings).toEqual([]);
  expect(OperatingPoint.parse(point)).toEqual(point);
  expect(point.uncertainties).toBeNull();
});

describe("rest", () => {
  test("at throttle 0 nothing turns and the supply carries the hotel load alone", () => {
    const point = operatingPoint(driveRequest({ throttle: 0 }));
    // (16 + sqrt(256 − 4·0.15·12))/2 by hand.
    expect(point.supplyVoltage).toSatisfy(relative((16 + Math.sqrt(248.8)) / 2, 1e-14));
    expect(point.supplyCurrent * point.supplyVoltage).toSatisfy(relative(12, 1e-14));
    for (const name of ["rotationRate", "thrust", "torque", "motorCurrent", "motorVoltage", "shaftPower"] as const) {
      expect(point[name], name).toBe(0);
    }
    expect(point.efficiency).toBe(0);
    expect(point.warnings).toEqual([]);
    expect(OperatingPoint.parse(point)).toEqual(point);
  });

  test("a throttle that can not overcome friction leaves the motor standing, heats it, and says so", () => {
    // Break-away needs 0.6 A · 0.11 Ω = 0.066 V; throttle 0.004 of 16 V is 0.064 V.
    const point = operatingPoint(driveRequest({ throttle: 0.004, hotelPower: 0 }));
    expect(point.rotationRate).toBe(0);
    expect(point.motorCurrent).toSatisfy(relative(0.064 / 0.11, 1e-3));
    expect(point.losses.winding + point.losses.controllerResistance).toSatisfy(relative(point.electricalPower, 1e-12));
    expect(point.warnings.map((warning) => warning.code)).toEqual(["drive.motor-at-rest"]);
  });

  test("a little more throttle turns it, without a jump in current", () => {
    const [standing, turning] = [0.00412, 0.00413].map((throttle) =>
      operatingPoint(driveRequest({ throttle, hotelPower: 0 })),
    );
    expect(standing!.rotationRate).toBe(0);
    expect(turning!.rotationRate).toBeGreaterThan(0);
    expect(turning!.motorCurrent - standing!.motorCurrent).toBeLessThan(0.002);
  });
});

describe("limits", () => {
  const limits = { motorCurrent: 10, motorPower: 60, controllerCurrent: 9, supplyCurrent: 20 };
  const point = operatingPoint(driveRequest({ limits, thrusters: 5 }));

  test.each(point.limits)("at the throttle stated for $name its quantity is at the limit", (limit) => {
    expect(limit.reachedAtThrottle).not.toBeNull();
    const there = operatingPoint(driveRequest({ limits, thrusters: 5, throttle: limit.reachedAtThrottle! }));
    expect(there.limits.find(({ name }) => name === limit.name)!.actual).toSatisfy(relative(limit.limit, 1e-9));
  });

  test("the limit reached first governs", () => {
    const first = point.limits.toSorted((a, b) => a.reachedAtThrottle! - b.reachedAtThrottle!)[0]!;
    expect(point.governingLimit).toBe(first.name);
    expect(first.name).not.toBe("supply voltage");
  });

  test("a limit above what full throttle reaches is reached nowhere, and the supply voltage governs", () => {
    const free = operatingPoint(driveRequest({ thrusters: 1, limits: { motorCurrent: 60 } }));
    expect(free.limits[0]).toMatchObject({ name: "motor current", reachedAtThrottle: null });
    expect(free.governingLimit).toBe("supply voltage");
  });

  test("a limit that is exceeded is warned of with both values and the throttle that keeps it", () => {
    const [warning] = operatingPoint(driveRequest({ limits: { motorCurrent: 5 } })).warnings;
    expect(warning).toMatchObject({ code: "drive.limit-exceeded", where: "motor current" });
    expect(warning!.message).toMatch(/is 11\.\d A\..*at most 5\.00 A, reached at throttle 0\.\d+/);
  });

  test("a supply without resistance has no limit of its own", () => {
    expect(operatingPoint(driveRequest({ supplyResistance: 0 })).limits).toEqual([]);
  });
});

describe("warnings", () => {
  test("coefficients beyond momentum theory are named", () => {
    expect(codes({ thrustCoefficient: 0.45 })).toEqual(["drive.above-momentum-limit"]);
  });
  test("a supply past its greatest power is named", () => {
    expect(codes({ thrusters: 6, throttle: 1, hotelPower: 10 })).toEqual(["drive.past-greatest-power"]);
  });
  test("a motor constant that looks like a unit slip is named", () => {
    expect(codes({ speedConstant: 500 })).toContain("motor.speed-constant-unit");
  });
});

describe("refusals", () => {
  test.each([
    ["speedConstant", 0],
    ["motorResistance", -0.1],
    ["noLoadCurrent", -1],
    ["noLoadCurrentSlope", -1],
    ["controllerResistance", -0.01],
    ["supplyVoltage", 0],
    ["supplyResistance", -1],
    ["hotelPower", -5],
    ["diameter", 0],
    ["thrustCoefficient", -0.1],
    ["torqueCoefficient", 0],
    ["density", Number.POSITIVE_INFINITY],
    ["throttle", 1.2],
  ] as const)("%s = %d is refused by its name and value", (field, found) => {
    expect(() => operatingPoint({ ...driveRequest(), [field]: found })).toThrow(
      expect.objectContaining({
        problem: expect.objectContaining({
          code: "drive.not-physical",
          where: field,
          found: expect.stringContaining(String(found)),
        }),
      }),
    );
  });

  test("a field that is not a number is refused by its name", () => {
    expect(() => operatingPoint({ ...driveRequest(), torqueCoefficient: Number.NaN })).toThrow(/^torqueCoefficient: /);
  });

  test("a limit or an uncertainty that is not physical is refused by its path", () => {
    expect(() => operatingPoint(driveRequest({ limits: { supplyCurrent: -1 } }))).toThrow(/^limits\.supplyCurrent: /);
    const doubtful = { ...driveRequest(), uncertainties: { diameter: -1 } };
    expect(() => operatingPoint(doubtful)).toThrow(/^uncertainties\.diameter: /);
  });

  test("a supply that can not hold the loads is a collapse with its greatest power and the throttle it holds", () => {
    const heavy = driveRequest({ supplyResistance: 0.6, hotelPower: 90, throttle: 1 });
    expect(() => operatingPoint(heavy)).toThrow(/collapses at throttle 1\.00 .*107 W at most; up to throttle 0\.\d+/s);
    expect(() => operatingPoint({ ...heavy, hotelPower: 120, throttle: 0 })).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "supply.collapse" }) }),
    );
  });

  test("the throttle named in a collapse is the border", () => {
    const heavy = driveRequest({ supplyResistance: 0.6, hotelPower: 90, throttle: 1 });
    const held = collapseBorder(() => operatingPoint(heavy));
    expect(() => operatingPoint({ ...heavy, throttle: held * 0.99 })).not.toThrow();
    expect(() => operatingPoint({ ...heavy, throttle: held * 1.01 })).toThrow();
  });
});

function collapseBorder(action: () => unknown): number {
  try {
    action();
  } catch (refusal) {
    return Number(/up to throttle ([\d.]+)/.exec((refusal as Error).message)![1]);
  }
  throw new Error("did not collapse");
}

describe("uncertainty", () => {
  test("with a stiff supply and little resistance the thrust doubles the relative doubt of K_v and the diameter counts by hand", () => {
    // R → 0: ω = K_v δ U, T = K_T ρ n² D⁴: relative sensitivities 2 (K_v), 2 (U), 1 (K_T), 4 (D).
    const ideal = driveRequest({
      motorResistance: 1e-9,
      controllerResistance: 0,
      supplyResistance: 0,
      uncertainties: { speedConstant: 0.5236, supplyVoltage: 0.16, thrustCoefficient: 0.003, diameter: 0.0007 },
    });
    const { thrust, uncertainties } = operatingPoint(ideal);
    const expected = thrust * Math.hypot(0.02, 0.02, 0.01, 0.04);
    expect(uncertainties!.thrust!.standardUncertainty).toSatisfy(relative(expected, 1e-6));
  });

  test("every output has an interval around its value, also for an input that is zero", () => {
    const point = operatingPoint(
      driveRequest({ controllerResistance: 0, uncertainties: { controllerResistance: 0.01 } }),
    );
    expect(Object.keys(point.uncertainties!)).toHaveLength(12);
    const { value, interval95, standardUncertainty } = point.uncertainties!.thrust!;
    expect(value).toBe(point.thrust);
    expect(standardUncertainty).toBeGreaterThan(0);
    expect(interval95[0]).toBeLessThan(value);
    expect(interval95[1]).toBeGreaterThan(value);
  });

  test("next to a collapse there is no slope, and a warning says so", () => {
    const edge = driveRequest({
      hotelPower: 16 ** 2 / 0.6 - 1e-9,
      throttle: 0,
      uncertainties: { supplyResistance: 0.01 },
    });
    const point = operatingPoint(edge);
    expect(point.uncertainties).toBeNull();
    expect(point.warnings.map((warning) => warning.code)).toContain("drive.uncertainty-at-collapse");
  });
});

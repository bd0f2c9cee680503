import { describe, expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import type { DriveRequestInput } from "../../shared/model/drive.ts";
import { OperatingPoint } from "../../shared/model/drive.ts";
import { relative } from "../relative.ts";
import { driveRequest } from "./driveRequest.ts";

const at = (change: Partial<DriveRequestInput>) => operatingPoint(driveRequest(change));
const codes = (change: Partial<DriveRequestInput>) => at(change).warnings.map(({ code }) => code);

describe("heat", () => {
  const heat = { surroundings: 283.15, thermalResistance: 1.5 };

  test("the winding temperature of the point is the one that its own losses keep up", () => {
    const point = at({ heat });
    const { winding, friction } = point.losses;
    expect(point.windingTemperature).toSatisfy(relative(283.15 + 1.5 * (winding + friction), 1e-12));
    // The resistance in the loss is that of copper at that temperature: 1 + 0.00393 (T − 293.15 K), by hand.
    const R = 0.1 * (1 + 0.00393 * (point.windingTemperature - 293.15));
    expect(winding).toSatisfy(relative(R * point.motorCurrent ** 2, 1e-12));
  });

  test("without heat the temperature is that of the stated resistance", () => {
    expect(at({}).windingTemperature).toBe(293.15);
  });

  test("the loss in the water of a flooded motor does not heat the winding", () => {
    const dry = at({ heat });
    const wet = at({ heat, wetTorque: { coefficient: 3e-7, exponent: 2 } });
    const { winding, friction, wetRotor } = wet.losses;
    expect(wetRotor).toBeGreaterThan(1);
    expect(wet.windingTemperature).toSatisfy(relative(283.15 + 1.5 * (winding + friction), 1e-12));
    expect(wet.rotationRate).toBeLessThan(dry.rotationRate);
  });

  test("a temperature limit is reached at a throttle of its own", () => {
    const limited = { ...heat, temperatureLimit: 300 };
    const limit = at({ heat: limited }).limits.find(({ name }) => name === "winding temperature")!;
    const there = at({ heat: limited, throttle: limit.reachedAtThrottle! });
    expect(there.windingTemperature).toSatisfy(relative(300, 1e-10));
  });

  test("a voltage can not drive a winding to its current of thermal runaway: all stays finite, and absurd is warned of", () => {
    const insulated = at({ heat: { surroundings: 293.15, thermalResistance: 1000 }, throttle: 1, thrusters: 1 });
    // 1/sqrt(0.00393 · 1000 · 0.1), by hand.
    expect(insulated.motorCurrent).toBeLessThan(1 / Math.sqrt(0.393));
    expect(insulated.windingTemperature).toBeGreaterThan(1000);
    expect(OperatingPoint.parse(insulated)).toEqual(insulated);
    expect(insulated.warnings.map(({ code }) => code)).toEqual(["drive.winding-too-hot"]);
  });

  test("a winding that would burn is named where no limit was stated, and a rating that runs away is asked about", () => {
    const hot = { surroundings: 293.15, thermalResistance: 8 };
    expect(codes({ heat: hot, throttle: 1, thrusters: 1 })).toContain("drive.winding-too-hot");
    // h = 0.00393 · 8 · 0.1: runs away at 1/sqrt(0.003144) = 17.8 A.
    const found = at({ heat: hot, limits: { motorCurrent: 20 } }).warnings;
    expect(found.find(({ code }) => code === "motor.rating-runs-away")?.message).toMatch(/from 17\.8 A on/);
    expect(codes({ heat: hot, limits: { motorCurrent: 16 } })).toContain("motor.rating-too-hot");
    expect(codes({ heat, limits: { motorCurrent: 16 } })).toEqual([]);
  });
});

describe("part throttle", () => {
  test("freewheeling costs (1 − δ) I U_f, switching κ (1 − δ) U I, and neither at full throttle", () => {
    const lossy = { freewheelVoltage: 0.7, switchingLoss: 0.02 };
    const point = at({ ...lossy, throttle: 0.4 });
    const expected = 0.6 * point.motorCurrent * (0.7 + 0.02 * point.supplyVoltage);
    expect(point.losses.partThrottle).toSatisfy(relative(expected, 1e-12));
    const full = at({ ...lossy, throttle: 1 });
    expect(full.losses.partThrottle).toBe(0);
    expect(full.thrust).toSatisfy(relative(at({ throttle: 1 }).thrust, 1e-12));
  });

  test("where the freewheel voltage eats all that the controller makes, nothing is drawn but the standby power", () => {
    const point = at({ freewheelVoltage: 1, throttle: 0.05, standbyPower: 0.5, hotelPower: 0 });
    expect(point.status).toBe("atRest");
    expect(point.motorCurrent).toBe(0);
    expect(point.electricalPower).toBe(0.5);
    expect(point.supplyCurrent * point.supplyVoltage).toSatisfy(relative(1, 1e-12));
    expect(point.warnings.map(({ code }) => code)).toEqual(["drive.motor-at-rest"]);
  });
});

describe("gear", () => {
  test("a gear without loss is a motor of K_v/g, R and R_c the same, with I_0 and b seen through it", () => {
    const geared = at({ gearRatio: 2, speedConstant: 104.72, noLoadCurrentSlope: 0.00025 });
    expect(geared.thrust).toSatisfy(relative(at({}).thrust, 1e-12));
    expect(geared.motorCurrent).toSatisfy(relative(at({}).motorCurrent, 1e-12));
  });

  test("its loss is the share of the power that it keeps", () => {
    const { losses, shaftPower, efficiencies } = at({ gearRatio: 2, gearEfficiency: 0.9, speedConstant: 100 });
    expect(losses.gear).toSatisfy(relative(shaftPower / 9, 1e-12));
    expect(efficiencies.gear).toSatisfy(relative(0.9, 1e-12));
  });
});

describe("limits on the supply and the propeller", () => {
  const limits = {
    ...{ fuseCurrent: 12, tetherCurrent: 11, supplyVoltage: 14.5, cavitation: 40, ventilation: 35 },
  };
  test.each(["fuse current", "tether current", "least supply voltage", "cavitation", "ventilation"])(
    "at the throttle stated for %s its quantity is at the limit",
    (name) => {
      const found = at({ limits }).limits.find((limit) => limit.name === name)!;
      const there = at({ limits, throttle: found.reachedAtThrottle! });
      expect(there.limits.find((limit) => limit.name === name)!.actual).toSatisfy(relative(found.limit, 1e-9));
    },
  );

  test("a supply below its least voltage is warned of in those words", () => {
    const [warning] = at({ limits: { supplyVoltage: 15 } }).warnings;
    expect(warning!.message).toMatch(/^least supply voltage: The supply voltage is 13\.8 V\. Needed: at least 15\.0 V/);
  });
});

describe("at speed", () => {
  const openWater = { thrust: [-0.35], torque: [-0.03], greatestAdvanceRatio: 0.8 };
  const moving = { openWater, throttle: 0.6 };

  test("the point tends to the one at rest as the speed goes to zero", () => {
    expect(at({ ...moving, advanceSpeed: 1e-9 }).thrust).toSatisfy(relative(at({}).thrust, 1e-7));
  });

  test("the efficiency of the propeller is ideal over real power with the water coming in", () => {
    const point = at({ ...moving, advanceSpeed: 1 });
    // v from T = 2 ρ A (V + v) v, by hand.
    const A = (Math.PI / 4) * 0.07 ** 2;
    const v = -0.5 + Math.sqrt(0.25 + point.thrust / (2 * 998.6 * A));
    expect(point.efficiencies.propeller).toSatisfy(relative((point.thrust * (1 + v)) / point.shaftPower, 1e-12));
  });

  test("faster than the propeller can follow, it is windmilling: nothing is drawn, all is finite, and it says so", () => {
    const point = at({ ...moving, advanceSpeed: 5 });
    expect(point.status).toBe("windmilling");
    expect(point.motorCurrent).toBe(0);
    // The end of the curve: n = V/(J D).
    expect(point.rotationRate).toSatisfy(relative(5 / (0.8 * 0.07), 1e-12));
    const [warning] = point.warnings;
    expect(warning).toMatchObject({ code: "drive.beyond-curve" });
    expect(warning!.message).toMatch(/thrust and torque are not known/);
    expect(OperatingPoint.parse(point)).toEqual(point);
  });

  test("the curve ends where the torque does, however far its polynomials were stated", () => {
    const long = { ...openWater, greatestAdvanceRatio: 3 };
    // K_Q = 0.035 − 0.03 J is zero at 7/6.
    const point = at({ ...moving, openWater: long, advanceSpeed: 8 });
    expect(point.rotationRate).toSatisfy(relative(8 / ((7 / 6) * 0.07), 1e-9));
  });

  test("a propeller that turns too slowly to push holds back, and the point says so", () => {
    const long = { ...openWater, greatestAdvanceRatio: 1.1 };
    const backwards = { ...moving, openWater: long, advanceSpeed: 5 };
    expect(at(backwards).thrust).toBeLessThan(0);
    expect(codes(backwards)).toContain("drive.thrust-backwards");
  });

  test("at speed without curves the point is refused", () => {
    expect(() => at({ advanceSpeed: 1 })).toThrow(/^openWater: At 1\.00 m\/s/);
  });

  test.each([
    ["torque", { ...openWater, torque: [0.02, 0, 0.3] }],
    ["thrust", { ...openWater, thrust: [-0.1, 0, 1.5] }],
  ])("a curve whose %s falls with the rotation rate is refused, with the advance ratio", (name, curve) => {
    expect(() => at({ ...moving, openWater: curve, advanceSpeed: 1 })).toThrow(
      expect.objectContaining({
        problem: expect.objectContaining({
          code: "drive.not-monotone",
          where: `openWater.${name}`,
          found: expect.stringMatching(/advance ratio of 0\.\d+/),
        }),
      }),
    );
  });
});

describe("refusals", () => {
  test.each([
    ["gearRatio", { gearRatio: 0 }],
    ["gearEfficiency", { gearEfficiency: 1.2 }],
    ["freewheelVoltage", { freewheelVoltage: -0.1 }],
    ["switchingLoss", { switchingLoss: 0.8 }],
    ["standbyPower", { standbyPower: -1 }],
    ["advanceSpeed", { advanceSpeed: -1 }],
    ["wetTorque.coefficient", { wetTorque: { coefficient: -1e-7, exponent: 2 } }],
    ["wetTorque.exponent", { wetTorque: { coefficient: 1e-7, exponent: 4 } }],
    ["heat.surroundings", { heat: { surroundings: 12, resistanceTemperature: 293.15, thermalResistance: 1 } }],
    ["heat.thermalResistance", { heat: { surroundings: 285, resistanceTemperature: 293.15, thermalResistance: -1 } }],
    ["limits.cavitation", { limits: { cavitation: 0 } }],
  ] as const)("%s is refused by its path", (where, change) => {
    expect(() => operatingPoint({ ...driveRequest(), ...change })).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "drive.not-physical", where }) }),
    );
  });
});

import { describe, expect, test } from "vitest";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { codes, messageOf, propellerOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("power", () => {
  const torqueOf = (n: number) => 0.03 * 998.598 * n * n * 0.076 ** 5;
  const columns = quietColumns();
  const torque = columns.rate.map((n, i) => torqueOf(n) + 0.02 + 1e-4 * Math.sin(i * 2.3));
  const uses = [...USES, ["torque", "N·m"], ["voltage", "V"], ["current", "A"]] as const;
  const electrical = (n: number) => ({ U: 15 - 0.02 * n, P: (2 * Math.PI * n * torqueOf(n)) / 0.7 });
  const voltage = columns.rate.map((n) => electrical(n).U);
  const current = columns.rate.map((n) => 0.02 + electrical(n).P / electrical(n).U);
  const whole = { ...columns, torque, voltage, current };
  const reduction = reduce({
    table: tableOf(whole),
    recipe: recipeOf(uses),
    propeller: propellerOf({ diameterUncertainty: 3e-4 }),
  });

  test("from a torque cell, tared as the thrust is, gives C_P, K_Q and static merit", () => {
    expect(reduction.powerSource).toBe("torque");
    expect(reduction.torqueCoefficient!.value).toBeCloseTo(0.03, 4);
    expect(reduction.powerCoefficient!.value).toBeCloseTo(2 * Math.PI * 0.03, 3);
    expect(reduction.staticMerit!.value).toBeCloseTo(0.2 ** 1.5 / (2 * Math.PI * 0.03 * Math.sqrt(Math.PI / 2)), 3);
  });

  test("shaft power of a plateau holds the calibration of its meter, and coefficients of a plateau what is its own", () => {
    const stated = reduce({
      table: tableOf(whole),
      recipe: recipeOf(uses, { corrections: { torque: { relativeUncertainty: 0.02 } } }),
    });
    for (const [i, { shaftPower, powerCoefficient }] of stated.plateaus.entries()) {
      const before = reduction.plateaus[i]!;
      // JCGM 100:2008, eq. 10: in squares, 2 % of the power beside what the readings say.
      const both = Math.hypot(before.shaftPower!.standardUncertainty, 0.02 * shaftPower!.value);
      expect(shaftPower!.standardUncertainty / both).toBeCloseTo(1, 4);
      expect(powerCoefficient).toEqual(before.powerCoefficient);
    }
  });

  test("the diameter's doubt reaches the merit once, not four and five times", () => {
    const relative = 3e-4 / 0.076;
    const { staticMerit, thrustCoefficient, powerCoefficient } = reduction;
    expect(thrustCoefficient.standardUncertainty / thrustCoefficient.value).toBeGreaterThan(3.9 * relative);
    expect(powerCoefficient!.standardUncertainty / powerCoefficient!.value).toBeGreaterThan(4.9 * relative);
    expect(staticMerit!.standardUncertainty / staticMerit!.value).toBeLessThan(1.5 * relative);
  });

  test("from a motor's constants is marked, and told to lack their doubt", () => {
    const motor = Motor.parse({ name: "m", speedConstant: 50, resistance: 0.1, noLoadCurrent: 0.4 });
    const controller = Controller.parse({ name: "c", resistance: 0.01 });
    // Electrical side made from the motor equations: I_m = Q K_v + I_0, U I = I_m (ω/K_v + I_m R).
    const power = columns.rate.map((n) => {
      const Im = torqueOf(n) * 50 + (n > 0 ? 0.4 : 0);
      return Im * ((2 * Math.PI * n) / 50 + Im * 0.11);
    });
    const table = tableOf({ ...columns, power });
    const recipe = recipeOf([...USES, ["electricalPower", "W"]]);
    const { powerSource, torqueCoefficient, warnings } = reduce({ table, recipe, motor, controller });
    expect(powerSource).toBe("motorConstants");
    expect(torqueCoefficient!.value).toBeCloseTo(0.03, 4);
    expect(warnings.map(({ code }) => code)).toContain("bench.motor-constants");
    expect(reduce({ table, recipe }).powerSource).toBeNull();
  });

  test("that does not grow with the cube of the rate is told, with the constants of the motor as a cause, and more plateaus are not advised", () => {
    const motor = Motor.parse({ name: "m", speedConstant: 50, resistance: 0.1, noLoadCurrent: 0.4 });
    // Motor equations as above. Taken as 0.4 A, a no-load current of I_0 adds (I_0 - 0.4)/K_v to the torque at all speeds.
    const withIdle = (idle: number) => {
      const power = columns.rate.map((n, i) => {
        const Im = torqueOf(n) * 50 + (n > 0 ? idle : 0);
        return Im * ((2 * Math.PI * n) / 50 + Im * 0.1) * (1 + 0.002 * Math.sin(i * 2.3));
      });
      const recipe = recipeOf([...USES, ["electricalPower", "W"]]);
      return reduce({ table: tableOf({ ...columns, power }), recipe, motor });
    };
    const wrong = withIdle(0.65);
    // Extra torque 0.005 N·m; the propeller's own is 0.0171 N·m at 15 rev/s and 0.1540 N·m at 45 rev/s: C_P 29 % and 3.2 % too great.
    expect(messageOf(wrong, "bench.power-exponent")).toMatch(
      /C_P falls from 0\.24\d? at .* to 0\.19\d at .*by (19|20|21) %.*no-load current stated too small.*Identify/,
    );
    expect(wrong.quality.find(({ code }) => code === "bench.power-law")!.verdict).toBe("flag");
    expect(wrong.budget!.powerCoefficient!.halving.sentence).not.toMatch(/plateaus in place of/);
    expect(wrong.budget!.powerCoefficient!.halving.sentence).toMatch(/^First find why/);
    const right = withIdle(0.4);
    expect(codes(right).filter((code) => code.startsWith("bench.power-"))).toEqual([]);
    expect(right.quality.find(({ code }) => code === "bench.power-law")!.verdict).toBe("pass");
  });

  test("is positive where the log counts turns and torque as negative", () => {
    const negative = { ...whole, rate: columns.rate.map((n) => -n), torque: torque.map((Q) => -Q) };
    const turned = reduce({ table: tableOf(negative), recipe: recipeOf(uses) });
    expect(turned.powerCoefficient!.value).toBeCloseTo(reduction.powerCoefficient!.value, 9);
    expect(turned.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(turned.plateaus[0]!.torque!.value).toBeLessThan(0);
  });

  test("shaft power above electrical power is told", () => {
    const low = { ...whole, current: current.map((I) => I / 3) };
    expect(codes(reduce({ table: tableOf(low), recipe: recipeOf(uses) }))).toContain("bench.shaft-above-electrical");
  });

  test("pound-force read as newton leaves a merit that no working propeller has, and is named", () => {
    const low = { ...whole, thrust: whole.thrust.map((T) => T / 4.448) };
    const told = reduce({ table: tableOf(low), recipe: recipeOf(uses) });
    expect(messageOf(told, "bench.merit-below-usual")).toContain("pound-force read as newton");
    expect(codes(reduction)).not.toContain("bench.merit-below-usual");
  });

  test("current at rest is told and not taken off", () => {
    const more = { ...whole, current: current.map((I) => I + 0.3) };
    const shifted = reduce({ table: tableOf(more), recipe: recipeOf(uses) });
    expect(messageOf(shifted, "bench.rest-current")).toContain("0.320");
    expect(shifted.plateaus[0]!.current!.value - reduction.plateaus[0]!.current!.value).toBeCloseTo(0.3, 6);
  });

  test("exchanged voltage and current are told", () => {
    const recipe = recipeOf([...USES, ["torque", "N·m"], ["current", "A"], ["voltage", "V"]]);
    const swapped = reduce({ table: tableOf(whole), recipe });
    expect(codes(swapped)).toContain("bench.voltage-current-swapped");
  });
});

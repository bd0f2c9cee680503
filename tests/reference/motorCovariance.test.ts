import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEMO, propellerRuns } from "../../samples/demo.ts";
import { motorParts } from "../../shared/bench/motorParts.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor, type MotorUncertainties } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { shaftSensitivities } from "../../shared/motor/shaftFromElectrical.ts";
import { relative } from "../relative.ts";

/**
 * A motor whose constants were identified together: K_v 47.44 ± 0.14 rad/(V·s), R 0.1219 ± 0.001 Ω, I_0 0.55 ± 0.02 A,
 * b 0.00078 ± 0.00004 A·s/rad (standard uncertainties), correlated as below.
 */
const CONSTANTS = { speedConstant: 47.44, resistance: 0.1219, noLoadCurrent: 0.55, noLoadCurrentSlope: 0.00078 };
const UNCERTAINTIES: MotorUncertainties = {
  ...{ speedConstant: 0.14, resistance: 0.001, noLoadCurrent: 0.02, noLoadCurrentSlope: 4e-5 },
  correlations: [
    { of: "speedConstant", and: "resistance", coefficient: 0.6 },
    { of: "speedConstant", and: "noLoadCurrent", coefficient: -0.3 },
    { of: "speedConstant", and: "noLoadCurrentSlope", coefficient: 0.2 },
    { of: "resistance", and: "noLoadCurrent", coefficient: -0.1 },
    { of: "resistance", and: "noLoadCurrentSlope", coefficient: 0.05 },
    { of: "noLoadCurrent", and: "noLoadCurrentSlope", coefficient: -0.8 },
  ],
};
const { correlations: _, ...INDEPENDENT } = UNCERTAINTIES;

/**
 * Drawn outside this project: numpy 2.4.6 `default_rng(5).multivariate_normal`, 400,000 draws for the shaft power and
 * 60,000 for the operating point, each solved with scipy 1.17.1 `brentq`. A standard deviation from N draws is good to
 * 1/sqrt(2N): 0.1 % and 0.3 %; three of these and the curvature make 1 %.
 */
const DRAWN = {
  shaftPower: { correlated: 0.12730941946146285, independent: 0.19834229591348645 },
  thrust: { correlated: 0.08482116, independent: 0.13224838 },
  supplyCurrent: { correlated: 0.04833601, independent: 0.06801805 },
};

const cases = [
  { name: "correlated", uncertainties: UNCERTAINTIES },
  { name: "independent", uncertainties: INDEPENDENT },
] as const;

describe.each(cases)("constants of a motor that are $name", ({ name, uncertainties }) => {
  const motor = Motor.parse({ name: "M", ...CONSTANTS, uncertainties });

  test("give the shaft power from voltage and current the doubt that draws give it", () => {
    const reading = { voltage: 9.9, current: 9, rotationRate: 55, motor, controllerResistance: 0.008 };
    const { shaftPower } = shaftSensitivities(reading);
    const { speedConstant, motorResistance, noLoadCurrent, noLoadCurrentSlope } = shaftPower;
    const parts = motorParts({ motor, controller: undefined }, [
      speedConstant,
      motorResistance,
      noLoadCurrent,
      noLoadCurrentSlope,
    ]);
    expect(Math.hypot(...parts.map(({ change }) => change))).toSatisfy(relative(DRAWN.shaftPower[name], 0.01));
  });

  test("give thrust and current of an operating point the doubt that draws give them", () => {
    const { resistance, correlations = [], ...others } = uncertainties as MotorUncertainties;
    const named = (of: string) => (of === "resistance" ? "motorResistance" : of);
    const { uncertainties: found } = operatingPoint(
      DriveRequest.parse({
        ...{ speedConstant: 47.44, motorResistance: 0.1219, noLoadCurrent: 0.55, noLoadCurrentSlope: 0.00078 },
        ...{ controllerResistance: 0.008, supplyVoltage: 14.8, supplyResistance: 0.035, diameter: 0.076 },
        ...{ thrustCoefficient: 0.28, torqueCoefficient: 0.034, density: 1025, throttle: 0.7 },
        uncertainties: { ...others, motorResistance: resistance },
        correlations: correlations.map(({ of, and, coefficient }) => ({ of: named(of), and: named(and), coefficient })),
      }),
    );
    expect(found!.thrust!.standardUncertainty).toSatisfy(relative(DRAWN.thrust[name], 0.01));
    expect(found!.supplyCurrent!.standardUncertainty).toSatisfy(relative(DRAWN.supplyCurrent[name], 0.01));
  });
});

test("the constants' doubt reaches the power coefficient of a run, leaves its thrust alone, and the warning goes", () => {
  const demo = propellerRuns(DEMO).find(({ file }) => file === "pitch-1-0.csv")!;
  const bytes = readFileSync(new URL(`../../samples/logs/${demo.file}`, import.meta.url));
  const reduced = (more: object) =>
    reduceRun({
      table: readLog(new Uint8Array(bytes), demo.file),
      recipe: Recipe.parse(demo.recipe),
      propeller: Propeller.parse(DEMO.propellers[demo.propeller]),
      motor: Motor.parse({ ...DEMO.motors["a"], ...more }),
      controller: Controller.parse(DEMO.controllers["stand"]),
      source: { sha256: "0".repeat(64), program: "test" },
    });
  const [plain, doubted] = [reduced({}), reduced({ uncertainties: UNCERTAINTIES })];
  const u = (run: typeof plain) => run.powerCoefficient!.standardUncertainty;
  const ofMotor = doubted.powerFit!.components.filter(({ key }) => key.startsWith("motor-constant-"));
  expect(ofMotor).toHaveLength(4);
  const added = Math.hypot(...ofMotor.map(({ standardUncertainty }) => standardUncertainty));
  expect(Math.hypot(u(plain), added)).toSatisfy(relative(u(doubted), 1e-9));
  expect(doubted.powerCoefficient!.value).toBe(plain.powerCoefficient!.value);
  expect(doubted.thrustCoefficient).toEqual(plain.thrustCoefficient);
  const codes = (run: typeof plain) => run.warnings.map(({ code }) => code);
  expect(codes(plain)).toContain("bench.motor-constants");
  expect(codes(doubted)).not.toContain("bench.motor-constants");
});

import { expect, test } from "vitest";
import { driveRequestOf } from "../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import type { DriveTrainInput } from "../../shared/model/driveTrain.ts";
import { DriveRunning, type DriveRunningInput } from "../../shared/model/driveTrainPoint.ts";
import { relative } from "../relative.ts";
import { TRAIN, trainWith } from "../unit/driveTrains.ts";

const prepared = (more: Partial<DriveTrainInput> = {}, running: Partial<DriveRunningInput> = {}) =>
  driveRequestOf(trainWith(more), DriveRunning.parse({ throttle: 1, ...running }));
const codes = (warnings: readonly { readonly code: string }[]) => warnings.map(({ code }) => code);

/** Full throttle at rest of the base case, solved by scipy brentq, fsolve and by the quadratic alike: see wholeChain. */
test("the parts of the base case make the point that three solvers agree on", () => {
  const { request, warnings } = prepared();
  // Solved for 998.6 kg/m³.
  const point = operatingPoint({ ...request, density: 998.6 });
  expect(60 * point.rotationRate).toSatisfy(relative(5068.5917743087, 1e-8));
  expect(point.thrust).toSatisfy(relative(51.3306902857, 1e-8));
  expect(point.motorCurrent).toSatisfy(relative(22.5492940438, 1e-8));
  expect(warnings).toEqual([]);
});

test("what is made from any parts is a request as the interface takes it", () => {
  const full = prepared({
    supply: {
      pack: { ...TRAIN.supply.pack, cells: { series: 4 }, currentLimit: 40, fuseCurrent: 30, leastVoltage: 12 },
      charge: 0.9,
      temperature: 283.15,
    },
    gear: { name: "gear", ratio: 3, efficiency: 0.95 },
    hotelPower: 5,
    hotelPowerUncertainty: 1,
    depth: 0.09,
  });
  expect(DriveRequest.parse(full.request)).toEqual(full.request);
  expect(full.request).toMatchObject({ gearRatio: 3, gearEfficiency: 0.95, hotelPower: 5 });
  expect(full.request.limits).toMatchObject({ supplyCurrent: 40, fuseCurrent: 30, supplyVoltage: 12 });
});

test("doubts of all parts go in by name, those of 0 stay out, and correlations with them", () => {
  const { request } = prepared({
    motor: {
      ...TRAIN.motor,
      thermalResistance: 1.5,
      resistanceTemperature: 298.15,
      temperatureLimit: 393,
      wetTorque: { coefficient: 1e-6, exponent: 2, coefficientUncertainty: 2e-7 },
      uncertainties: {
        speedConstant: 0.2,
        resistance: 0.002,
        thermalResistance: 0.3,
        correlations: [{ of: "speedConstant", and: "resistance", coefficient: 0.6 }],
      },
    },
    supply: {
      pack: { ...TRAIN.supply.pack, uncertainties: { openCircuitVoltage: 0.05, resistance: 0.01 } },
    },
    hotelPowerUncertainty: 0.5,
  });
  expect(request.uncertainties).toEqual({
    speedConstant: 0.2,
    motorResistance: 0.002,
    thermalResistance: 0.3,
    wetTorque: 2e-7,
    supplyVoltage: 0.05,
    supplyResistance: 0.01,
    hotelPower: 0.5,
    thrustCoefficient: 0.006,
    torqueCoefficient: 0.001,
  });
  expect(request.correlations).toEqual([
    { of: "speedConstant", and: "motorResistance", coefficient: 0.6 },
    { of: "thrustCoefficient", and: "torqueCoefficient", coefficient: 0.4 },
  ]);
  // The water around is where the heat goes.
  expect(request.heat).toEqual({
    surroundings: 288.15,
    resistanceTemperature: 298.15,
    thermalResistance: 1.5,
    temperatureLimit: 393,
  });
});

test("astern takes the coefficients astern; without them it says what to measure, or takes a stated estimate", () => {
  expect(prepared({}, { direction: "astern" }).request).toMatchObject({
    thrustCoefficient: 0.2,
    torqueCoefficient: 0.034,
  });
  const { astern: _astern, ...propeller } = TRAIN.propeller;
  const ahead = { propeller };
  expect(() => prepared(ahead, { direction: "astern" })).toThrow(/turning astern.*Run it backwards on the stand/s);
  const asternEstimate = { thrustShare: 0.7, torqueShare: 1, relativeUncertainty: 0.1 };
  const estimated = prepared(ahead, { direction: "astern", asternEstimate });
  expect(estimated.request.thrustCoefficient).toBeCloseTo(0.21, 14);
  // 0.7 x hypot(0.006, 0.1 x 0.3).
  expect(estimated.request.uncertainties.thrustCoefficient).toBeCloseTo(0.0214159, 7);
  expect(codes(estimated.warnings)).toEqual(["drive.astern-estimated"]);
  const oneWay = { controller: { ...TRAIN.controller!, command: { fullReverse: null } } };
  expect(() => prepared(oneWay, { direction: "astern" })).toThrow(/one way only/);
});

test("a pack above the rating of motor or controller is told for each, also as its charge raises it", () => {
  const parts = {
    motor: { ...TRAIN.motor, voltageLimit: 15.5 },
    controller: { ...TRAIN.controller!, voltageLimit: 16.5 },
  };
  expect(codes(prepared(parts).warnings)).toEqual(["drive.voltage-above-limit"]);
  const full = { pack: { ...TRAIN.supply.pack, cells: { series: 4, statedCharge: 0.8 } }, charge: 1 };
  expect(codes(prepared({ ...parts, supply: full }).warnings)).toEqual([
    "drive.voltage-above-limit",
    "drive.voltage-above-limit",
  ]);
});

test("without the thermal resistance the heat is left out and said to be", () => {
  const { request, grounds } = prepared();
  expect(request.heat).toBeUndefined();
  expect(grounds.find(({ about }) => about === "heat")?.text).toMatch(/left out.*continuous rating/);
});

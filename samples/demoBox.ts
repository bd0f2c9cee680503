import type { z } from "zod";
import type { Controller } from "../shared/model/parts/controller.ts";
import type { Gear } from "../shared/model/parts/gear.ts";
import type { Motor } from "../shared/model/parts/motor.ts";
import type { Pack } from "../shared/model/parts/pack.ts";
import type { TetherCable } from "../shared/model/parts/tetherCable.ts";

/** What a thruster of the demonstration can be built from, besides its propellers; keys are named by the runs. */
export interface DemoBox {
  readonly motors: Readonly<Record<string, z.input<typeof Motor>>>;
  readonly controllers: Readonly<Record<string, z.input<typeof Controller>>>;
  readonly packs: Readonly<Record<string, z.input<typeof Pack>>>;
  readonly tethers: Readonly<Record<string, z.input<typeof TetherCable>>>;
  readonly gears: Readonly<Record<string, z.input<typeof Gear>>>;
}

export const INVENTED = "Invented for the demonstration.";

const RPM_PER_VOLT = (2 * Math.PI) / 60;
const celsius = (degrees: number) => degrees + 273.15;
const WINDING = { resistanceTemperature: celsius(20), temperatureLimit: celsius(120) };

/** Motors A and B stand in the logs; of the others there is only what their invented papers say. */
const MOTORS: DemoBox["motors"] = {
  a: {
    name: "Motor A, 455 rpm/V",
    speedConstant: 455 * RPM_PER_VOLT,
    resistance: 0.12,
    noLoadCurrent: 0.55,
    noLoadCurrentSlope: 0.0008,
    polePairs: 7,
    currentLimit: 24,
    powerLimit: 320,
    ...WINDING,
    thermalResistance: 0.9,
    // As "Identify from runs" finds it from its run without propeller, flooded.
    wetTorque: { coefficient: 1.1e-7, exponent: 1.775, coefficientUncertainty: 1.1e-8 },
    mass: 0.295,
    price: 52,
    note: INVENTED,
  },
  b: {
    name: "Motor B, 620 rpm/V",
    speedConstant: 620 * RPM_PER_VOLT,
    resistance: 0.085,
    noLoadCurrent: 0.8,
    noLoadCurrentSlope: 0.0012,
    polePairs: 7,
    currentLimit: 32,
    powerLimit: 420,
    ...WINDING,
    thermalResistance: 0.8,
    mass: 0.31,
    price: 58,
    note: INVENTED,
  },
  c: {
    name: "Motor C, 300 rpm/V",
    speedConstant: 300 * RPM_PER_VOLT,
    resistance: 0.19,
    noLoadCurrent: 0.4,
    noLoadCurrentSlope: 0.0006,
    polePairs: 7,
    currentLimit: 18,
    powerLimit: 290,
    ...WINDING,
    thermalResistance: 0.95,
    mass: 0.305,
    price: 46,
    note: INVENTED,
  },
  d: {
    name: "Motor D, 380 rpm/V",
    speedConstant: 380 * RPM_PER_VOLT,
    resistance: 0.075,
    noLoadCurrent: 0.7,
    noLoadCurrentSlope: 0.001,
    polePairs: 11,
    currentLimit: 36,
    powerLimit: 540,
    ...WINDING,
    thermalResistance: 0.55,
    mass: 0.46,
    price: 83,
    note: INVENTED,
  },
  e: {
    name: "Motor E, 750 rpm/V",
    speedConstant: 750 * RPM_PER_VOLT,
    resistance: 0.105,
    noLoadCurrent: 0.65,
    noLoadCurrentSlope: 0.0009,
    polePairs: 7,
    currentLimit: 20,
    powerLimit: 240,
    ...WINDING,
    thermalResistance: 1.35,
    mass: 0.155,
    price: 29,
    note: INVENTED,
  },
  f: {
    name: "Motor F, 1100 rpm/V",
    speedConstant: 1100 * RPM_PER_VOLT,
    resistance: 0.062,
    noLoadCurrent: 0.9,
    noLoadCurrentSlope: 0.0011,
    polePairs: 6,
    currentLimit: 25,
    powerLimit: 260,
    ...WINDING,
    temperatureLimit: celsius(100),
    thermalResistance: 1.55,
    mass: 0.115,
    price: 23,
    note: `Fast: meant to run through a gear. ${INVENTED}`,
  },
};

const CONTROLLERS: DemoBox["controllers"] = {
  stand: {
    name: "Reversing controller, 30 A",
    resistance: 0.008,
    currentLimit: 30,
    voltageLimit: 27,
    command: { stop: 1500, fullForward: 1900, fullReverse: 1100, deadBand: 25 },
    mass: 0.045,
    price: 19,
    note: INVENTED,
  },
  small: {
    name: "Reversing controller, 20 A",
    resistance: 0.013,
    currentLimit: 20,
    voltageLimit: 18,
    freewheelVoltage: 0.6,
    standbyPower: 0.25,
    command: {},
    mass: 0.027,
    price: 12,
    note: INVENTED,
  },
  large: {
    name: "Reversing controller, 50 A",
    resistance: 0.004,
    currentLimit: 50,
    voltageLimit: 27,
    switchingLoss: 0.01,
    standbyPower: 0.5,
    command: { deadBand: 15 },
    mass: 0.082,
    price: 38,
    note: INVENTED,
  },
  oneWay: {
    name: "One-way controller, 40 A",
    resistance: 0.006,
    currentLimit: 40,
    voltageLimit: 27,
    switchingLoss: 0.015,
    standbyPower: 0.3,
    command: { stop: 1050, fullForward: 1950, fullReverse: null, deadBand: 20 },
    mass: 0.052,
    price: 16,
    note: `Turns one way only. ${INVENTED}`,
  },
};

/** The stated voltage of a pack is 3.7 V a cell, at half its charge. */
const PACKS: DemoBox["packs"] = {
  fourCells: {
    name: "Four cells in series, 14.8 V",
    openCircuitVoltage: 14.8,
    resistance: 0.035,
    currentLimit: 60,
    charge: 10 * 3600,
    fuseCurrent: 60,
    leastVoltage: 12,
    cells: { series: 4, parallel: 4 },
    mass: 0.86,
    price: 64,
    note: INVENTED,
  },
  sixCells: {
    name: "Six cells in series, 22.2 V",
    openCircuitVoltage: 22.2,
    resistance: 0.05,
    currentLimit: 60,
    charge: 8 * 3600,
    fuseCurrent: 60,
    leastVoltage: 18,
    cells: { series: 6, parallel: 3 },
    mass: 1.02,
    price: 79,
    note: INVENTED,
  },
  threeCells: {
    name: "Three cells in series, 11.1 V",
    openCircuitVoltage: 11.1,
    resistance: 0.024,
    currentLimit: 45,
    charge: 12 * 3600,
    fuseCurrent: 40,
    leastVoltage: 9,
    cells: { series: 3, parallel: 5 },
    lead: { length: 0.4, size: { given: "gauge", gauge: 12 } },
    mass: 0.79,
    price: 55,
    note: INVENTED,
  },
  fiveCells: {
    name: "Five cells in series, 18.5 V",
    openCircuitVoltage: 18.5,
    resistance: 0.042,
    currentLimit: 60,
    charge: 10 * 3600,
    fuseCurrent: 60,
    leastVoltage: 15,
    cells: { series: 5, parallel: 4 },
    lead: { length: 0.5, size: { given: "area", area: 4e-6 } },
    mass: 1.08,
    price: 77,
    note: INVENTED,
  },
  shore: {
    name: "Six cells in series, large, for the boat",
    openCircuitVoltage: 22.2,
    resistance: 0.022,
    currentLimit: 80,
    charge: 30 * 3600,
    fuseCurrent: 80,
    leastVoltage: 18,
    cells: { series: 6, parallel: 11 },
    mass: 3.9,
    price: 260,
    note: `Stays on the boat and feeds a tether. ${INVENTED}`,
  },
};

const TETHERS: DemoBox["tethers"] = {
  signal: {
    name: "Signal tether, 60 m",
    diameter: 0.0052,
    weightInWater: 0.03,
    strength: 400,
    price: 70,
    note: `Carries no power. ${INVENTED}`,
  },
  power: {
    name: "Power tether, 40 m, two pairs of 1.5 mm²",
    diameter: 0.0115,
    conductor: { length: 40, size: { given: "area", area: 1.5e-6 }, pairs: 2 },
    currentLimit: 24,
    weightInWater: 0.45,
    strength: 900,
    price: 190,
    note: INVENTED,
  },
  slim: {
    name: "Floating power tether, 25 m, one pair",
    diameter: 0.0098,
    conductor: { length: 25, size: { given: "gauge", gauge: 16 }, pairs: 1 },
    currentLimit: 14,
    weightInWater: -0.05,
    strength: 500,
    price: 115,
    note: INVENTED,
  },
};

const GEARS: DemoBox["gears"] = {
  spur: { name: "Spur gears, 2 to 1", ratio: 2, efficiency: 0.96, mass: 0.06, price: 13, note: INVENTED },
  planetary: { name: "Planetary gear, 3.6 to 1", ratio: 3.6, efficiency: 0.92, mass: 0.095, price: 36, note: INVENTED },
};

export const DEMO_BOX: DemoBox = {
  motors: MOTORS,
  controllers: CONTROLLERS,
  packs: PACKS,
  tethers: TETHERS,
  gears: GEARS,
};

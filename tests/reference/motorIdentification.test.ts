import { describe, expect, test } from "vitest";
import { type MotorIdentificationInput, MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { leastSquares } from "../../shared/numeric/leastSquares.ts";
import { relative } from "../relative.ts";

const identify = (input: MotorIdentificationInput) => identifyMotor(MotorIdentificationRequest.parse(input));

/**
 * Least squares written another way, outside this project: every true speed, torque and voltage is an unknown of its own
 * and each reading is compared with its own truth, so that no uncertainty has to be carried from one quantity to another.
 * scipy 1.17.1 `optimize.least_squares(method="lm", xtol=ftol=gtol=1e-15)`, numpy 2.4.6; standard errors from
 * inv(JᵀJ). Readings: load, throttle (1, or null where it is not known), U, I, n, Q; standard uncertainties 0.02 V,
 * 0.01 A, 0.1 rev/s, 0.001 N·m.
 */
const READINGS = [
  ["noLoadDry", null, 12.001, 0.954, 89.34, null],
  ["noLoadDry", null, 7.99, 0.797, 59.26, null],
  ["noLoadDry", "unknown", 12.011, 0.364, 44.43, null],
  ["noLoadDry", "unknown", 11.963, 0.209, 26.4, null],
  ["noLoadWet", null, 12.014, 1.485, 88.64, null],
  ["noLoadWet", null, 8.009, 1.079, 59.02, null],
  ["noLoadWet", "unknown", 11.997, 0.605, 53.02, null],
  ["noLoadWet", "unknown", 11.97, 0.268, 30.74, null],
  ["loaded", null, 11.962, 19.569, 70.83, 0.3955],
  ["loaded", null, 9.97, 14.574, 60.87, 0.2914],
  ["loaded", null, 7.985, 10.127, 50.21, 0.1982],
  ["loaded", "unknown", 12.011, 5.122, 45.68, 0.1641],
] as const;
const POINTS = READINGS.map(([load, throttle, voltage, current, rotationRate, torque]) => ({
  ...{ load, throttle, voltage, current, rotationRate, torque },
  ...{ voltageUncertainty: 0.02, currentUncertainty: 0.01, rotationRateUncertainty: 0.1 },
  ...(torque === null ? {} : { torqueUncertainty: 0.001 }),
}));

const WET_MIDDLE = 339.5259735181981; // rad/s, geometric mean of the wet speeds
const CASES = [
  {
    name: "independent readings",
    shared: [],
    chiSquared: 7.7424833980266925,
    torqueConstant: [0.021179933695569798, 2.2316214512899632e-5],
    resistance: [0.12931795945134372, 0.001081393617092884],
    noLoadCurrent: [0.5260784973864906, 0.023175963401309986],
    noLoadCurrentSlope: [0.0007548330635030285, 5.218237559082605e-5],
    wetTorque: [0.00501621639439583, 0.0002474590938056096],
    wetExponent: [1.6580955508048085, 0.11156184918170574],
    correlations: { speedConstantAndResistance: 0.5575071923444123, frictionAndGrowth: -0.962037988333753 },
  },
  {
    name: "meters whose gains are known to 1 % (current) and 0.5 % (voltage)",
    shared: [
      { quantity: "current" as const, relative: 0.01 },
      { quantity: "voltage" as const, relative: 0.005 },
    ],
    chiSquared: null,
    torqueConstant: [0.021186186273388346, 9.753368509607434e-5],
    resistance: [0.12903689164065418, 0.0016048270036649564],
    noLoadCurrent: [0.5211164576555212, 0.023718613601290343],
    noLoadCurrentSlope: [0.0007586712258939165, 5.2441694692881604e-5],
    wetTorque: [0.005046952188782337, 0.00024913908163253336],
    wetExponent: [1.6458268011944082, 0.11168573366591035],
    correlations: { speedConstantAndResistance: -0.6049276417708468, frictionAndGrowth: -0.9423294597445342 },
  },
] as const;

describe.each(CASES)("identification against an independent least-squares solution, $name", (reference) => {
  const found = identify({ points: POINTS, shared: reference.shared.map((one) => ({ ...one })) });
  const constants = found.constants!;

  test.each([
    { name: "torque constant", own: constants.torqueConstant, theirs: reference.torqueConstant },
    { name: "resistance", own: constants.resistance, theirs: reference.resistance },
    { name: "no-load current", own: constants.noLoadCurrent!, theirs: reference.noLoadCurrent },
    { name: "growth of that current", own: constants.noLoadCurrentSlope!, theirs: reference.noLoadCurrentSlope },
    { name: "wet torque", own: found.wetLoss!.torque, theirs: reference.wetTorque },
    { name: "wet exponent", own: found.wetLoss!.exponent, theirs: reference.wetExponent },
  ])("gives its $name to a hundredth of the standard error, and its standard error to 0.1 %", ({ own, theirs }) => {
    // The two formulations differ by the curvature of the balances over one uncertainty of a reading.
    const [value, u] = theirs;
    expect(Math.abs(own.value - value)).toBeLessThan(0.01 * u);
    expect(own.standardUncertainty).toSatisfy(relative(u, 1e-3));
  });

  test("gives its correlations and its weighted sum of squares", () => {
    const c = constants.covariance;
    const correlation = (i: number, j: number) => c[i]![j]! / Math.sqrt(c[i]![i]! * c[j]![j]!);
    expect(correlation(0, 1)).toBeCloseTo(reference.correlations.speedConstantAndResistance, 1);
    expect(correlation(2, 3)).toBeCloseTo(reference.correlations.frictionAndGrowth, 2);
    if (reference.chiSquared !== null) expect(found.chiSquared).toSatisfy(relative(reference.chiSquared, 0.02));
    expect(found.degreesOfFreedom).toBe(13);
    expect(found.converged).toBe(true);
    expect(2 * Math.PI * found.wetLoss!.rotationRate).toSatisfy(relative(WET_MIDDLE, 1e-12));
  });
});

/**
 * Fitzgerald, Kingsley & Umans, Electric Machinery, 6th ed., permanent-magnet motor example of the chapter on dc machines
 * (from memory): R 1.03 Ω; no load at 50 V: 2100 rpm, 1.25 A. Digits recomputed without rounding: K_m 0.221509576153
 * V·s/rad; the friction current is the 1.25 A itself.
 */
test("the textbook's no-load run and resistance give its K_m and no-load current", () => {
  const { constants, warnings } = identify({
    points: [
      {
        ...{ load: "noLoadDry", voltage: 50, current: 1.25, rotationRate: 2100 / 60 },
        ...{ voltageUncertainty: 0.05, currentUncertainty: 0.01, rotationRateUncertainty: 0.05 },
      },
    ],
    stated: { resistance: { value: 1.03 } },
  });
  expect(constants!.torqueConstant.value).toSatisfy(relative(0.221509576153, 1e-9));
  expect(constants!.noLoadCurrent!.value).toSatisfy(relative(1.25, 1e-9));
  expect(warnings.map(({ code }) => code)).toEqual(["motor.one-speed"]);
});

/**
 * Motor of 490 rpm/V, 0.085 Ω, I_0 0.9 A at 14.8 V: speeds and torques of the textbook formulas ω = K_v (V − I R),
 * Q = K_t (I − I_0), any dc-motor text, worked outside this project. I, rpm, Q.
 */
test("a table of the textbook formulas gives back the constants it was made with", () => {
  const table = [
    [2, 7168.7, 0.0214371964],
    [5, 7043.75, 0.0799022776],
    [10, 6835.5, 0.1773440794],
    [15, 6627.25, 0.2747858813],
    [20, 6419, 0.3722276832],
  ] as const;
  const points = table.map(([current, rpm, torque]) => ({
    ...{ load: "loaded" as const, voltage: 14.8, current, rotationRate: rpm / 60, torque },
    ...{ voltageUncertainty: 0.01, currentUncertainty: 0.01, rotationRateUncertainty: 0.01, torqueUncertainty: 1e-4 },
  }));
  const { constants, torqueConstantFromTorque } = identify({ points });
  expect(constants!.speedConstant.value).toSatisfy(relative((490 * 2 * Math.PI) / 60, 1e-7));
  expect(constants!.resistance.value).toSatisfy(relative(0.085, 1e-6));
  expect(constants!.noLoadCurrent!.value).toSatisfy(relative(0.9, 1e-5));
  expect(Math.abs(constants!.noLoadCurrentSlope!.value)).toBeLessThan(1e-6);
  expect(torqueConstantFromTorque!.value).toSatisfy(relative(0.0194883603785994, 1e-6));
});

/**
 * NIST Statistical Reference Datasets, Misra1a (lower level of difficulty): y = b1 (1 − exp(−b2 x)); certified values
 * b1 2.3894212918E+02 ± 2.7070075241E+00, b2 5.5015643181E-04 ± 7.2668688436E-06, residual sum of squares
 * 1.2455138894E-01, 14 points. From memory of the published file.
 */
test("the least-squares search gives NIST's certified values for Misra1a from both of its starts", () => {
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  for (const start of [
    [500, 1e-4],
    [250, 5e-4],
  ]) {
    const fit = leastSquares({
      start,
      scales: start,
      residuals: ([b1, b2]) => x.map((xi, i) => y[i]! - b1! * (1 - Math.exp(-b2! * xi))),
    });
    expect(fit.converged).toBe(true);
    expect(fit.solution[0]).toSatisfy(relative(2.3894212918e2, 1e-8));
    expect(fit.solution[1]).toSatisfy(relative(5.5015643181e-4, 1e-8));
    expect(fit.chiSquared).toSatisfy(relative(1.2455138894e-1, 1e-9));
    const s = Math.sqrt(fit.chiSquared / 12);
    expect(s * Math.sqrt(fit.covariance[0]![0]!)).toSatisfy(relative(2.7070075241, 1e-5));
    expect(s * Math.sqrt(fit.covariance[1]![1]!)).toSatisfy(relative(7.2668688436e-6, 1e-5));
  }
});

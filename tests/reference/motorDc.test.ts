import { expect, test } from "vitest";
import { type MotorConstants, torqueConstant } from "../../shared/motor/motorConstants.ts";
import { shaftFromElectrical } from "../../shared/motor/shaftFromElectrical.ts";
import { relative } from "../relative.ts";

const RPM = (2 * Math.PI) / 60;

const motor = (rpmPerVolt: number, resistance: number, noLoadCurrent: number) => ({
  speedConstant: rpmPerVolt * RPM,
  resistance,
  noLoadCurrent,
  noLoadCurrentSlope: 0,
});

/** What the power meter, the tachometer and a controller without losses say of `motor` at that voltage, current and rpm. */
const shaftOf = (motor: MotorConstants, voltage: number, current: number, rpm: number) =>
  shaftFromElectrical({ motor, voltage, current, rotationRate: rpm / 60, controllerResistance: 0 });

/** K_t [N·m/A] = 60/(2π)/K_v[rpm/V], exact; the digits by double precision arithmetic outside this project. */
test.each([
  [100, 0.0954929658551372],
  [380, 0.0251297278566151],
  [490, 0.0194883603785994],
  [1000, 0.00954929658551372],
  [2200, 0.00434058935705169],
])("the torque constant of a motor of %d rpm/V is %d N·m/A", (rpmPerVolt, torquePerAmpere) => {
  expect(torqueConstant(motor(rpmPerVolt, 0.1, 0.5))).toSatisfy(relative(torquePerAmpere, 1e-14));
});

/**
 * P_shaft = (V − I R)(I − I_0), η = (1 − I R/V)(1 − I_0/I), optimum at sqrt(I_0 I_s), greatest power at (I_s + I_0)/2:
 * any dc-motor text. V 14.8, R 0.085, I_0 0.9, 490 rpm/V, worked outside this project.
 */
test.each([
  [2, 7168.7, 0.0214371964, 29.6, 16.093, 0.5436824324],
  [5, 7043.75, 0.0799022776, 74, 58.9375, 0.7964527027],
  [10, 6835.5, 0.1773440794, 148, 126.945, 0.8577364865],
  [15, 6627.25, 0.2747858813, 222, 190.7025, 0.8590202703],
  [20, 6419, 0.3722276832, 296, 250.21, 0.8453040541],
])(
  "at %d A and %d rpm the motor has the torque and powers of the textbook formulas",
  (current, rpm, Q, Pin, P, eta) => {
    const point = shaftOf(motor(490, 0.085, 0.9), 14.8, current, rpm);
    expect(point.motorCurrent).toSatisfy(relative(current, 1e-9));
    expect(point.torque).toSatisfy(relative(Q, 1e-8));
    expect(point.shaftPower).toSatisfy(relative(P, 1e-9));
    expect(point.shaftPower / Pin).toSatisfy(relative(eta, 1e-9));
  },
);

test.each([
  { voltage: 12, R: 0.1, I0: 0.8, best: 9.797958971132712, eta: 0.8433673504811215, power: 355.216, at: 60.4 },
  {
    voltage: 14.8,
    R: 0.085,
    I0: 0.9,
    best: 12.51822201244814,
    eta: 0.8613785309380956,
    power: 637.5925066176471,
    at: (174.117647058824 + 0.9) / 2,
  },
])("best efficiency and greatest power at $voltage V are those of the closed forms, at $best and $at A", (known) => {
  const { R, I0, voltage } = known;
  const at = (current: number) => shaftOf(motor(490, R, I0), voltage, current, 490 * (voltage - current * R));
  expect(at(known.best).shaftPower / (voltage * known.best)).toSatisfy(relative(known.eta, 1e-12));
  expect(at(known.at).shaftPower).toSatisfy(relative(known.power, 1e-12));
});

/**
 * Fitzgerald, Kingsley & Umans, Electric Machinery, 6th ed., chapter on dc machines, example of a permanent-magnet
 * motor (from memory): R_a 1.03 Ω, no load at 50 V: 2100 rpm, 1.25 A. Without the book's rounding of intermediate
 * digits: at 1700 rpm from 48 V I_a 8.3165742025 A, and with constant friction torque 278.662782346 W at the shaft.
 */
test("a textbook permanent-magnet motor gives the armature current and shaft power of the worked example", () => {
  const omegaNoLoad = 2100 * RPM;
  const textbook = {
    speedConstant: omegaNoLoad / (50 - 1.25 * 1.03),
    resistance: 1.03,
    noLoadCurrent: 1.25,
    noLoadCurrentSlope: 0,
  };
  expect(1 / textbook.speedConstant).toSatisfy(relative(0.221509576153, 1e-11));
  const point = shaftOf(textbook, 48, 8.3165742025, 1700);
  expect(point.motorCurrent).toSatisfy(relative(8.3165742025, 1e-9));
  expect(point.shaftPower).toSatisfy(relative(278.662782346, 1e-9));
});
/**
 * Same chapter, first worked example (from memory): separately excited, R_a 0.02 Ω, E_a 125 V at 3000 rpm. From 128 V:
 * 150 A, 19.20 kW at the terminals, 18.75 kW converted, 59.7 N·m (59.6831036594608 without rounding).
 */
test("a textbook separately excited motor gives the terminal power and torque of the worked example", () => {
  const textbook = { speedConstant: (3000 * RPM) / 125, resistance: 0.02, noLoadCurrent: 0, noLoadCurrentSlope: 0 };
  const point = shaftOf(textbook, 19200 / 150, 150, 3000);
  expect(point.motorCurrent).toSatisfy(relative(150, 1e-12));
  expect(point.shaftPower).toSatisfy(relative(18750, 1e-12));
  expect(point.torque).toSatisfy(relative(59.6831036594608, 1e-12));
});

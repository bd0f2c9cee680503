import type { ChainInputs } from "../../shared/drive/chain.ts";
import type { LimitInputs } from "../../shared/drive/limitNumbers.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";

export type DriveCase = ChainInputs & LimitInputs;

/** Invented thrusters with every effect at work and every limit stated, the same each time. */
export function driveCases(count: number): DriveCase[] {
  const uniform = uniformsFrom(20261129);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  return Array.from({ length: count }, () => ({
    speedConstant: between(25, 90),
    motorResistance: between(0.04, 0.3),
    noLoadCurrent: between(0.2, 1.2),
    noLoadCurrentSlope: between(1e-4, 1e-3),
    resistanceTemperature: between(290, 300),
    surroundings: between(277, 295),
    thermalResistance: between(0.5, 2.5),
    wetTorque: between(1e-7, 6e-7),
    wetExponent: between(1.7, 2),
    gearRatio: between(1, 2),
    gearEfficiency: between(0.9, 0.99),
    controllerResistance: between(0.003, 0.02),
    freewheelVoltage: between(0.1, 0.8),
    switchingLoss: between(0.005, 0.03),
    standbyPower: between(0.1, 0.6),
    supplyVoltage: between(11, 26),
    supplyResistance: between(0.02, 0.2),
    hotelPower: between(5, 20),
    thrusters: 1 + Math.floor(4 * uniform()),
    diameter: between(0.05, 0.1),
    density: 998.6,
    thrustCoefficient: between(0.2, 0.4),
    torqueCoefficient: between(0.02, 0.045),
    motorCurrent: between(8, 30),
    motorPower: between(80, 400),
    windingTemperature: between(330, 400),
    controllerCurrent: between(10, 40),
    supplyCurrent: between(20, 80),
    fuseCurrent: between(30, 80),
    tetherCurrent: between(30, 80),
    leastVoltage: between(6, 10),
    cavitation: between(40, 120),
    ventilation: between(50, 120),
  }));
}

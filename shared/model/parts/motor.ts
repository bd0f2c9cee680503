import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";

const MotorConstantName = z.enum(["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"]);

/** Doubt of the constants of a motor; an absent one is taken as exact. */
export const MotorUncertainties = z
  .strictObject({
    speedConstant: si(z.number().min(0), {
      symbol: "u(K_v)",
      unit: "rad/(V·s)",
      text: "Standard uncertainty of the speed constant",
    }).exactOptional(),
    resistance: si(z.number().min(0), {
      symbol: "u(R_m)",
      unit: "Ω",
      text: "Standard uncertainty of the winding resistance",
    }).exactOptional(),
    noLoadCurrent: si(z.number().min(0), {
      symbol: "u(I_0)",
      unit: "A",
      text: "Standard uncertainty of the no-load current",
    }).exactOptional(),
    noLoadCurrentSlope: si(z.number().min(0), {
      symbol: "u(b)",
      unit: "A·s/rad",
      text: "Standard uncertainty of its growth",
    }).exactOptional(),
    thermalResistance: si(z.number().min(0), {
      symbol: "u(R_th)",
      unit: "K/W",
      text: "Standard uncertainty of the thermal resistance",
    }).exactOptional(),
    correlations: z
      .array(
        z.strictObject({
          of: MotorConstantName,
          and: MotorConstantName,
          coefficient: z.number().min(-1).max(1).describe("Correlation coefficient, -1 to 1"),
        }),
      )
      .max(6)
      .exactOptional()
      .describe("Correlation of two constants that were identified together; absent pairs are independent"),
  })
  .meta({ id: "MotorUncertainties" });
export type MotorUncertainties = z.infer<typeof MotorUncertainties>;

/** Extra torque of a rotor that turns in water, Q = k ω^m. */
export const WetTorque = z
  .strictObject({
    coefficient: si(z.number().min(0), { symbol: "k", unit: "N·m·(s/rad)^m", text: "Coefficient k in Q = k ω^m" }),
    exponent: si(z.number().min(1).max(3), { symbol: "m", unit: "1", text: "Exponent m in Q = k ω^m" }),
    coefficientUncertainty: si(z.number().min(0), {
      symbol: "u(k)",
      unit: "N·m·(s/rad)^m",
      text: "Standard uncertainty of the coefficient",
    }).default(0),
  })
  .meta({ id: "WetTorque" });
export type WetTorque = z.infer<typeof WetTorque>;

export const Motor = z
  .strictObject({
    name: Name,
    speedConstant: si(z.number().positive(), { symbol: "K_v", unit: "rad/(V·s)", text: "Speed constant" }),
    resistance: si(z.number().min(0), { symbol: "R_m", unit: "Ω", text: "Winding resistance between two terminals" }),
    noLoadCurrent: si(z.number().min(0), { symbol: "I_0", unit: "A", text: "No-load current" }),
    noLoadCurrentSlope: si(z.number().min(0), {
      symbol: "b",
      unit: "A·s/rad",
      text: "Growth of the no-load current with angular velocity",
    }).default(0),
    uncertainties: MotorUncertainties.exactOptional().describe("Standard uncertainties of the constants"),
    polePairs: z.int().min(1).max(60).describe("Magnet pole pairs").exactOptional(),
    currentLimit: si(z.number().positive(), {
      symbol: "I_max",
      unit: "A",
      text: "Continuous motor current",
    }).exactOptional(),
    powerLimit: si(z.number().positive(), {
      symbol: "P_max",
      unit: "W",
      text: "Continuous electrical power of the motor",
    }).exactOptional(),
    voltageLimit: si(z.number().positive(), {
      symbol: "U_max",
      unit: "V",
      text: "Greatest supply voltage",
    }).exactOptional(),
    resistanceTemperature: si(z.number().min(200).max(500), {
      symbol: "T_0",
      unit: "K",
      text: "Winding temperature at which the resistance was measured; 20 °C if absent",
    }).exactOptional(),
    thermalResistance: si(z.number().positive().max(100), {
      symbol: "R_th",
      unit: "K/W",
      text: "Thermal resistance from winding to the water",
    }).exactOptional(),
    temperatureLimit: si(z.number().min(273).max(600), {
      symbol: "T_max",
      unit: "K",
      text: "Greatest winding temperature",
    }).exactOptional(),
    wetTorque: WetTorque.exactOptional().describe(
      "Extra torque of the flooded rotor, from a wet run without propeller",
    ),
    ...Bought,
    note: Note.default(""),
  })
  .meta({ id: "Motor" });
export type Motor = z.infer<typeof Motor>;

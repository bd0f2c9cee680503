import { z } from "zod";
import { BladeGeometry } from "./bladeGeometry.ts";
import { Name, Note, si } from "./fields.ts";
import { Instrument } from "./instrument.ts";

/** Which way a blade surface was finished: what a builder calls it, free text. */
const Finish = z.string().trim().max(60).describe("Surface finish in the builder's words, e.g. as printed, sanded");

export const Propeller = z
  .strictObject({
    name: Name,
    diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    diameterUncertainty: si(z.number().min(0).max(0.1), {
      symbol: "u(D)",
      unit: "m",
      text: "Standard uncertainty of the diameter",
    }),
    bladeCount: z.int().min(1).max(12).describe("Number of blades").exactOptional(),
    pitchRatio: si(z.number().positive().max(3), {
      symbol: "P/D",
      unit: "1",
      text: "Pitch ratio at 0.7 R",
    }).exactOptional(),
    chordAt07: si(z.number().positive().max(1), {
      symbol: "c_0.7",
      unit: "m",
      text: "Blade chord at 0.7 of the tip radius",
    }).exactOptional(),
    finish: Finish.exactOptional(),
    material: z.string().trim().min(1).max(60).exactOptional().describe("What it is made of, e.g. PETG"),
    layerHeight: si(z.number().positive().max(0.002), {
      symbol: "h",
      unit: "m",
      text: "Layer height of the print",
    }).exactOptional(),
    roughness: si(z.number().positive().max(0.005), {
      symbol: "k_p",
      unit: "m",
      text: "Roughness height of the blade",
    }).exactOptional(),
    geometry: BladeGeometry.exactOptional().describe("Shape of the blades, for blade elements and strength"),
    nozzle: z.boolean().describe("The propeller runs in a nozzle that carries part of the thrust").default(false),
    note: Note.default(""),
  })
  .meta({ id: "Propeller" });
export type Propeller = z.infer<typeof Propeller>;

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
    note: Note.default(""),
  })
  .meta({ id: "Motor" });
export type Motor = z.infer<typeof Motor>;

export const Controller = z
  .strictObject({
    name: Name,
    resistance: si(z.number().min(0), { symbol: "R_c", unit: "Ω", text: "Resistance in the motor current path" }),
    currentLimit: si(z.number().positive(), { symbol: "I_max", unit: "A", text: "Continuous current" }).exactOptional(),
    note: Note.default(""),
  })
  .meta({ id: "Controller" });
export type Controller = z.infer<typeof Controller>;

export const Pack = z
  .strictObject({
    name: Name,
    openCircuitVoltage: si(z.number().positive(), { symbol: "U_oc", unit: "V", text: "Open-circuit voltage" }),
    resistance: si(z.number().min(0), { symbol: "R_s", unit: "Ω", text: "Resistance of pack and leads" }),
    currentLimit: si(z.number().positive(), {
      symbol: "I_max",
      unit: "A",
      text: "Continuous discharge current",
    }).exactOptional(),
    charge: si(z.number().positive(), { symbol: "Q", unit: "C", text: "Rated charge" }).exactOptional(),
    note: Note.default(""),
  })
  .meta({ id: "Pack" });
export type Pack = z.infer<typeof Pack>;

/** The kinds of part a builder keeps; the key is the name in addresses. */
export const PART_SCHEMAS = {
  propellers: Propeller,
  motors: Motor,
  controllers: Controller,
  packs: Pack,
  instruments: Instrument,
} as const;
export type PartKind = keyof typeof PART_SCHEMAS;
export const PartKind = z.enum(["propellers", "motors", "controllers", "packs", "instruments"]);
export type PartOf = {
  propellers: Propeller;
  motors: Motor;
  controllers: Controller;
  packs: Pack;
  instruments: Instrument;
};

import { z } from "zod";
import { Name, Note, si } from "../fields.ts";
import { Bought } from "./bought.ts";
import { Conductor } from "./conductor.ts";

/** Voltage of one cell against its charge. */
export const ChargeCurvePoint = z.strictObject({
  charge: z.number().min(0).max(1).describe("Share of the charge that is left"),
  voltage: si(z.number().positive().max(10), { symbol: "U", unit: "V", text: "Open-circuit voltage of one cell" }),
});

export const PackCells = z
  .strictObject({
    series: z.int().min(1).max(200).describe("Cells in series"),
    parallel: z.int().min(1).max(200).default(1).describe("Cells in parallel"),
    statedCharge: z
      .number()
      .min(0)
      .max(1)
      .default(0.5)
      .describe("Share of the charge at which the pack has the stated open-circuit voltage"),
    curve: z
      .array(ChargeCurvePoint)
      .min(2)
      .max(200)
      .exactOptional()
      .describe("Voltage of one cell against charge; a nickel-manganese-cobalt cell if absent"),
  })
  .meta({ id: "PackCells" });
export type PackCells = z.infer<typeof PackCells>;

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
    fuseCurrent: si(z.number().positive(), { symbol: "I_f", unit: "A", text: "Rating of the fuse" }).exactOptional(),
    leastVoltage: si(z.number().positive(), {
      symbol: "U_min",
      unit: "V",
      text: "Voltage under load below which the pack must not be drawn",
    }).exactOptional(),
    cells: PackCells.exactOptional().describe("Cells, so that the voltage follows the charge; constant if absent"),
    lead: Conductor.exactOptional().describe("Leads from pack to controllers, if not in the resistance already"),
    uncertainties: z
      .strictObject({
        openCircuitVoltage: si(z.number().min(0), {
          symbol: "u(U_oc)",
          unit: "V",
          text: "Standard uncertainty of the open-circuit voltage",
        }).exactOptional(),
        resistance: si(z.number().min(0), {
          symbol: "u(R_s)",
          unit: "Ω",
          text: "Standard uncertainty of the resistance",
        }).exactOptional(),
        charge: si(z.number().min(0), {
          symbol: "u(Q)",
          unit: "C",
          text: "Standard uncertainty of the charge",
        }).exactOptional(),
      })
      .exactOptional()
      .describe("Standard uncertainties of the pack"),
    ...Bought,
    note: Note.default(""),
  })
  .meta({ id: "Pack" });
export type Pack = z.infer<typeof Pack>;

import { z } from "zod";
import { si } from "./fields.ts";

const length = (symbol: string, text: string) =>
  si(z.number().positive().max(1000), { symbol, unit: "m", text }).exactOptional();

/** What a person states of the stand and the water round it, because no log holds it. */
export const StandFacts = z
  .strictObject({
    shaftImmersion: length("h", "Depth of the shaft's centre line under the surface"),
    tankLength: length("L_t", "Length of the tank along the shaft"),
    tankWidth: length("W_t", "Width of the tank"),
    tankDepth: length("H_t", "Depth of the water"),
    loadCellCapacity: si(z.number().positive(), {
      symbol: "F_max",
      unit: "N",
      text: "Greatest reading of the scale or load cell, as thrust: lever and calibration counted in",
    }).exactOptional(),
    tachometerMarkers: z
      .int()
      .min(1)
      .max(100)
      .exactOptional()
      .describe("Marks or pulses the tachometer sees in one turn"),
    tachometerSampling: si(z.number().positive(), {
      symbol: "f_s",
      unit: "Hz",
      text: "Looks a second at those marks: frame rate of a camera, sampling rate of a light sensor",
    }).exactOptional(),
  })
  .meta({ id: "StandFacts" });
export type StandFacts = z.infer<typeof StandFacts>;

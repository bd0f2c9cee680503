import { z } from "zod";
import { Name, si } from "../fields.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

const notNegative = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });

/** One leg of a mission: swim somewhere, hold a place, climb, or rest. */
export const MissionLeg = z
  .strictObject({
    name: Name,
    repeats: z.int().min(1).max(10000).default(1).describe("How often it is done"),
    kind: z
      .discriminatedUnion("does", [
        z.strictObject({
          does: z.literal("swim").describe("Straight ahead at a speed through the water"),
          speed: number("V", "m/s", "Speed through the water"),
          extent: z.discriminatedUnion("by", [
            z.strictObject({ by: z.literal("duration"), duration: notNegative("t", "s", "How long") }),
            z.strictObject({
              by: z.literal("distance"),
              distance: notNegative("s", "m", "How far over the ground, along the bow"),
            }),
          ]),
        }),
        z.strictObject({
          does: z.literal("hold").describe("Stay over one place in the current of the scenario"),
          duration: notNegative("t", "s", "How long"),
        }),
        z.strictObject({
          does: z.literal("climb").describe("Change depth"),
          speed: number("w", "m/s", "Vertical speed, positive up"),
          distance: notNegative("s", "m", "How far"),
        }),
        z.strictObject({
          does: z
            .literal("push")
            .describe("Make a steady force over one place in the current, e.g. against a net or with a tool"),
          force: number("F", "N", "Force ahead"),
          duration: notNegative("t", "s", "How long"),
        }),
        z.strictObject({
          does: z.literal("rest").describe("Thrusters off"),
          duration: notNegative("t", "s", "How long"),
        }),
      ])
      .describe("What it does"),
    hotelPower: number("P_h", "W", "Hotel load of this leg, instead of the vehicle's").exactOptional(),
    current: si(z.number().min(0), {
      symbol: "U",
      unit: "m/s",
      text: "Speed of the current on this leg, instead of the scenario's; it comes from the same side",
    }).exactOptional(),
  })
  .meta({ id: "MissionLeg" });
export type MissionLeg = z.infer<typeof MissionLeg>;

export const Mission = z
  .strictObject({
    legs: z.array(MissionLeg).min(1).max(200),
    startCharge: si(z.number().min(0.01).max(1), {
      symbol: "s",
      unit: "1",
      text: "Share of the charge at the start; that of the supply if absent, and a full pack if that is absent too",
    }).exactOptional(),
    reserve: si(z.number().min(0).max(0.9), {
      symbol: "r",
      unit: "1",
      text: "Share of the rated charge that must be left at the end",
    }).default(0.2),
    packTemperature: number("T", "K", "Temperature of the pack; as the supply says if absent").exactOptional(),
  })
  .meta({ id: "Mission" });
export type Mission = z.infer<typeof Mission>;

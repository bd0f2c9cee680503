import { z } from "zod";
import { si } from "../fields.ts";
import { ToldNumber } from "./toldNumber.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** Speed ahead with one length of tether out. */
export const TetherLimitPoint = z
  .strictObject({
    length: number("L", "m", "Tether paid out"),
    speed: ToldNumber.nullable().describe("Greatest steady speed through the water, m/s; null: there is none"),
    resistance: number("F_t", "N", "Force of the tether against the motion at that speed").nullable(),
    reason: z.string().nullable().describe("Why there is no speed; null where there is one"),
  })
  .meta({ id: "TetherLimitPoint" });
export type TetherLimitPoint = z.infer<typeof TetherLimitPoint>;

/** How the speed ahead falls with the tether that is paid out. */
export const SpeedOverTether = z
  .strictObject({
    sentence: z.string(),
    without: ToldNumber.nullable().describe("Speed ahead without a tether, m/s; null: it does not go ahead"),
    straight: number("L_0", "m", "Straight distance between the ends of the tether: it must be longer"),
    points: z.array(TetherLimitPoint).describe("By length, those of scenario and requirement among them"),
    scenario: TetherLimitPoint.nullable().describe("At the length of the scenario; null: none is out"),
    requirement: z
      .strictObject({
        at: TetherLimitPoint.describe("At the length that the requirement asks for"),
        needed: number("V", "m/s", "Speed through the water that it asks for").nullable().describe("Null: none asked"),
        greatestLength: number("L", "m", "Greatest length with which that speed is reached")
          .nullable()
          .describe("Null: not asked, or not between the lengths that are told"),
      })
      .nullable()
      .describe("Null: no tether is asked for"),
    assumption: z.string(),
    converged: z.boolean(),
  })
  .meta({ id: "SpeedOverTether" });
export type SpeedOverTether = z.infer<typeof SpeedOverTether>;

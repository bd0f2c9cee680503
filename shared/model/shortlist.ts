import { z } from "zod";
import { DrivePropeller } from "./drivePropeller.ts";
import { SupplyAssembly } from "./driveTrain.ts";
import { AsternEstimate } from "./driveTrainPoint.ts";
import { Name, si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { hotelLoad } from "./hotelLoad.ts";
import { Controller } from "./parts/controller.ts";
import { Gear } from "./parts/gear.ts";
import { Motor } from "./parts/motor.ts";
import { Pack } from "./parts/pack.ts";
import { TetherCable } from "./parts/tetherCable.ts";
import { SeriesWithoutPitch } from "./seriesPropeller.ts";

const amount = (symbol: string, unit: string, text: string) =>
  si(z.number().positive(), { symbol, unit, text }).exactOptional();

/** What a shortlist can be ranked by. */
export const CRITERIA = ["thrustPerPower", "mass", "price", "thrustMargin", "tipSpeed", "endurance"] as const;
export const Criterion = z.enum(CRITERIA);
export type Criterion = z.infer<typeof Criterion>;

const weight = (text: string) => z.number().min(0).max(1e6).default(0).describe(`Weight of ${text}`);

/** How much each criterion counts; only the ratios of the weights matter. */
export const ShortlistWeights = z
  .strictObject({
    thrustPerPower: weight("thrust over electrical power at the demanded thrust, more is better"),
    mass: weight("mass, less is better"),
    price: weight("price, less is better"),
    thrustMargin: weight("greatest thrust within all limits over the demanded thrust, more is better"),
    tipSpeed: weight("tip speed at the demanded thrust, less is better"),
    endurance: weight("endurance at the mean thrust, more is better"),
  })
  .meta({ id: "ShortlistWeights" });
export type ShortlistWeights = z.infer<typeof ShortlistWeights>;

/** What a thruster must do and may be. What is absent is not asked. Thrust is that of one thruster. */
export const ShortlistRequirement = z
  .strictObject({
    name: Name.default("Shortlist"),
    position: z
      .string()
      .trim()
      .max(60)
      .default("")
      .describe("Where on the vehicle it works: vertical, horizontal, or in other words"),
    thrusters: z.int().min(1).max(64).default(1).describe("Equal thrusters that run together on the same supply"),
    thrustAhead: amount("T", "N", "Thrust ahead at rest, of one thruster, with all of them running"),
    thrustAstern: amount("T", "N", "Thrust astern at rest, of one thruster, with all of them running"),
    asternEstimate: AsternEstimate.exactOptional().describe(
      "Stated shares for propellers without coefficients astern; without them such a propeller can not be judged astern",
    ),
    thrustAtSpeed: z
      .strictObject({
        thrust: si(z.number().positive(), { symbol: "T", unit: "N", text: "Thrust ahead of one thruster" }),
        speed: si(z.number().positive().max(50), {
          symbol: "V_A",
          unit: "m/s",
          text: "Speed of the water into the propeller",
        }),
      })
      .exactOptional(),
    supplyCurrent: amount("I_s", "A", "Greatest current from the supply, all thrusters and the hotel load"),
    supplyVoltage: z
      .strictObject({ least: amount("U", "V", "Least"), greatest: amount("U", "V", "Greatest") })
      .exactOptional()
      .describe("Open-circuit voltage of the supplies that may be used"),
    diameter: amount("D", "m", "Greatest propeller diameter"),
    depth: si(z.number().min(0).max(11000), {
      symbol: "h",
      unit: "m",
      text: "Depth of the shaft, for cavitation and air drawn in; absent: neither is asked",
    }).exactOptional(),
    mass: amount("m", "kg", "Greatest mass"),
    price: z.number().positive().exactOptional().describe("Greatest price, in the currency of the parts"),
    counted: z
      .enum(["thruster", "all"])
      .default("thruster")
      .describe(
        "What mass and price are of. thruster: motor, controller, gear and propeller of one thruster; all: those of every thruster, pack and tether",
      ),
    notStated: z
      .enum(["fails", "nothing"])
      .default("fails")
      .describe(
        "What a mass or price that a part does not state counts as. fails: a limit on it can not be judged and fails; nothing: 0, so that sums are too low",
      ),
    endurance: z
      .strictObject({
        meanThrust: si(z.number().positive(), { symbol: "T", unit: "N", text: "Mean thrust ahead of one thruster" }),
        duration: si(z.number().positive(), { symbol: "t", unit: "s", text: "Time it must be kept up" }),
        reserve: si(z.number().min(0).max(0.99), {
          symbol: "r",
          unit: "1",
          text: "Share of the rated charge that must be left at the end",
        }).default(0.2),
      })
      .exactOptional(),
    windingTemperature: amount("T_max", "K", "Greatest winding temperature, besides the rating of the motor"),
    tipSpeed: amount("V_tip", "m/s", "Greatest speed of the blade tips, π n D: a stand-in for noise"),
    water: FluidState.describe("The water they work in"),
    ...hotelLoad,
    confidence: z
      .number()
      .min(0.5)
      .max(0.999)
      .exactOptional()
      .describe("Probability with which each demand must hold, e.g. 0.95; absent: the best estimate decides"),
    weights: ShortlistWeights.default({
      thrustPerPower: 1,
      mass: 0,
      price: 0,
      thrustMargin: 0,
      tipSpeed: 0,
      endurance: 0,
    }),
  })
  .meta({ id: "ShortlistRequirement" });
export type ShortlistRequirement = z.infer<typeof ShortlistRequirement>;
export type ShortlistRequirementInput = z.input<typeof ShortlistRequirement>;

const diameters = z
  .array(si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }))
  .max(200);

/** Propellers of a published series, one of each pitch and diameter. */
export const SeriesToTry = z
  .strictObject({
    series: SeriesWithoutPitch,
    pitchRatios: z
      .array(si(z.number().positive().max(3), { symbol: "P/D", unit: "1", text: "Pitch ratio" }))
      .min(1)
      .max(100),
    diameters: diameters.min(1),
  })
  .meta({ id: "SeriesToTry" });
export type SeriesToTry = z.infer<typeof SeriesToTry>;

/** What there is to choose from. Every combination of one of each is tried. */
export const PartsBox = z
  .strictObject({
    motors: z.array(Motor).max(5000).default([]),
    controllers: z.array(Controller).max(5000).default([]),
    withoutController: z
      .boolean()
      .default(false)
      .describe("Also try each motor with a controller that loses nothing and limits nothing"),
    supplies: z.array(SupplyAssembly).max(5000).default([]).describe("Packs with their tether and state"),
    packs: z.array(Pack).max(500).default([]).describe("More packs: each with each of the tethers; aboard without any"),
    tethers: z.array(TetherCable).max(500).default([]).describe("Tethers that the packs are combined with"),
    propellers: z.array(DrivePropeller).max(5000).default([]),
    scaleTo: diameters.default([]).describe("Diameters that each of the propellers is scaled to besides its own"),
    series: z.array(SeriesToTry).max(50).default([]).describe("Series propellers to try besides"),
    gears: z.array(Gear).max(500).default([]),
    directDrive: z.boolean().default(true).describe("Also try the propeller on the motor shaft"),
  })
  .meta({ id: "PartsBox" });
export type PartsBox = z.infer<typeof PartsBox>;
export type PartsBoxInput = z.input<typeof PartsBox>;

/** A requirement and the parts to meet it with. */
export const ShortlistRequest = z
  .strictObject({
    requirement: ShortlistRequirement,
    box: PartsBox,
    rows: z.int().min(1).max(500).default(25).describe("Best combinations to tell of"),
    misses: z.int().min(0).max(200).default(12).describe("Nearest misses to tell of"),
    monteCarlo: z
      .strictObject({
        rows: z.int().min(1).max(50).default(5).describe("Best combinations that are drawn"),
        draws: z.int().min(1000).max(1_000_000).default(20_000).describe("Times that all inputs are drawn"),
        seed: z.int().min(0).max(Number.MAX_SAFE_INTEGER).default(1).describe("The same gives the same draws"),
      })
      .exactOptional()
      .describe("Check of the first-order probabilities by drawing; absent: none"),
  })
  .meta({ id: "ShortlistRequest" });
export type ShortlistRequest = z.infer<typeof ShortlistRequest>;
export type ShortlistRequestInput = z.input<typeof ShortlistRequest>;

import { z } from "zod";
import { LIMIT_NAMES } from "./drive.ts";
import { DriveTrain } from "./driveTrain.ts";
import { si } from "./fields.ts";
import { Criterion, ShortlistRequirement } from "./shortlist.ts";
import { ResultWarning } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const count = (text: string) => z.int().min(0).describe(text);

/** When a demand is held against: a state of running, or the parts by themselves. */
const DUTIES = ["ahead", "astern", "atSpeed", "parts"] as const;
export const Duty = z.enum(DUTIES);
export type Duty = z.infer<typeof Duty>;

/** What can stand in the way of a demand besides the limits that bound a throttle. */
const OTHER_DEMANDS = [
  "voltage",
  "greatest current",
  "greatest temperature",
  "tip speed",
  "no thrust",
  "not known",
  "diameter",
  "voltage range",
  "motor voltage rating",
  "controller voltage rating",
  "mass",
  "price",
  "endurance",
] as const;

/**
 * One thing a combination must keep. The limits of the parts go by the names they have in a drive; "voltage": the
 * supply gives what the thrust takes; "greatest ...": as the requirement states it, besides the ratings of the parts;
 * "no thrust": the propeller gives none there; "not known": the parts do not say what would be needed to judge.
 */
export const DemandName = z.enum([...LIMIT_NAMES, ...OTHER_DEMANDS]);
export type DemandName = z.infer<typeof DemandName>;

const demandKey = {
  duty: Duty.describe("State of running in which it is held; parts: of the parts by themselves"),
  demand: DemandName,
};

/** A combination by its number and the names of its parts. */
export const CombinationName = z
  .strictObject({
    number: count("Place among all combinations, from 0"),
    motor: z.string(),
    controller: z.string().nullable(),
    supply: z.string(),
    gear: z.string().nullable().describe("null: the propeller sits on the motor shaft"),
    propeller: z.string(),
  })
  .meta({ id: "CombinationName" });
export type CombinationName = z.infer<typeof CombinationName>;

/** How far one demand is kept. */
export const DemandMargin = z
  .strictObject({
    ...demandKey,
    unit: z.string().describe("Of allowed, actual and margin"),
    allowed: z.number().nullable().describe("Value that may just be reached, in the unit; null where nothing is known"),
    actual: z.number().nullable().describe("Value at the demanded thrust, in the unit; null where nothing is known"),
    margin: z.number().nullable().describe("What is left, in the unit; negative: it is not kept; null: not known"),
    share: z.number().nullable().describe("The same as a share of what is allowed"),
    standardUncertainty: z.number().min(0).nullable().describe("Of the margin, in the unit; null where not worked out"),
    probability: z
      .number()
      .min(0)
      .max(1)
      .nullable()
      .describe("That it is kept, first order; null where not worked out"),
    kept: z.boolean().describe("By the best estimate, and with the stated confidence where one is asked for"),
    sentence: z.string(),
  })
  .meta({ id: "DemandMargin" });
export type DemandMargin = z.infer<typeof DemandMargin>;

/** Numbers of a point that carry a doubt. */
export const POINT_QUANTITIES = [
  "rotationRate",
  "throttle",
  "motorCurrent",
  "windingTemperature",
  "supplyCurrent",
  "supplyVoltage",
  "electricalPower",
  "thrustPerPower",
  "tipSpeed",
  "greatestThrust",
] as const;
const PointQuantity = z.enum(POINT_QUANTITIES);
export type PointQuantity = z.infer<typeof PointQuantity>;

/** A combination doing what one demand asks. */
export const DutyPoint = z
  .strictObject({
    duty: z.enum(["ahead", "astern", "atSpeed", "meanThrust"]),
    thrust: number("T", "N", "Thrust of one thruster"),
    advanceSpeed: number("V_A", "m/s", "Speed of the water into the propeller"),
    rotationRate: number("n", "rev/s", "Rotation rate of the propeller"),
    throttle: number("delta", "1", "Throttle; above 1: the supply does not give it"),
    motorCurrent: number("I_m", "A", "Motor current"),
    windingTemperature: si(z.number().nullable(), {
      symbol: "T",
      unit: "K",
      text: "Steady winding temperature; null where it is not worked out",
    }),
    supplyCurrent: number("I_s", "A", "Current from the supply, all thrusters and the hotel load"),
    supplyVoltage: number("U", "V", "Supply voltage under load"),
    electricalPower: number("P_e", "W", "Electrical power into one controller"),
    thrustPerPower: number("T/P_e", "N/W", "Thrust over electrical power"),
    tipSpeed: number("V_tip", "m/s", "Speed of the blade tips, π n D"),
    greatestThrust: si(z.number().nullable(), {
      symbol: "T",
      unit: "N",
      text: "Greatest thrust within all limits in this state; null where none is found",
    }),
    greatestThrottle: si(z.number().nullable(), { symbol: "delta", unit: "1", text: "Throttle of that thrust" }),
    governing: z.string().describe("What bounds that thrust, by the name of the demand"),
    standardUncertainties: z
      .partialRecord(PointQuantity, z.number().min(0))
      .exactOptional()
      .describe(
        "Standard uncertainty of the numbers above, in their units, from the doubt of the parts, first order; absent: the parts state none",
      ),
  })
  .meta({ id: "DutyPoint" });
export type DutyPoint = z.infer<typeof DutyPoint>;

/** One criterion of the ranking: value, where it lies between the worst (0) and the best (1) that meet, and its part. */
export const CriterionScore = z
  .strictObject({
    criterion: Criterion,
    value: z
      .number()
      .nullable()
      .describe("In the unit; null where the parts do not say, or where there is no end to it"),
    unit: z.string(),
    normalised: z.number().min(0).max(1).describe("0: the worst of those that meet the requirement, 1: the best"),
    weight: z.number().min(0).max(1).describe("Share of all weights"),
    contribution: z.number().min(0).max(1).describe("Weight times normalised value; the score is their sum"),
  })
  .meta({ id: "CriterionScore" });
export type CriterionScore = z.infer<typeof CriterionScore>;

export const DrawnProbability = z
  .strictObject({
    draws: z.int().min(1).describe("Times that all inputs were drawn"),
    seed: z.int().min(0).describe("Start of the draws"),
    all: z.number().min(0).max(1).describe("Share of the draws in which every demand is kept"),
    demands: z.array(
      z.strictObject({
        ...demandKey,
        probability: z.number().min(0).max(1).describe("Share in which this one is kept"),
      }),
    ),
  })
  .meta({ id: "DrawnProbability" });
export type DrawnProbability = z.infer<typeof DrawnProbability>;

/** A combination that meets the requirement. */
export const ShortlistRow = z
  .strictObject({
    rank: z
      .int()
      .min(1)
      .describe("1: the highest score with a propeller that is kept; those of a series, yardsticks, follow"),
    combination: CombinationName,
    score: z.number().min(0).max(1).describe("Sum of the contributions"),
    scores: z.array(CriterionScore),
    points: z.array(DutyPoint),
    demands: z.array(DemandMargin),
    tightest: z.string().describe("The demand with the least left, in words"),
    probability: z
      .number()
      .min(0)
      .max(1)
      .nullable()
      .describe("That the least certain demand is kept, first order; null where the parts state no uncertainty"),
    drawn: DrawnProbability.nullable(),
    mass: si(z.number().nullable(), { symbol: "m", unit: "kg", text: "Mass of what is counted; null: not stated" }),
    price: z.number().nullable().describe("Price of what is counted; null: not stated"),
    endurance: si(z.number().nullable(), {
      symbol: "t",
      unit: "s",
      text: "Time at the mean thrust; null where not asked, not known or without end",
    }),
    train: DriveTrain.describe("The drive, to look at it more closely"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "ShortlistRow" });
export type ShortlistRow = z.infer<typeof ShortlistRow>;

/** A combination that fails by little. */
export const NearMiss = z
  .strictObject({
    combination: CombinationName,
    shortfall: z.number().min(0).describe("Greatest share by which a demand is missed"),
    failing: z.array(DemandMargin).min(1),
    points: z.array(DutyPoint),
    sentence: z.string(),
    train: DriveTrain,
  })
  .meta({ id: "NearMiss" });
export type NearMiss = z.infer<typeof NearMiss>;

/** Why combinations fail. One that fails by several demands is counted in each. */
export const FailureCount = z
  .strictObject({
    ...demandKey,
    count: count("Combinations that do not keep it"),
    alone: count("Combinations that keep everything else: so many would be gained without it"),
    uncertain: count("Combinations that keep it by the best estimate, but not with the stated confidence"),
    easing: z
      .array(
        z.strictObject({
          share: z.number().positive().describe("Eased by this share of what is allowed"),
          gained: count("Combinations gained"),
        }),
      )
      .describe("What easing this one alone would gain"),
    least: z
      .strictObject({
        share: z.number().min(0).describe("Least easing that gains one, as a share"),
        amount: z.number().min(0).describe("The same in the unit"),
        unit: z.string(),
        combination: CombinationName,
      })
      .nullable()
      .describe("null where no combination fails by this one alone"),
    sentence: z.string(),
  })
  .meta({ id: "FailureCount" });
export type FailureCount = z.infer<typeof FailureCount>;

/** What became of one part. */
export const PartTally = z
  .strictObject({
    kind: z.enum(["motor", "controller", "supply", "gear", "propeller"]),
    name: z.string(),
    combinations: count("Combinations it is in"),
    meeting: count("Of those, how many meet the requirement"),
    mostly: z
      .strictObject({ ...demandKey, count: count("Combinations of this part that fail so") })
      .nullable()
      .describe("What most of its combinations fail by; null where none fails"),
    sentence: z.string(),
  })
  .meta({ id: "PartTally" });
export type PartTally = z.infer<typeof PartTally>;

/** Quantities that fronts are drawn over. */
export const FrontQuantity = z.enum(["thrustPerPower", "mass", "price", "thrust"]);
export type FrontQuantity = z.infer<typeof FrontQuantity>;

/** Combinations of which no other is better in both quantities. */
export const Front = z
  .strictObject({
    x: FrontQuantity,
    y: FrontQuantity,
    points: z.array(
      z.strictObject({
        combination: CombinationName,
        x: z.number().describe("Of the quantity on the x axis, SI"),
        y: z.number().describe("Of the quantity on the y axis, SI"),
      }),
    ),
    of: count("Combinations that meet the requirement and state both"),
    on: count("Combinations on the front; the list may be cut to some hundred of them"),
  })
  .meta({ id: "Front" });
export type Front = z.infer<typeof Front>;

export const Shortlist = z
  .strictObject({
    answer: z.string().describe("The outcome in a sentence or two"),
    requirement: ShortlistRequirement,
    counts: z.strictObject({
      motors: count("Motors"),
      controllers: count("Controllers, one without where asked for"),
      supplies: count("Supplies"),
      gears: count("Gears, direct drive among them"),
      propellers: count("Propellers, scaled and series ones among them"),
      combinations: count("Product of these"),
      meeting: count("Combinations that meet the requirement"),
      meetingByBestEstimate: count("Combinations that meet it when uncertainty is left out"),
      meetingAt95: count("Of those, how many keep each demand with a probability of 95 %, first order"),
    }),
    ranking: z
      .array(
        z.strictObject({
          criterion: Criterion,
          unit: z.string(),
          better: z.enum(["more", "less"]),
          weight: z.number().min(0).max(1).describe("Share of all weights"),
          worst: z.number().nullable().describe("Value that scores 0, in the unit; null where none states it"),
          best: z.number().nullable().describe("Value that scores 1, in the unit; null where none states it"),
        }),
      )
      .describe("How the score is made"),
    method: z.string().describe("How the score is made, in words"),
    rows: z.array(ShortlistRow),
    failures: z.array(FailureCount).describe("Why combinations fail, most first"),
    easing: z
      .array(z.strictObject({ ...demandKey, gained: count("Combinations gained without it"), sentence: z.string() }))
      .describe("What gains most when it is eased, most first"),
    misses: z.array(NearMiss).describe("Nearest first"),
    parts: z.array(PartTally),
    fronts: z.array(Front),
    warnings: z.array(ResultWarning),
    cautions: z.array(z.string()).describe("Blades, packs and water"),
  })
  .meta({ id: "Shortlist" });
export type Shortlist = z.infer<typeof Shortlist>;

import { z } from "zod";
import { si } from "../fields.ts";
import { ResultWarning, uncertainSi } from "../uncertain.ts";
import { EnergyAccount } from "./account.ts";
import { DoubtShare, LimitingPart } from "./motionAnswer.ts";
import { ToldNumber } from "./toldNumber.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const uncertain = (symbol: string, unit: string, text: string) => uncertainSi({ symbol, unit, text });
const told = (symbol: string, unit: string, text: string) => si(ToldNumber, { symbol, unit, text });
const share = (symbol: string, text: string) => number(symbol, "1", text);

/** What ends the time that a charge lasts. */
export const CutOff = z
  .enum(["reserve", "leastVoltage", "supplyCurrent", "fuseCurrent", "tetherCurrent", "thrust", "collapse", "curve"])
  .describe(
    "reserve: the share that must be left; leastVoltage: the least voltage under load; thrust: the thrusters no longer reach the demand at that voltage; collapse: the demand is more than the supply can give; curve: the end of the stated charge curve of the cell",
  );
export type CutOff = z.infer<typeof CutOff>;

/** By how much a demand is out of reach. */
export const DemandShortfall = z
  .strictObject({
    by: CutOff,
    needed: z.number().describe("What the demand needs, in the unit"),
    available: z.number().describe("What there is, in the unit"),
    unit: z.enum(["N", "W"]),
    limitedBy: LimitingPart.nullable(),
    sentence: z.string(),
  })
  .meta({ id: "DemandShortfall" });
export type DemandShortfall = z.infer<typeof DemandShortfall>;

/** One leg of the mission as it went. */
export const LegAnswer = z
  .strictObject({
    name: z.string(),
    does: z.enum(["swim", "hold", "climb", "push", "rest"]),
    state: z
      .enum(["done", "cut", "impossible", "notReached"])
      .describe(
        "cut: begun and ended early by the charge; impossible: it can not be done at the charge it would begin with; notReached: the mission had ended before",
      ),
    sentence: z.string(),
    duration: number("t", "s", "Time it asks for, all repeats").nullable().describe("Null: it makes no way"),
    time: number("t", "s", "Time it was done"),
    distance: number("s", "m", "Way over the ground, or change of depth, that was made; 0 where it stays"),
    charge: told("Q", "C", "Charge it took"),
    chargeBefore: share("s", "Share of the charge when it began"),
    chargeAfter: uncertain("s", "1", "Share of the charge when it ended"),
    power: told("P", "W", "Mean power from the bus").nullable().describe("Null: it was not done at all"),
    greatestCurrent: told("I", "A", "Greatest current from the supply, at its end").nullable(),
    leastVoltage: told("U", "V", "Least voltage of the bus, at its end").nullable(),
    energyTaken: told("E", "J", "Energy that left the ideal source"),
    energy: EnergyAccount.describe("Where that went, best estimates"),
    endedBy: CutOff.nullable().describe("Null: it was done, or not reached"),
    shortfall: DemandShortfall.nullable().describe("Null: it can be done at the charge it began with"),
  })
  .meta({ id: "LegAnswer" });
export type LegAnswer = z.infer<typeof LegAnswer>;

/** Charge and voltage through the mission, for the picture. */
export const DischargePoint = z
  .strictObject({
    time: number("t", "s", "Time from the start"),
    leg: z.int().describe("Index of the leg"),
    charge: share("s", "Share of the charge that is left"),
    openCircuitVoltage: number("U_oc", "V", "Open-circuit voltage"),
    voltage: number("U", "V", "Voltage of the bus under load"),
    current: number("I", "A", "Current from the supply"),
  })
  .meta({ id: "DischargePoint" });
export type DischargePoint = z.infer<typeof DischargePoint>;

/** The mission on the charge of the pack. */
export const MissionAnswer = z
  .strictObject({
    fits: z.boolean().describe("Every leg can be done and the reserve is left"),
    sentence: z.string(),
    legs: z.array(LegAnswer),
    duration: number("t", "s", "Time that all legs ask for").nullable().describe("Null: a leg makes no way"),
    time: number("t", "s", "Time it goes on, to its end or to what ends it"),
    charge: number("Q", "C", "Charge it takes until then"),
    chargeLeft: share("s", "Share of the charge left then"),
    energy: EnergyAccount,
    endsAt: z
      .strictObject({
        leg: z.int().describe("Index of the leg"),
        name: z.string(),
        after: number("t", "s", "Time from the beginning of that leg"),
        by: CutOff,
        sentence: z.string(),
      })
      .nullable()
      .describe("Null: it is done whole"),
    neededCharge: told("Q", "C", "Rated charge that does the whole of it with the reserve left, all else the same")
      .nullable()
      .describe("Null: no charge would do, as a leg is out of reach even of a full pack"),
    missingCharge: number("Q", "C", "Needed less rated charge; negative: to spare").nullable(),
    times: ToldNumber.nullable().describe(
      "How often it fits into the charge: all legs made this many times as long end at the reserve or what comes before; null: not at all, or without end",
    ),
    lasts: ToldNumber.nullable().describe(
      "That many times its duration, s: how long the charge lasts at this mix of legs",
    ),
    left: ToldNumber.nullable().describe("Share of the charge left at the end; null: it does not get there"),
    probabilityFits: z.number().min(0).max(1).nullable().describe("Probability that it fits, of first order"),
    shares: z
      .array(DoubtShare)
      .describe("What makes the time doubtful, the greatest share first: what to measure next"),
    track: z.array(DischargePoint),
  })
  .meta({ id: "MissionAnswer" });
export type MissionAnswer = z.infer<typeof MissionAnswer>;

/** Time and way on the usable charge at one speed ahead. */
export const EndurancePoint = z
  .strictObject({
    speed: number("V", "m/s", "Speed through the water"),
    power: number("P", "W", "Mean power from the bus"),
    time: number("t", "s", "Time that the usable charge lasts"),
    range: number("s", "m", "Way through the water in that time"),
    reach: number("s", "m", "Farthest point out against the current and back")
      .nullable()
      .describe("Null: no way is made against the current"),
    endedBy: CutOff,
  })
  .meta({ id: "EndurancePoint" });
export type EndurancePoint = z.infer<typeof EndurancePoint>;

/** The speed of the greatest way. */
export const BestSpeed = z
  .strictObject({
    speed: number("V", "m/s", "Speed through the water"),
    time: ToldNumber.describe("Time that the usable charge lasts at it, s"),
    range: ToldNumber.describe("Way at it, m"),
    within: z.tuple([z.number(), z.number()]).describe("Speeds between which the way is at most 2 % shorter, m/s"),
    shares: z.array(DoubtShare).describe("What makes it doubtful, the greatest share first"),
    sentence: z.string(),
  })
  .meta({ id: "BestSpeed" });
export type BestSpeed = z.infer<typeof BestSpeed>;

export const SpeedAnswer = z
  .strictObject({
    points: z.array(EndurancePoint).describe("From rest to the greatest speed that can be kept up"),
    bestRange: BestSpeed.nullable().describe("Farthest through the water; null: it does not go ahead"),
    bestReach: BestSpeed.nullable().describe(
      "Farthest out and back along the current; null: no current, or no way against it",
    ),
    sentence: z.string(),
  })
  .meta({ id: "SpeedAnswer" });
export type SpeedAnswer = z.infer<typeof SpeedAnswer>;

/** Holding a place in a current from one side. */
export const HoldingCell = z
  .strictObject({
    currentSpeed: number("U", "m/s", "Speed of the current"),
    currentFrom: number("psi", "rad", "Where it comes from, from the bow: 0 ahead, π/2 starboard, π astern"),
    state: z.enum(["held", "notHeld", "notKnown"]).describe("notKnown: the drag that way is not given"),
    power: number("P", "W", "Power from the bus, at the charge at the start")
      .nullable()
      .describe("Null: it can not be held"),
    current: number("I", "A", "Current from the supply").nullable(),
    time: number("t", "s", "Time that the usable charge lasts")
      .nullable()
      .describe("Null: it can not be held, or the charge is not stated"),
    shortfall: DemandShortfall.nullable().describe("By how much it can not be held; null: held or not known"),
  })
  .meta({ id: "HoldingCell" });
export type HoldingCell = z.infer<typeof HoldingCell>;

/** Power to hold a place over current and heading, for a map of colours. */
export const HoldingMap = z
  .strictObject({
    speeds: z.array(z.number()).describe("Speeds of the current, m/s: rows"),
    headings: z.array(z.number()).describe("Where it comes from, rad, 0 to π: columns"),
    cells: z.array(z.array(HoldingCell)).describe("A row for each speed; best estimates"),
    hardest: z
      .strictObject({
        currentSpeed: number("U", "m/s", "Speed of the current"),
        currentFrom: number("psi", "rad", "Where it comes from, from the bow"),
        power: uncertain("P", "W", "Power from the bus, at the charge at the start"),
      })
      .nullable()
      .describe("The cell of the greatest power in the last row that is held from every side, with its doubt"),
    sentence: z.string(),
  })
  .meta({ id: "HoldingMap" });
export type HoldingMap = z.infer<typeof HoldingMap>;

/** How one of the packs at hand does the mission. */
export const PackFit = z
  .strictObject({
    name: z.string(),
    fits: z.boolean(),
    charge: number("Q", "C", "Rated charge").nullable().describe("Null: not stated"),
    openCircuitVoltage: number("U_oc", "V", "Open-circuit voltage at the start"),
    resistance: number("R_s", "Ω", "Resistance of the supply with it"),
    times: z.number().nullable().describe("How often the mission fits into its charge; null: not at all, or not known"),
    chargeLeft: share("s", "Share of its charge left at the end, or at what ends the mission").nullable(),
    neededCharge: told(
      "Q",
      "C",
      "Rated charge it would need, as doubtful relative to itself as that of the mission",
    ).nullable(),
    isSure: z
      .boolean()
      .describe("Whether it fits or not is beyond the 95 % intervals of its charge and of the charge that is needed"),
    missingCharge: number("Q", "C", "Needed less rated charge; negative: to spare").nullable(),
    endedBy: CutOff.nullable(),
    sentence: z.string(),
  })
  .meta({ id: "PackFit" });
export type PackFit = z.infer<typeof PackFit>;

export const PackAdvice = z
  .strictObject({
    neededCharge: told(
      "Q",
      "C",
      "Rated charge for the mission with its reserve, at the voltage and resistance of this pack",
    ).nullable(),
    packs: z
      .array(PackFit)
      .describe("Those that fit first, the smallest charge first; then the rest, the nearest first"),
    smallestThatFits: z.string().nullable(),
    nearestThatDoesNot: z.string().nullable(),
    sentence: z.string(),
  })
  .meta({ id: "PackAdvice" });
export type PackAdvice = z.infer<typeof PackAdvice>;

/** Mission, range and time that the charge lasts. */
export const EnduranceAnswer = z
  .strictObject({
    sentence: z.string(),
    charge: z
      .strictObject({
        rated: number("Q", "C", "Rated charge"),
        start: share("s", "Share at the start"),
        reserve: share("r", "Share that must be left"),
        usable: number("Q", "C", "Charge between them"),
        energy: number("E", "J", "Energy of the ideal source between them, without losses"),
      })
      .nullable()
      .describe("Null: the charge of the pack is not stated; powers are told, and no times"),
    resistance: number("R_s", "Ω", "Resistance of the supply at its temperature"),
    temperature: number("T", "K", "Temperature of the pack"),
    mission: MissionAnswer.nullable().describe("Null: no mission, or the charge is not stated"),
    speeds: SpeedAnswer.nullable().describe("Null: the charge is not stated, or the vehicle does not go ahead"),
    holding: HoldingMap.nullable().describe("Null: not worked out"),
    packs: PackAdvice.nullable().describe("Null: no mission"),
    assumptions: z.array(z.string()),
    converged: z.boolean(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "EnduranceAnswer" });
export type EnduranceAnswer = z.infer<typeof EnduranceAnswer>;

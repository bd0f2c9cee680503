import type { ShortlistRequirement } from "../model/shortlist.ts";
import type { DemandName, Duty } from "../model/shortlistResult.ts";

/** Which way a demand bounds a quantity. */
type Bound = "at most" | "at least";

interface DemandKind {
  readonly demand: DemandName;
  readonly unit: string;
  readonly bound: Bound;
  /** What is bounded, in words that begin a sentence. */ readonly words: string;
  /** How it is missed, as a clause. */ readonly missed: string;
}

const kind = <D extends DemandName>(
  demand: D,
  unit: string,
  [words, missed]: readonly [string, string],
  bound: Bound = "at most",
): DemandKind & { readonly demand: D } => ({ ...{ demand, unit, words, missed, bound } });

/** Demands on a state of running, in the order of their slots. */
export const DUTY_DEMANDS = [
  kind("voltage", "V", ["voltage of the supply", "the voltage of the supply does not reach"], "at least"),
  kind("motor current", "A", ["motor current", "the motor current is above its rating"]),
  kind("motor power", "W", ["motor power", "the motor power is above its rating"]),
  kind("winding temperature", "K", ["winding", "the winding gets warmer than its rating"]),
  kind("controller current", "A", ["controller current", "the controller current is above its rating"]),
  kind("supply current", "A", ["pack current", "the pack current is above its rating"]),
  kind("fuse current", "A", ["fuse current", "the current is above the rating of the fuse"]),
  kind("tether current", "A", ["tether current", "the current is above the rating of the tether"]),
  kind("least supply voltage", "V", ["voltage under load", "the pack is drawn below its least voltage"], "at least"),
  kind("cavitation", "rev/s", ["rotation rate for cavitation", "the propeller cavitates"]),
  kind("ventilation", "rev/s", ["rotation rate for air drawn in", "the propeller draws air"]),
  kind("greatest current", "A", ["supply current", "the supply current is above what is asked"]),
  kind("greatest temperature", "K", ["winding, as asked,", "the winding gets warmer than asked, or is not known"]),
  kind("tip speed", "m/s", ["tip speed", "the blade tips are faster than asked"]),
  kind("no thrust", "", ["thrust", "the controller turns its motor one way only"], "at least"),
  kind("not known", "", ["coefficients", "the coefficients of the propeller are not known"], "at least"),
] as const;

/** Demands on the parts by themselves, in the order of their slots. */
const PARTS_DEMANDS = [
  kind("diameter", "m", ["propeller diameter", "the propeller is too large"]),
  kind("voltage range", "V", ["voltage of the supply", "the supply lies outside the voltage range"]),
  kind("motor voltage rating", "V", ["supply voltage for the motor", "the supply voltage is above the motor's rating"]),
  kind("controller voltage rating", "V", [
    "supply voltage for the controller",
    "the supply voltage is above the controller's rating",
  ]),
  kind("mass", "kg", ["mass", "it is too heavy"]),
  kind("price", "", ["price", "it is too dear"]),
  kind("endurance", "s", ["endurance", "the charge does not last"], "at least"),
  kind("not known", "", ["mass, price or charge", "a mass, price or charge that is asked is not stated"], "at least"),
] as const;

type DutyDemand = (typeof DUTY_DEMANDS)[number]["demand"];
type PartsDemand = (typeof PARTS_DEMANDS)[number]["demand"];

const placeIn = <D extends string>(demands: readonly { readonly demand: string }[]) =>
  Object.fromEntries(demands.map(({ demand }, place) => [demand, place])) as Record<D, number>;

/** Place of a demand after the first slot of its duty. */
export const AT_DUTY: Readonly<Record<DutyDemand, number>> = placeIn<DutyDemand>(DUTY_DEMANDS);
/** Place of a demand on the parts after their first slot. */
export const AT_PARTS: Readonly<Record<PartsDemand, number>> = placeIn<PartsDemand>(PARTS_DEMANDS);

export interface DemandSlot extends DemandKind {
  readonly duty: Duty;
}

/** A state of running that the requirement asks for. */
export interface AskedDuty {
  readonly duty: Exclude<Duty, "parts">;
  /** Thrust of one thruster, N. */ readonly thrust: number;
  /** Speed of the water into the propeller, m/s. */ readonly advanceSpeed: number;
}

/** Everything that a requirement may be missed by, one slot each: duty after duty, then the parts by themselves. */
export interface DemandTable {
  readonly duties: readonly AskedDuty[];
  readonly slots: readonly DemandSlot[];
  /** First slot of the parts by themselves. */
  readonly partsBase: number;
}

/** The slots of a requirement, in the order in which a tally keeps them. */
export function demandTable(requirement: ShortlistRequirement): DemandTable {
  const duties = askedDuties(requirement);
  const ofDuty = duties.flatMap(({ duty }) => DUTY_DEMANDS.map((demand) => ({ ...demand, duty })));
  const ofParts = PARTS_DEMANDS.map((demand) => ({ ...demand, duty: "parts" as const }));
  return { duties, slots: [...ofDuty, ...ofParts], partsBase: ofDuty.length };
}

/**
 * The states of running that a requirement asks thrust in; the first is what the ranking goes by. Where no thrust is
 * asked it is no thrust ahead: what fails then fails with the throttle closed.
 */
function askedDuties({ thrustAhead, thrustAtSpeed, thrustAstern }: ShortlistRequirement): AskedDuty[] {
  const asked: AskedDuty[] = [];
  if (thrustAhead !== undefined) asked.push({ duty: "ahead", thrust: thrustAhead, advanceSpeed: 0 });
  if (thrustAtSpeed !== undefined) {
    asked.push({ duty: "atSpeed", thrust: thrustAtSpeed.thrust, advanceSpeed: thrustAtSpeed.speed });
  }
  if (thrustAstern !== undefined) asked.push({ duty: "astern", thrust: thrustAstern, advanceSpeed: 0 });
  return asked.length > 0 ? asked : [{ duty: "ahead", thrust: 0, advanceSpeed: 0 }];
}

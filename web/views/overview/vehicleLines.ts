import type { LimitingPart } from "../../../shared/model/vehicle/motionAnswer.ts";
import type { DemandCheck, RequirementCheck } from "../../../shared/model/vehicle/requirementAnswer.ts";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatNumber } from "../../../shared/quantity/format.ts";
import { atMostWords, isAtMost } from "../../../shared/vehicle/motion/wayWarnings.ts";
import { counts, joined } from "../../app/words.ts";
import { AMPERE, NEWTON, WATT } from "../bench/shownUnits.ts";
import { sureText } from "../shortlist/resultModel.ts";
import { METRE_PER_SECOND, MINUTE, shownUncertain } from "../vehicle/answer/units.ts";
import type { Beside } from "../vehicle/besides.ts";
import { limitSection } from "../vehicle/limitPlace.ts";

/** A number of a vehicle, and where it is told at length. */
export interface VehicleFact {
  readonly label: string;
  readonly value: string;
  readonly section: string;
}

/** What the overview says of one vehicle. */
export interface VehicleLine {
  readonly name: string;
  /** Place in the project, for the address of its screen. */
  readonly place: string;
  readonly state: "answered" | "working" | "problem";
  /** Its state in words; empty where the facts say it. */
  readonly sentence: string;
  readonly facts: readonly VehicleFact[];
  readonly verdict: Verdict | null;
  /** What keeps it from more, and the section that describes that part. */
  readonly limit: { readonly text: string; readonly section: string } | null;
}

export interface Verdict {
  readonly tone: "met" | "unsure" | "missed";
  readonly text: string;
}

export function vehicleLine({ name, answered, gap }: Beside, at: number): VehicleLine {
  const base = { name, place: String(at), facts: [], verdict: null, limit: null };
  if (gap !== "") return { ...base, state: "problem", sentence: gap };
  if (answered.state === "refused") return { ...base, state: "problem", sentence: answered.why };
  if (answered.state === "none") return { ...base, state: "working", sentence: "The workbench is working it out …" };
  const { answer } = answered;
  const limit = limitOf(answer);
  const section = limitSection(limit);
  return {
    ...base,
    ...{ state: "answered", sentence: "", facts: factsOf(answer), verdict: verdictOf(answer.requirement) },
    limit: limit !== null && section !== null ? { text: limit.text, section } : null,
  };
}

const aheadOf = ({ motions }: VehicleAnswer) => motions.find(({ way }) => way === "ahead");

/** Null where it does not go ahead. */
function speedAhead(answer: VehicleAnswer): string | null {
  const ahead = aheadOf(answer);
  if (!ahead?.speed) return null;
  const told = shownUncertain(ahead.speed, METRE_PER_SECOND);
  return atMostWords(told, isAtMost(ahead.warnings));
}

function factsOf(answer: VehicleAnswer): VehicleFact[] {
  const ahead = aheadOf(answer);
  const { current = null, power = null } = ahead?.atSpeed ?? {};
  const { mission, speeds } = answer.endurance ?? {};
  const best = speeds?.bestRange;
  return [
    {
      label: "Top speed ahead",
      value: speedAhead(answer) ?? "none",
      section: "vehicle-speed",
    },
    {
      label: "Pull at rest, on the hull",
      value: shownUncertain(ahead?.force ?? null, NEWTON),
      section: "vehicle-speed",
    },
    { label: "Current at top speed", value: shownUncertain(current, AMPERE), section: "vehicle-speed" },
    { label: "Power at top speed", value: shownUncertain(power, WATT), section: "vehicle-speed" },
    ...(mission
      ? [
          {
            label: "Could keep its mission up for",
            value: shownUncertain(mission.lasts, MINUTE),
            section: "vehicle-endurance",
          },
        ]
      : best
        ? [{ label: "Lasts at best range", value: shownUncertain(best.time, MINUTE), section: "vehicle-endurance" }]
        : []),
  ];
}

const probabilityOf = ({ probability, probabilityDrawn }: DemandCheck) => probabilityDrawn ?? probability;

/** The demand that decides: missed before unsure, then the least sure, then the least margin. */
function decidingDemand({ demands }: Pick<RequirementCheck, "demands">): DemandCheck | null {
  // Where nobody can say how sure it is, it is the least sure.
  const sure = (one: DemandCheck) => probabilityOf(one) ?? Number(one.certain);
  const rank = (one: DemandCheck) => [Number(one.met), sure(one), one.margin ?? Infinity] as const;
  return (
    [...demands].sort((a, b) => {
      const [x, y] = [rank(a), rank(b)];
      return x[0] - y[0] || x[1] - y[1] || compared(x[2], y[2]);
    })[0] ?? null
  );
}

/** Also of two that are infinite. */
const compared = (a: number, b: number) => (a === b ? 0 : a - b);

function verdictOf(check: RequirementCheck | null): Verdict | null {
  if (check === null) return null;
  const missed = check.demands.filter(({ met }) => !met);
  const deciding = decidingDemand(check);
  const tightest = deciding === null ? "" : ` Tightest: ${demandText(deciding)}.`;
  const all = counts(check.demands.length, "demand");
  if (missed.length > 0)
    return { tone: "missed", text: `Misses ${missed.length} of ${all}: ${joined(missed.map(demandText))}.` };
  return check.certain
    ? { tone: "met", text: `Meets all it must: ${all}, each sure enough.${tightest}` }
    : { tone: "unsure", text: `Meets ${all} by the best estimate, not surely.${tightest}` };
}

/** "Depth" or "Time it works, margin +402 %, over 99 % sure". */
function demandText(demand: DemandCheck): string {
  const { name, margin } = demand;
  const probability = probabilityOf(demand);
  const by =
    margin === null ? "" : `, margin ${margin >= 0 ? "+" : "−"}${formatNumber(Math.abs(100 * margin), 2)}\u202f%`;
  return `${name}${by}${probability === null ? "" : `, ${sureText(probability)} sure`}`;
}

/** Of what is missed or tightest, else of going ahead. */
function limitOf(answer: VehicleAnswer): LimitingPart | null {
  const deciding = answer.requirement && decidingDemand(answer.requirement);
  const ahead = aheadOf(answer);
  return deciding?.limitedBy ?? (ahead?.atSpeed ?? ahead?.atRest)?.limitedBy ?? null;
}

/** What the vehicle on show does, as the second sentence of the overview; empty until it is known. */
export function vehicleSentence({ name, answered }: Beside): string {
  if (answered.state !== "answered") return "";
  const { requirement } = answered.answer;
  const speed = speedAhead(answered.answer);
  const goes = speed === null ? "does not go ahead" : `goes ahead at ${speed}`;
  if (requirement === null) return `“${name}” ${goes}.`;
  const missed = requirement.demands.filter(({ met }) => !met).length;
  const all = counts(requirement.demands.length, "demand");
  const verdict =
    missed > 0
      ? `misses ${missed} of its ${all}`
      : requirement.certain
        ? `meets its ${all}`
        : `meets its ${all} by the best estimate, not surely`;
  return `“${name}” ${goes} and ${verdict}.`;
}

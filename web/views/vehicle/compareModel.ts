import type { Vehicle } from "../../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatUncertain, type ShownUnit } from "../../../shared/quantity/format.ts";
import { hasInterval, type Told } from "../../../shared/quantity/told.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { commonInputs } from "../../../shared/vehicle/check/commonInputs.ts";
import { differenceOf, isToldApart, type SharedResult } from "../../../shared/vehicle/check/differenceOf.ts";
import { counts, joined } from "../../app/words.ts";
import { AMPERE, NEWTON, WATT } from "../bench/shownUnits.ts";
import { sureText } from "../shortlist/resultModel.ts";
import { METRE_PER_SECOND, MINUTE, shownUncertain } from "./answer/units.ts";

type Motion = VehicleAnswer["motions"][number];
type Shares = SharedResult["shares"];

/** One thing that vehicles are held against each other by. */
export interface Compared {
  readonly name: string;
  readonly cell: (answer: VehicleAnswer) => string;
  /** The number behind it with its doubt; absent: it is told without doubt, or in words. */
  readonly doubtful?: (answer: VehicleAnswer) => { readonly value: Told | null; readonly shares: Shares };
  readonly unit?: ShownUnit;
}

const motionOf = ({ motions }: VehicleAnswer, way: Motion["way"]) => motions.find((one) => one.way === way);

const doubtful = (name: string, unit: ShownUnit, of: NonNullable<Compared["doubtful"]>): Compared => ({
  ...{ name, unit, doubtful: of },
  cell: (answer) => shownUncertain(of(answer).value, unit),
});

const speed = (name: string, way: Motion["way"]) =>
  doubtful(name, METRE_PER_SECOND, (answer) => {
    const motion = motionOf(answer, way);
    return { value: motion?.speed ?? null, shares: motion?.shares ?? [] };
  });

/** Without shares of its own: what the vehicles have in common then counts twice, so that too little is told apart. */
const bare = (name: string, unit: ShownUnit, of: (answer: VehicleAnswer) => Told | null | undefined) =>
  doubtful(name, unit, (answer) => ({ value: of(answer) ?? null, shares: [] }));

/** What two vehicles are held against each other by. */
export const COMPARED: readonly Compared[] = [
  speed("Speed ahead", "ahead"),
  speed("Speed astern", "astern"),
  speed("Speed sideways", "starboard"),
  speed("Speed up", "up"),
  bare("Force ahead at rest", NEWTON, (answer) => motionOf(answer, "ahead")?.force),
  bare("Force up at rest", NEWTON, (answer) => motionOf(answer, "up")?.force),
  bare("Current at full speed ahead", AMPERE, (answer) => motionOf(answer, "ahead")?.atSpeed?.current),
  bare("Power at full speed ahead", WATT, (answer) => motionOf(answer, "ahead")?.atSpeed?.power),
  bare("Holds its place from any side up to", METRE_PER_SECOND, ({ headings }) => headings?.leastCurrentHeld),
  bare("Greatest payload, weight in water", NEWTON, ({ vertical }) => vertical.greatestPayload),
  doubtful("Lasts, at the mix of its mission", MINUTE, ({ endurance }) => ({
    value: endurance?.mission?.lasts ?? null,
    shares: endurance?.mission?.shares ?? [],
  })),
  { name: "What it must do", cell: ({ requirement }) => requirementText(requirement) },
];

function requirementText(check: VehicleAnswer["requirement"]): string {
  if (check === null) return "–";
  const missed = check.demands.filter(({ met }) => !met).map(({ name }) => name);
  if (missed.length > 0) return `misses ${missed.join(", ")}`;
  if (check.certain) return "met";
  const sure = check.demands.map(({ probability, probabilityDrawn }) => probabilityDrawn ?? probability);
  const unsaid = check.demands.find(({ certain }, at) => sure[at] === null && !certain);
  if (unsaid) return `met by the best estimate, how sure is not known of ${unsaid.name}`;
  const least = Math.min(...sure.map((one) => one ?? 1));
  return `met by the best estimate, the least sure demand ${sureText(least)}`;
}

/** A vehicle with what it does. */
export interface AnsweredVehicle {
  readonly of: Vehicle;
  readonly answer: VehicleAnswer;
}

export interface Difference {
  readonly name: string;
  /** "−0.097 ± 0.018 m/s". */
  readonly text: string;
  /** Beyond its doubt. */
  readonly isTold: boolean;
  /** Text and verdict, as they stand under a number. */
  readonly line: string;
}

/** What a vehicle does more or less than another, as far as both state their doubt. */
export function differences(from: AnsweredVehicle, to: AnsweredVehicle): Difference[] {
  const isCommon = commonInputs(from.of, to.of);
  return COMPARED.flatMap(({ name, doubtful: of, unit }) => {
    if (of === undefined || unit === undefined) return [];
    const [first, second] = [of(from.answer), of(to.answer)];
    if (first.value === null || second.value === null) return [];
    if (!hasInterval(first.value) || !hasInterval(second.value)) return [];
    const change = differenceOf({ ...first, value: first.value }, { ...second, value: second.value }, isCommon);
    const isTold = isToldApart(change);
    const text = differenceText(change, unit);
    return [{ name, isTold, text, line: text === SAME ? SAME : `${text}, ${isTold ? "differs" : "not told apart"}` }];
  });
}

const SAME = "the same";

/** With its sign, but for what rounds to nothing. */
function differenceText(change: Uncertain, unit: ShownUnit): string {
  if (change.value === 0 && change.standardUncertainty === 0) return SAME;
  const text = formatUncertain(change, unit);
  return change.value > 0 && !/^0(\.0+)? /.test(text) ? `+${text}` : text;
}

/** Which numbers differ beyond their doubt, in a sentence. */
export function differenceSentence(from: string, to: string, all: readonly Difference[]): string {
  const told = all.filter(({ isTold }) => isTold);
  if (all.length === 0) return `Nothing of “${to}” can be held against “${from}”.`;
  if (told.length === 0) return `“${to}” and “${from}” can not be told apart: no number differs beyond its doubt.`;
  const list = told.map(({ name, text }) => `${name.charAt(0).toLowerCase()}${name.slice(1)} (${text})`);
  const open = all.length - told.length;
  const rest = open === 0 ? "" : ` ${counts(open, "other number")} can not be told apart.`;
  return `“${to}” differs from “${from}” beyond the doubt in ${joined(list)}.${rest}`;
}

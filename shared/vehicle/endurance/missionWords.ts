import type { LegAnswer, MissionAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import { formatNumber } from "../../quantity/format.ts";
import { hasInterval, type Told } from "../../quantity/told.ts";
import type { Battery } from "./battery.ts";
import type { LegTold } from "./legDoubts.ts";
import type { LegRun, MissionRun } from "./missionRun.ts";
import type { Leg } from "./plan.ts";
import {
  CUT_OFF_WORDS,
  chargeWords,
  shareWords,
  shortfallWords,
  timeWords,
  uncertainChargeWords,
  uncertainEnergyWords,
  uncertainShareWords,
  uncertainTimesWords,
  uncertainTimeWords,
  wayWords,
} from "./words.ts";

/** What came of a leg, as a sentence. */
export function legSentence(
  { leg, duration, pace, draw }: Leg,
  run: LegRun,
  { shortfall, told }: { readonly shortfall: LegAnswer["shortfall"]; readonly told: LegTold | null },
): string {
  if (run.state === "notReached") return "Not reached: the mission ends before.";
  if (duration === null) {
    return leg.kind.does === "climb"
      ? "It can not be done: at no vertical speed it does not change its depth."
      : `It can not be done: at that speed it makes ${pace === 0 ? "no way" : "way backwards"} over the ground against the current.`;
  }
  if (run.state === "impossible") {
    return `It can not be done. ${shortfallWords(draw.can ? shortfall : draw.shortfall)}`;
  }
  const way = pace > 0 && run.time > 0 ? `, ${wayWords(pace * run.time)}` : "";
  if (run.state === "done") {
    if (told === null) return "Done: it takes no time.";
    const cost = `${uncertainChargeWords(told.charge)} and ${uncertainEnergyWords(told.energyTaken)} from the source`;
    return `Done in ${timeWords(run.time)}${way}, with ${cost}; ${uncertainShareWords(told.chargeAfter)} of the charge is left.`;
  }
  const left = timeWords(duration - run.time);
  return `Ends after ${timeWords(run.time)}${way}, ${left} too early, because ${CUT_OFF_WORDS[run.endedBy ?? "reserve"]}.`;
}

/** Where and why a mission ends before its time. */
export function endSentence(legs: readonly Leg[], run: MissionRun, leg: LegAnswer): string {
  const at = `leg ${run.endsAt! + 1} of ${legs.length}, ${leg.name}`;
  if (leg.state === "impossible") return `It ends before ${at}, after ${timeWords(run.time)}: ${leg.sentence}`;
  return `It ends in ${at}, ${timeWords(leg.time)} into it and ${timeWords(run.time)} after the start, because ${CUT_OFF_WORDS[leg.endedBy ?? "reserve"]}.`;
}

export interface MissionInWords {
  readonly run: MissionRun;
  readonly battery: Battery;
  readonly end: MissionAnswer["endsAt"];
  readonly times: Told | null;
  readonly lasts: Told | null;
  /** Share of the charge left at its end; null: it does not get there. */ readonly left: Told | null;
  /** C; null: no charge does it. */ readonly neededCharge: Told | null;
}

/** Why there is no interval is said of the time before it. */
const often = (times: Told): string =>
  hasInterval(times) ? uncertainTimesWords(times) : `${formatNumber(times.value, 2)} times`;

/** The mission in a sentence or two. */
export function missionSentence({ run, battery, end, times, lasts, left, neededCharge }: MissionInWords): string {
  const reserve = shareWords(battery.floor);
  if (end === null) {
    const longer =
      times === null || lasts === null
        ? ""
        : ` At this mix of legs the charge lasts ${uncertainTimeWords(lasts)}, ${often(times)} the mission.`;
    return `The mission fits: after ${timeWords(run.time)} ${left ? uncertainShareWords(left) : shareWords(run.left)} of the charge is left, and ${reserve} must be.${longer}`;
  }
  if (neededCharge === null) return `The mission can not be done. ${end.sentence}`;
  const missing = `${uncertainChargeWords(neededCharge)} are needed with the reserve of ${reserve}, ${chargeWords(neededCharge.value - battery.rated)} more than the pack has.`;
  return `The mission is longer than the charge. ${end.sentence} ${missing}`;
}

import type { SpeedOverTether } from "../../model/vehicle/speedOverTether.ts";
import { formatNumber } from "../../quantity/format.ts";
import { formatBare, formatTold } from "../../quantity/told.ts";
import { METRE_PER_SECOND } from "../tether/shownUnits.ts";

type Told = Pick<SpeedOverTether, "without" | "straight" | "points" | "scenario" | "requirement">;

/** Current that the speeds are for, and the one that is asked for, m/s. */
interface Currents {
  readonly told: number;
  readonly asked: number;
}

/** What the length of the tether does to the speed, in a sentence or two. */
export function overTetherSentence({ without, points, scenario, requirement }: Told, currents: Currents): string {
  if (without === null) return "It does not go ahead, with a tether or without.";
  const moving = points.filter(({ speed }) => speed !== null);
  const longest = moving.at(-1);
  const free = `Without a tether it goes ${formatTold(without, METRE_PER_SECOND)} ahead through the water`;
  if (longest === undefined) return `${free}; with any length that is told it does not move ahead.`;
  const far = scenario?.speed ? scenario : longest;
  const out = `${free}, with ${formatNumber(far.length)} m out ${formatBare(far.speed!, METRE_PER_SECOND)}`;
  const then =
    longest === far ? "." : `, with ${formatNumber(longest.length)} m ${formatBare(longest.speed!, METRE_PER_SECOND)}.`;
  return `${out}${then}${askedSentence(requirement, longest)}${currentSentence(requirement, currents)}`;
}

/** The speeds are judged in the current of the scenario; the requirement may ask for another. */
function currentSentence(requirement: Told["requirement"], { told, asked }: Currents): string {
  if (requirement === null || requirement.needed === null || requirement.at.speed === null || told === asked) return "";
  return ` That is in the scenario's current of ${formatNumber(told)} m/s; in the ${formatNumber(asked)} m/s that are asked for the pull of the tether differs, and the requirement is judged in those.`;
}

function askedSentence(requirement: Told["requirement"], longest: Told["points"][number]): string {
  if (requirement === null) return "";
  const { at, needed, greatestLength } = requirement;
  const asked = `${formatNumber(at.length)} m of tether`;
  if (at.speed === null) return ` With the ${asked} that are asked for there is no speed: ${at.reason}`;
  if (needed === null) return "";
  const through = `${formatNumber(needed)} m/s through the water`;
  if (greatestLength !== null)
    return ` It keeps the ${through} that are asked for with up to ${formatNumber(greatestLength)} m out.`;
  if (at.speed.value >= needed)
    return ` It keeps the ${through} that are asked for at all lengths up to ${formatNumber(longest.length)} m.`;
  // All but taut a tether pulls more than a slacker one.
  return longest.speed!.value >= needed
    ? ` With the ${asked} that are asked for it does not reach the ${through}; a slacker one pulls less here.`
    : ` It does not reach the ${through} that are asked for at any length that is told.`;
}

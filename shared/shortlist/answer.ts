import type { ShortlistRequirement } from "../model/shortlist.ts";
import type { Shortlist } from "../model/shortlistResult.ts";
import { formatNumber } from "../quantity/format.ts";
import { asksNothing } from "./demandsInWords.ts";
import { nearestInWords } from "./failures.ts";
import { pointInWords } from "./pointInWords.ts";
import { combinationInWords, combinationsInWords, countInWords, DUTY_WORDS, probabilityInWords } from "./words.ts";
import { besideYardsticks } from "./yardstick.ts";

const NEWTON = { symbol: "N", factor: 1 };
const NEWTON_PER_WATT = { symbol: "N/W", factor: 1 };

type Told = Pick<Shortlist, "counts" | "rows" | "failures" | "misses">;

/** The outcome in a few sentences. */
export function answerInWords(requirement: ShortlistRequirement, told: Told): string {
  const { counts, rows } = told;
  const best = rows[0];
  if (best === undefined) return noneMeets(requirement, told);
  const sentences = [
    meeting(requirement, counts),
    `Best by the weights: ${combinationInWords(best.combination)}${doing(best)}.`,
    `Least left: ${best.tightest.charAt(0).toLowerCase()}${best.tightest.slice(1)}`,
    ...besideYardsticks(rows),
  ];
  if (requirement.confidence === undefined && counts.meetingAt95 < counts.meetingByBestEstimate) {
    sentences.push(
      `With the uncertainty of the parts counted, ${countInWords(counts.meetingAt95)} of them ${counts.meetingAt95 === 1 ? "keeps" : "keep"} each single demand with a probability of 95 % or more.`,
    );
  }
  return sentences.join(" ");
}

/** Without a demand nothing is met: what is counted then is told as what it is. */
function meeting(requirement: ShortlistRequirement, { meeting, combinations }: Told["counts"]): string {
  const some = `${countInWords(meeting)} of ${combinationsInWords(combinations)}`;
  if (asksNothing(requirement))
    return `The requirement asks nothing, so this is no choice yet: ${some} ${meeting === 1 ? "keeps" : "keep"} within the ratings of the parts.`;
  return `${some} ${meeting === 1 ? "meets" : "meet"} the requirement${withConfidence(requirement)}.`;
}

function withConfidence({ confidence }: ShortlistRequirement): string {
  return confidence === undefined ? "" : ` with a probability of ${probabilityInWords(confidence)} for each demand`;
}

function doing({ points }: Shortlist["rows"][number]): string {
  const point = points.find(({ greatestThrust }) => greatestThrust !== null);
  if (point === undefined) return "";
  return `, up to ${pointInWords(point, "greatestThrust", NEWTON)} ${DUTY_WORDS[point.duty]} within all limits, ${pointInWords(point, "thrustPerPower", NEWTON_PER_WATT)} at ${formatNumber(point.thrust)} N`;
}

function noneMeets(requirement: ShortlistRequirement, { counts, failures, misses }: Told): string {
  const none = `None of ${combinationsInWords(counts.combinations)} meets the requirement${withConfidence(requirement)}.`;
  const most = failures[0] === undefined ? "" : ` ${failures[0].sentence}`;
  if (counts.meetingByBestEstimate > 0) {
    return `${none} By the best estimate ${countInWords(counts.meetingByBestEstimate)} would: measure the parts better, or ask for less confidence.`;
  }
  const nearest = misses[0]?.sentence ?? nearestInWords(failures);
  return `${none}${most}${nearest === "" ? "" : ` Nearest: ${nearest}`}`;
}

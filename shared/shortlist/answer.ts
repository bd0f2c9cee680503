import type { ShortlistRequirement } from "../model/shortlist.ts";
import type { Shortlist } from "../model/shortlistResult.ts";
import { formatNumber } from "../quantity/format.ts";
import { nearestInWords } from "./failures.ts";
import { combinationInWords, combinationsInWords, countInWords, DUTY_WORDS, probabilityInWords } from "./words.ts";

type Told = Pick<Shortlist, "counts" | "rows" | "failures" | "misses">;

/** The outcome in a few sentences. */
export function answerInWords(requirement: ShortlistRequirement, told: Told): string {
  const { counts, rows } = told;
  const best = rows[0];
  if (best === undefined) return noneMeets(requirement, told);
  const sentences = [
    `${countInWords(counts.meeting)} of ${combinationsInWords(counts.combinations)} ${counts.meeting === 1 ? "meets" : "meet"} the requirement${withConfidence(requirement)}.`,
    `Best by the weights: ${combinationInWords(best.combination)}${doing(best)}.`,
    `Least left: ${best.tightest.charAt(0).toLowerCase()}${best.tightest.slice(1)}`,
  ];
  if (requirement.confidence === undefined && counts.meetingAt95 < counts.meetingByBestEstimate) {
    sentences.push(
      `With the uncertainty of the parts counted, ${countInWords(counts.meetingAt95)} of them ${counts.meetingAt95 === 1 ? "keeps" : "keep"} each single demand with a probability of 95 % or more.`,
    );
  }
  return sentences.join(" ");
}

function withConfidence({ confidence }: ShortlistRequirement): string {
  return confidence === undefined ? "" : ` with a probability of ${probabilityInWords(confidence)} for each demand`;
}

function doing({ points }: Shortlist["rows"][number]): string {
  const point = points.find(({ greatestThrust }) => greatestThrust !== null);
  if (point === undefined) return "";
  return `, up to ${formatNumber(point.greatestThrust!)} N ${DUTY_WORDS[point.duty]} within all limits, ${formatNumber(point.thrustPerPower)} N/W at ${formatNumber(point.thrust)} N`;
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

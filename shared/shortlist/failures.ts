import type { FailureCount, PartTally, Shortlist } from "../model/shortlistResult.ts";
import { formatPercent } from "../quantity/format.ts";
import { combinationCount } from "./combinations.ts";
import { combinationName } from "./details.ts";
import type { PartRecords } from "./partRecords.ts";
import { EASINGS, partBases, type Tally } from "./tally.ts";
import {
  asSentence,
  combinationInWords,
  combinationsInWords,
  countInWords,
  differenceInWords,
  missedInWords,
} from "./words.ts";

/** Slot that most combinations of a row of counts fail; -1 where none does. */
function mostFailed(counts: Float64Array, from: number, slots: number): number {
  let most = -1;
  for (let slot = 0; slot < slots; slot++) {
    const count = counts[from + slot]!;
    if (count > 0 && (most < 0 || count > counts[from + most]!)) most = slot;
  }
  return most;
}

/** Why combinations fail, most first. */
export function failuresOf(
  records: PartRecords,
  tally: Tally,
  leastOf: (slot: number, number: number) => number | null,
): FailureCount[] {
  const { slots } = records.table;
  const counted = slots.map((_, slot) => slot).filter((slot) => tally.failing[slot]! + tally.uncertain[slot]! > 0);
  counted.sort((a, b) => tally.failing[b]! - tally.failing[a]! || a - b);
  return counted.map((slot) => {
    const { duty, demand, unit } = slots[slot]!;
    const least = leastEasing(records, tally, slot, leastOf);
    const failure = {
      ...{ duty, demand, least },
      count: tally.failing[slot]!,
      alone: tally.alone[slot]!,
      uncertain: tally.uncertain[slot]!,
      easing: EASINGS.map((share, k) => ({ share, gained: tally.eased[slot * EASINGS.length + k]! })),
    };
    return { ...failure, sentence: failureInWords(failure, missedInWords(slots[slot]!), unit) };
  });
}

function leastEasing(
  records: PartRecords,
  tally: Tally,
  slot: number,
  leastOf: (slot: number, number: number) => number | null,
): FailureCount["least"] {
  const [share, number] = [tally.leastShare[slot]!, tally.leastNumber[slot]!];
  if (!Number.isFinite(share) || number < 0) return null;
  const amount = leastOf(slot, number);
  if (amount === null) return null;
  return { share, amount, unit: records.table.slots[slot]!.unit, combination: combinationName(records, number) };
}

function failureInWords(failure: Omit<FailureCount, "sentence">, missed: string, unit: string): string {
  const { count, alone, uncertain, least } = failure;
  const parts = count > 0 ? [`${combinationsInWords(count)} ${count === 1 ? "fails" : "fail"}: ${missed}`] : [];
  if (alone > 0) parts.push(`${countInWords(alone)} of them by that alone`);
  if (least !== null) {
    const by =
      unit === ""
        ? formatPercent(least.share)
        : `${differenceInWords(least.amount, unit)} (${formatPercent(least.share)})`;
    parts.push(`the nearest by ${by}`);
  }
  if (uncertain > 0)
    parts.push(
      `${combinationsInWords(uncertain)} are not certain enough: ${missed} in more cases than the stated confidence allows`,
    );
  return asSentence(parts.join("; "));
}

/**
 * Demands by what easing them alone would gain, most first. With a stated confidence what is gained keeps the other
 * demands by the best estimate, not yet with that confidence.
 */
export function easingOf(
  failures: readonly FailureCount[],
  records: PartRecords,
  confidence: number | undefined,
): Shortlist["easing"] {
  const byEstimate = confidence === undefined ? "" : ", by the best estimate,";
  const { slots } = records.table;
  return failures
    .filter(({ alone }) => alone > 0)
    .sort((a, b) => b.alone - a.alone)
    .map(({ duty, demand, alone, easing }) => {
      const slot = slots.find((one) => one.duty === duty && one.demand === demand)!;
      const tenth = easing.find(({ share }) => share === 0.1)!.gained;
      const sentence = asSentence(
        `${combinationsInWords(alone)} would be gained${byEstimate} if this were not asked: ${missedInWords(slot)}; eased by 10 %, ${countInWords(tenth)} of them`,
      );
      return { duty, demand, gained: alone, sentence };
    });
}

/** What became of each part. */
export function partTallies(records: PartRecords, tally: Tally): PartTally[] {
  const { sizes } = records;
  const all = combinationCount(sizes);
  const bases = partBases(sizes);
  const lists = [
    { kind: "motor", list: records.motors },
    { kind: "controller", list: records.controllers },
    { kind: "supply", list: records.supplies },
    { kind: "gear", list: records.gears },
    { kind: "propeller", list: records.propellers },
  ] as const;
  return lists.flatMap(({ kind, list }) =>
    list.map(({ name }, place) => {
      const part = bases[kind] + place;
      return partTally({ kind, name, combinations: all / list.length, meeting: tally.partMeeting[part]! }, part);
    }),
  );

  function partTally(counted: Omit<PartTally, "mostly" | "sentence">, part: number): PartTally {
    const { slots } = records.table;
    const most = mostFailed(tally.partFailing, part * slots.length, slots.length);
    const { duty, demand } = slots[most] ?? {};
    const mostly =
      duty === undefined || demand === undefined
        ? null
        : { duty, demand, count: tally.partFailing[part * slots.length + most]! };
    const { name, combinations, meeting } = counted;
    const because =
      mostly === null
        ? ""
        : `; ${meeting === 0 ? "most often" : "where it fails, most often"} ${missedInWords(slots[most]!)} (${countInWords(mostly.count)})`;
    const meet = `${countInWords(meeting)} of ${combinationsInWords(combinations)} ${meeting === 1 ? "meets" : "meet"}`;
    const sentence = asSentence(`${name}: ${meet} the requirement${because}`);
    return { ...counted, mostly, sentence };
  }
}

/** The combination that is nearest, for an answer where nothing meets the requirement. */
export function nearestInWords(failures: readonly FailureCount[]): string {
  const eased = failures.filter(({ least }) => least !== null).sort((a, b) => a.least!.share - b.least!.share)[0];
  return eased === undefined ? "" : combinationInWords(eased.least!.combination);
}

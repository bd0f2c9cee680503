import type { Criterion } from "../model/shortlist.ts";
import type { CombinationName, Duty } from "../model/shortlistResult.ts";
import { CELSIUS_ZERO } from "../quantity/constants.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import type { DemandSlot } from "./demandSlots.ts";

/** A state of running, as it ends a sentence. */
export const DUTY_WORDS: Readonly<Record<Duty | "meanThrust", string>> = {
  ahead: "ahead at rest",
  astern: "astern at rest",
  atSpeed: "at speed",
  parts: "",
  meanThrust: "at the mean thrust",
};

interface CriterionWords {
  readonly unit: string;
  readonly better: "more" | "less";
  readonly words: string;
}

/** What each criterion of the ranking is. */
export const CRITERION_WORDS: Readonly<Record<Criterion, CriterionWords>> = {
  thrustPerPower: { unit: "N/W", better: "more", words: "thrust over electrical power" },
  mass: { unit: "kg", better: "less", words: "mass" },
  price: { unit: "", better: "less", words: "price" },
  thrustMargin: { unit: "1", better: "more", words: "greatest thrust within all limits over the demanded thrust" },
  tipSpeed: { unit: "m/s", better: "less", words: "tip speed" },
  endurance: { unit: "s", better: "more", words: "endurance" },
};

/** An amount with its unit; a temperature in °C, a time in hours and minutes where it is long. */
export function amountInWords(value: number, unit: string, digits = 3): string {
  const number = (inUnit: number) => formatNumber(inUnit, digits);
  if (unit === "K") return `${number(value - CELSIUS_ZERO)} °C`;
  if (unit === "m") return `${number(1000 * value)} mm`;
  if (unit === "s") return timeInWords(value, number);
  if (unit === "rev/s") return `${number(60 * value)} rpm`;
  return unit === "" || unit === "1" ? number(value) : `${number(value)} ${unit}`;
}

/** A difference to two digits: as an amount, but a step of temperature stays one. */
export function differenceInWords(value: number, unit: string): string {
  return unit === "K" ? `${formatNumber(value, 2)} K` : amountInWords(value, unit, 2);
}

function timeInWords(seconds: number, number: (value: number) => string): string {
  if (seconds >= 5400) return `${number(seconds / 3600)} h`;
  return seconds >= 90 ? `${number(seconds / 60)} min` : `${number(seconds)} s`;
}

/** A probability in per cent that is never rounded up to certainty. */
export function probabilityInWords(probability: number): string {
  if (probability > 0.999 && probability < 1) return "over 99.9 %";
  return probability >= 0.99 ? formatPercent(probability, 3) : formatPercent(probability);
}

/** Whole number with spaces at the thousands. */
export const countInWords = (count: number): string => String(count).replaceAll(/\B(?=(\d{3})+$)/g, "\u202f");

/** "1 combination", "12 000 combinations". */
export const combinationsInWords = (count: number): string =>
  `${countInWords(count)} combination${count === 1 ? "" : "s"}`;

/** "Slow with Small, Four and Fine": the parts by their names. */
export function combinationInWords({ motor, controller, supply, gear, propeller }: CombinationName): string {
  const between = [controller ?? "no controller", supply, ...(gear === null ? [] : [gear])];
  return `${motor} with ${between.join(", ")} and ${propeller}`;
}

/** How a demand is missed, with the state of running: "the propeller cavitates, ahead at rest". */
export function missedInWords({ duty, missed }: Pick<DemandSlot, "duty" | "missed">): string {
  return duty === "parts" ? missed : `${missed}, ${DUTY_WORDS[duty]}`;
}

export interface HeldDemand {
  readonly allowed: number | null;
  readonly actual: number | null;
  readonly share: number | null;
}

/** How far a demand is kept or missed, in one clause: "tip speed ahead at rest 2.0 m/s above 12.0 m/s (17 %)". */
export function marginInWords(slot: DemandSlot, { allowed, actual, share }: HeldDemand): string {
  if (allowed === null || actual === null || share === null) return missedInWords(slot);
  if (slot.demand === "endurance" && actual === 0)
    return "no endurance: the supply does not give the mean thrust, or starts with no charge above the reserve";
  const difference = differenceInWords(Math.abs(actual - allowed), slot.unit);
  const state = slot.duty === "parts" ? "" : ` ${DUTY_WORDS[slot.duty]}`;
  if (slot.demand === "voltage") {
    const supply = amountInWords(actual, slot.unit);
    const needed = amountInWords(allowed, slot.unit);
    return share < 0
      ? `needs ${difference} more${state}: ${needed} from a supply of ${supply} (${formatPercent(-share)})`
      : `voltage${state} ${difference} to spare: ${needed} needed from a supply of ${supply}`;
  }
  const above = slot.bound === "at most" ? share < 0 : share >= 0;
  const limit = amountInWords(allowed, slot.unit);
  return `${slot.words}${state} ${difference} ${above ? "above" : "below"} ${limit} (${formatPercent(Math.abs(share))})`;
}

/** A sentence of a clause: first letter large, a full stop at the end. */
export const asSentence = (clause: string): string => `${clause.charAt(0).toUpperCase()}${clause.slice(1)}.`;

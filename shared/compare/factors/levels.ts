import type { FactorName, NumberFactorName, RunFacts } from "../../model/factor.ts";
import { CELSIUS_ZERO } from "../../quantity/constants.ts";
import { formatQuantity, type ShownUnit } from "../../quantity/format.ts";

/** A value of a factor that several runs can have. */
export interface Level {
  /** Ready to show, with its unit. */
  readonly text: string;
  /** SI; null for words. */
  readonly number: number | null;
}

interface NumberKind {
  readonly of: (facts: RunFacts) => number | undefined;
  /** Values at most so far apart count as one: what a ruler and a thermometer on a bench tell apart. */
  readonly sameWithin: (value: number) => number;
  readonly text: (value: number) => string;
}

const relative = (part: number) => (value: number) => part * value;
const inUnit = (symbol: string, factor: number, offset = 0) => {
  const unit: ShownUnit = { symbol, factor, offset };
  return (value: number) => formatQuantity(value, unit);
};

/** The factors that are numbers. */
const NUMBERS: { readonly [F in FactorName]?: NumberKind } = {
  pitchRatio: {
    of: ({ pitchRatio }) => pitchRatio,
    sameWithin: relative(0.005),
    text: (value) => `${Number(value.toPrecision(3))}`,
  },
  diameter: { of: ({ diameter }) => diameter, sameWithin: relative(0.005), text: inUnit("mm", 1e-3) },
  bladeCount: { of: ({ bladeCount }) => bladeCount, sameWithin: () => 0, text: (value) => `${value}` },
  layerHeight: { of: ({ layerHeight }) => layerHeight, sameWithin: relative(0.01), text: inUnit("mm", 1e-3) },
  roughness: { of: ({ roughness }) => roughness, sameWithin: relative(0.05), text: inUnit("µm", 1e-6) },
  immersion: { of: ({ immersion }) => immersion, sameWithin: relative(0.1), text: inUnit("mm", 1e-3) },
  temperature: {
    of: ({ fluid }) => fluid?.temperature,
    sameWithin: () => 2,
    text: inUnit("°C", 1, CELSIUS_ZERO),
  },
};

const FLUID_WORDS = { fresh: "fresh water", sea: "sea water", air: "air" } as const;

/** The factors that are words. */
function wordsOf(facts: RunFacts, factor: FactorName): string | undefined {
  if (factor === "nozzle") return facts.nozzle === undefined ? undefined : facts.nozzle ? "in a nozzle" : "open";
  if (factor === "fluid") return facts.fluid && FLUID_WORDS[facts.fluid.kind];
  const value = facts[factor as keyof RunFacts];
  return typeof value === "string" && value.trim() !== "" ? value.trim() : undefined;
}

/**
 * The level of a factor that each run has, in the order given; null where it is not stated. Numbers that a builder's
 * measuring can not tell apart are one level, named by their mean; words are compared without regard to capitals.
 */
export function levelsOf(runs: readonly RunFacts[], factor: FactorName): readonly (Level | null)[] {
  const kind = NUMBERS[factor];
  return kind ? numberLevels(runs.map(kind.of), kind) : wordLevels(runs.map((run) => wordsOf(run, factor)));
}

function wordLevels(words: readonly (string | undefined)[]): (Level | null)[] {
  const known = new Map<string, Level>();
  return words.map((text) => {
    if (text === undefined) return null;
    const key = text.toLowerCase();
    const level = known.get(key) ?? { text, number: null };
    known.set(key, level);
    return level;
  });
}

function numberLevels(numbers: readonly (number | undefined)[], { sameWithin, text }: NumberKind): (Level | null)[] {
  const sorted = [...new Set(numbers.filter((value) => value !== undefined))].sort((a, b) => a - b);
  const levels = new Map<number, Level>();
  for (let from = 0; from < sorted.length; ) {
    const least = sorted[from]!;
    const within = sorted.slice(from).filter((value) => value - least <= sameWithin(least));
    const number = within.reduce((sum, value) => sum + value, 0) / within.length;
    const level = { text: text(number), number };
    for (const value of within) levels.set(value, level);
    from += within.length;
  }
  return numbers.map((value) => (value === undefined ? null : levels.get(value)!));
}

/** A value of a number factor, ready to show. */
export const numberText = (factor: NumberFactorName, value: number): string => NUMBERS[factor]!.text(value);

/** SI value of a number factor of a run; undefined where not stated. */
export const numberOf = (facts: RunFacts, factor: NumberFactorName): number | undefined => NUMBERS[factor]!.of(facts);

/** The different levels that occur: numbers ascending, words in the order of the runs. */
export function distinctLevels(levels: readonly (Level | null)[]): Level[] {
  const distinct = [...new Set(levels.filter((level) => level !== null))];
  return distinct.some(({ number }) => number === null) ? distinct : distinct.sort((a, b) => a.number! - b.number!);
}

import type { ComparedQuantity, ComparedQuantityName, SpreadChoice, VariantRatio } from "../model/comparison.ts";
import type { ComparisonQuestion } from "../model/comparisonRequest.ts";
import type { Reduction } from "../model/reduction.ts";
import { formatNumber } from "../quantity/format.ts";
import { sameDiameter } from "./comparisonWarnings.ts";
import { type LawName, type NoLaw, type RunLaw, runLaw } from "./runLaw.ts";
import {
  asBuilt,
  equalShaftPowerThrustOf,
  equalThrustPowerOf,
  type RunQuantity,
  staticMeritOf,
  thrustCoefficientOf,
} from "./runQuantity.ts";
import type { VariantPair } from "./variantPairs.ts";
import { variantRatio } from "./variantRatio.ts";

/** An answer before it is known what else is shown with it, so without words. */
export type Answer = Omit<ComparedQuantity, "sentence">;

/** What a person fixed: the conditions held equal, and which spread serves whom. */
export type Conditions = Pick<ComparisonQuestion, "electricalPower" | "thrust" | "throttle"> & {
  readonly spreads?: SpreadChoice;
};

/** Two variants with the choice of their spreads. */
interface JudgedPair extends VariantPair {
  readonly spreads: SpreadChoice;
}

/** Everything that can be asked of two variants, each with the ratio or with the reason why there is none. */
export function answersOf(variants: VariantPair, { spreads = "tested", ...conditions }: Conditions): Answer[] {
  const pair = { ...variants, spreads };
  return [
    ofCoefficients(pair, "thrustAtEqualRate", thrustCoefficientOf, asBuilt.equalRate),
    ofPower(pair, "thrustAtEqualShaftPower", equalShaftPowerThrustOf, asBuilt.equalShaftPower),
    ofLaw(pair, "thrustAtEqualElectricalPower", conditions.electricalPower),
    ofLaw(pair, "thrustAtEqualThrottle", conditions.throttle),
    ofPower(pair, "shaftPowerAtEqualThrust", equalThrustPowerOf, asBuilt.equalThrust),
    ofLaw(pair, "electricalPowerAtEqualThrust", conditions.thrust),
    ofPower(pair, "staticMerit", staticMeritOf, null),
  ];
}

const QUANTITY_TITLES: { readonly [Q in ComparedQuantityName]: string } = {
  thrustAtEqualRate: "thrust at equal rotation rate",
  thrustAtEqualShaftPower: "thrust at equal shaft power",
  thrustAtEqualElectricalPower: "thrust at equal electrical power",
  thrustAtEqualThrottle: "thrust at equal throttle",
  shaftPowerAtEqualThrust: "shaft power at equal thrust",
  electricalPowerAtEqualThrust: "electrical power at equal thrust",
  staticMerit: "static merit",
};

const NO_CONDITION = { condition: null, along: [] };

type OfRun = (run: Reduction) => RunQuantity;

function ofCoefficients(pair: JudgedPair, quantity: ComparedQuantityName, of: OfRun, built: OfRun | null): Answer {
  const different = built !== null && !sameDiameter(pair.baseline, pair.variant);
  return {
    ...{ quantity, title: QUANTITY_TITLES[quantity], why: "", ...NO_CONDITION },
    ratio: ratioOf(pair, of),
    asBuilt: different ? ratioOf(pair, built) : null,
  };
}

function ofPower(pair: JudgedPair, quantity: ComparedQuantityName, of: OfRun, built: OfRun | null): Answer {
  const without = runsOf(pair).find(({ powerFit }) => powerFit === null);
  if (without === undefined) return ofCoefficients(pair, quantity, of, built);
  return noAnswer(
    quantity,
    `The shaft power of ${without.source.fileName} is not known: a torque column or the constants of the motor are needed.`,
  );
}

const runsOf = ({ baseline, variant }: VariantPair) => [...baseline.reductions, ...variant.reductions];

function ratioOf({ baseline, variant, spreads }: JudgedPair, of: OfRun): VariantRatio {
  return variantRatio(baseline.reductions.map(of), variant.reductions.map(of), spreads);
}

function noAnswer(quantity: ComparedQuantityName, why: string): Answer {
  return { ...{ quantity, title: QUANTITY_TITLES[quantity], why, ...NO_CONDITION }, ratio: null, asBuilt: null };
}

type ByLaw = "thrustAtEqualElectricalPower" | "thrustAtEqualThrottle" | "electricalPowerAtEqualThrust";

const LAWS: { readonly [Q in ByLaw]: { law: LawName; unit: string; held: string } } = {
  thrustAtEqualElectricalPower: { law: "thrustByElectricalPower", unit: "W", held: "electrical powers" },
  thrustAtEqualThrottle: { law: "thrustByThrottle", unit: "", held: "commands" },
  electricalPowerAtEqualThrust: { law: "electricalPowerByThrust", unit: "N", held: "thrusts" },
};

/** Steps of the condition at which the ratio is told along the way. */
const STEPS = 8;

/**
 * A ratio that hangs on what is held equal: every run's law is read at one condition, by default the middle of what all
 * runs cover, so that nothing is continued beyond what was measured unless a person asks for it.
 */
function ofLaw(pair: JudgedPair, quantity: ByLaw, wanted: number | undefined): Answer {
  const laws = lawsOf(pair, quantity);
  if ("why" in laws) return noAnswer(quantity, laws.why);
  const { unit, low, high, between, ratioAt } = laws;
  if (wanted === undefined && !(low < high)) return noAnswer(quantity, noOverlap(LAWS[quantity].held, laws));
  const value = wanted ?? between(1 / 2);
  const ratio = ratioAt(value);
  if (ratio === null) {
    return noAnswer(quantity, `At ${formatNumber(value)} ${unit} a curve through the plateaus gives no thrust.`);
  }
  const along = low < high ? Array.from({ length: STEPS + 1 }, (_, i) => between(i / STEPS)) : [];
  return {
    ...{ quantity, title: QUANTITY_TITLES[quantity], ratio, asBuilt: null, why: "" },
    condition: { value, unit, low, high, extrapolated: value < low || value > high },
    along: along.flatMap((at) => {
      const there = ratioAt(at);
      return there === null ? [] : [{ at, value: there.value, interval95: there.interval95 }];
    }),
  };
}

/** The laws of all runs of a pair together. */
interface PairLaws {
  readonly unit: string;
  /** What every run covers; low above high where they do not meet. */
  readonly low: number;
  readonly high: number;
  /** Condition a part of the way from low to high, in logarithms for powers and thrusts. */
  readonly between: (part: number) => number;
  /** Null where a curve gives nothing positive. */
  readonly ratioAt: (condition: number) => VariantRatio | null;
}

function lawsOf(pair: JudgedPair, quantity: ByLaw): PairLaws | NoLaw {
  const { law } = LAWS[quantity];
  const runs = runsOf(pair);
  const found = runs.map((run) => runLaw(run, law));
  const missing = found.find((one) => "why" in one);
  if (missing && "why" in missing) return { why: `${missing.why}.` };
  const isThrottle = quantity === "thrustAtEqualThrottle";
  const unit = isThrottle ? commandUnit(runs) : LAWS[quantity].unit;
  if (unit === null) return { why: "The commands of the runs are written in different units." };
  const laws = found as RunLaw[];
  const low = Math.max(...laws.map((one) => one.low));
  const high = Math.min(...laws.map((one) => one.high));
  return {
    ...{ unit, low, high },
    between: (part) => (isThrottle ? low + part * (high - low) : low ** (1 - part) * high ** part),
    ratioAt: (condition) => {
      const quantities = laws.map((one) => one.at(condition));
      const sound = quantities.filter((one) => one !== null);
      const split = pair.baseline.reductions.length;
      if (sound.length < quantities.length) return null;
      return variantRatio(sound.slice(0, split), sound.slice(split), pair.spreads);
    },
  };
}

function noOverlap(held: string, { unit, low, high }: PairLaws): string {
  return `The ${held} of the runs do not overlap: one starts at ${formatNumber(low)} ${unit}, another ends at ${formatNumber(high)} ${unit}. Nothing is continued beyond what was measured.`;
}

/** Null where the runs do not write it in one unit. */
function commandUnit(runs: readonly Reduction[]): string | null {
  const units = runs.map(({ columns }) => columns.find(({ role }) => role === "command")?.unit ?? "");
  return new Set(units).size === 1 ? units[0]! : null;
}

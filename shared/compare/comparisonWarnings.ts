import type { ComparedQuantity, VariantRatio } from "../model/comparison.ts";
import type { Plateau, Reduction } from "../model/reduction.ts";
import { moments } from "../numeric/moments.ts";
import { formatNumber, formatPercent, formatQuantity } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { thrustCoefficientOf } from "./runQuantity.ts";
import { occurrences, sideStatistics } from "./sideStatistics.ts";
import type { VariantRuns } from "./variantSummary.ts";

/** Relative differences below these are taken as the same fluid or diameter; well inside what a stand can show. */
const SAME_DIAMETER = 0.005;
const SAME_DENSITY = 0.005;
const SAME_VISCOSITY = 0.1;

const MILLIMETRE = { symbol: "mm", factor: 1e-3 };

/** True if the diameters of all runs agree, so that equal rotation rate compares like with like. */
export function sameDiameter(baseline: VariantRuns, variant: VariantRuns): boolean {
  return range([...baseline.reductions, ...variant.reductions].map((run) => run.diameter.value)) <= SAME_DIAMETER;
}

/** What a reader must know next to a comparison. */
export function comparisonWarnings(
  baseline: VariantRuns,
  variant: VariantRuns,
  {
    ratio,
    answers,
  }: { readonly ratio: VariantRatio; readonly answers: readonly Pick<ComparedQuantity, "title" | "condition">[] },
): Warning[] {
  const occursIn = occurrences([...baseline.reductions, ...variant.reductions].map(thrustCoefficientOf));
  return [
    differentDiameters(baseline, variant, ratio.value),
    differentFluids(baseline, variant),
    powerSources(baseline, variant),
    sameFile(baseline, variant),
    ...answers.map(conditionOutside),
    ...[baseline, variant].flatMap((side) => [singleRun(side), tooAlike(side, occursIn), ...impossiblePoints(side)]),
  ].filter((found) => found !== null);
}

function differentDiameters(baseline: VariantRuns, variant: VariantRuns, ratio: number): Warning | null {
  if (sameDiameter(baseline, variant)) return null;
  const [ofBaseline, ofVariant] = [baseline, variant].map((side) => mean(side, (run) => run.diameter.value)) as [
    number,
    number,
  ];
  const thrustRatio = ratio * (ofVariant / ofBaseline) ** 4;
  return warning({
    code: "compare.different-diameters",
    where: "diameter",
    found: `${variant.name} has a diameter of ${formatQuantity(ofVariant, MILLIMETRE)}, ${baseline.name} ${formatQuantity(ofBaseline, MILLIMETRE)}. The ratio is that of the thrust coefficients; at equal rotation rate thrust also grows with the fourth power of the diameter and the ratio of thrusts is ${formatNumber(thrustRatio)}`,
    needed: "equal diameters, to see the finish alone",
    mend: "Read the thrust coefficients as a comparison of shapes, and compare the thrusters on a motor and pack",
  });
}

function differentFluids(baseline: VariantRuns, variant: VariantRuns): Warning | null {
  const runs = [...baseline.reductions, ...variant.reductions];
  const density = range(runs.map((run) => run.fluid.density));
  const viscosity = range(runs.map((run) => run.fluid.kinematicViscosity));
  if (density <= SAME_DENSITY && viscosity <= SAME_VISCOSITY) return null;
  return warning({
    code: "compare.different-fluids",
    where: "fluid",
    found: `The runs were made in different fluids or temperatures (density differs by ${formatPercent(density)}, kinematic viscosity by ${formatPercent(viscosity)})`,
    needed: "one fluid at one temperature",
    mend: "The coefficients carry the density; the Reynolds number still differs, and small blades feel it. Repeat one of the runs in the other's fluid if the difference is small",
  });
}

function powerSources(baseline: VariantRuns, variant: VariantRuns): Warning | null {
  const sources = new Set([...baseline.reductions, ...variant.reductions].map((run) => run.powerSource));
  if (sources.size <= 1) return null;
  return warning({
    code: "compare.power-sources",
    where: "shaft power",
    found: sources.has(null)
      ? "The shaft power of some runs is not known"
      : "The shaft power of some runs comes from a torque cell, of others from the motor's constants",
    needed: "one way of finding the shaft power for all runs",
    mend: sources.has(null)
      ? "Give the motor's constants or a torque column for every run to compare at equal shaft power"
      : "Take a difference at equal shaft power with care: an offset between the two ways looks like one between the propellers",
  });
}

function sameFile(baseline: VariantRuns, variant: VariantRuns): Warning | null {
  const files = new Set(baseline.reductions.map((run) => run.source.sha256));
  const twice = variant.reductions.find((run) => files.has(run.source.sha256));
  if (twice === undefined) return null;
  return warning({
    code: "compare.same-file",
    where: twice.source.fileName,
    found: `The same file stands on both sides, under ${baseline.name} and under ${variant.name}`,
    needed: "a file of its own for each side",
    mend: "Check which propeller the file belongs to",
  });
}

function conditionOutside({ title, condition }: Pick<ComparedQuantity, "title" | "condition">): Warning | null {
  if (condition === null || !condition.extrapolated) return null;
  const { value, low, high, unit } = condition;
  const shown = (number: number) => `${formatNumber(number)}${unit && ` ${unit}`}`;
  return warning({
    code: "compare.condition-outside",
    where: title,
    found: `${shown(value)} lies outside what every run of both sides measured`,
    needed: low < high ? `${shown(low)} to ${shown(high)}` : "runs whose ranges overlap",
    mend: "Measure there, or ask for a value inside",
  });
}

function singleRun({ name, reductions }: VariantRuns): Warning | null {
  if (reductions.length > 1) return null;
  return warning({
    code: "compare.single-run",
    where: name,
    found: `${name} was run with one mounting only, so what re-mounting changes is not known from it`,
    needed: "two mountings, better three",
    mend: "Take the propeller off, put it back and run again",
  });
}

/** `occursIn`: see sideStatistics, whose choice between the two spreads this tells. */
function tooAlike({ name, reductions }: VariantRuns, occursIn: ReadonlyMap<string, number>): Warning | null {
  const { runs, betweenRuns, withinRuns } = sideStatistics(reductions.map(thrustCoefficientOf), occursIn);
  if (betweenRuns === null) return null;
  if (betweenRuns === 0) {
    return warning({
      code: "compare.identical-runs",
      where: name,
      found: `The ${runs} runs of ${name} give the same thrust coefficient to the last digit`,
      needed: "mountings measured separately",
      mend: "Check that no file was copied; the doubt inside the runs stands in for the spread between them",
    });
  }
  if (betweenRuns >= withinRuns) return null;
  return warning({
    code: "compare.closer-than-doubt",
    where: name,
    found: `The runs of ${name} agree to ${formatPercent(Math.sqrt(betweenRuns))}, closer than the doubt of each run (${formatPercent(Math.sqrt(withinRuns))}) explains`,
    needed: "a spread at least as large as the doubt inside the runs",
    mend: "The larger of the two is used, so that luck does not narrow the interval",
  });
}

function impossiblePoints({ reductions }: VariantRuns): Warning[] {
  return reductions.flatMap((run) => {
    const impossible = run.plateaus.filter((plateau) => plateau.used && isImpossible(plateau));
    return impossible.length === 0 ? [] : [impossibleRun(run, impossible.length)];
  });
}

function impossibleRun({ source, plateaus }: Reduction, count: number): Warning {
  return warning({
    code: "compare.impossible-points",
    where: source.fileName,
    found: `${count} of the ${plateaus.filter((plateau) => plateau.used).length} points used can not be: more thrust than momentum theory allows, or more shaft power than electrical power`,
    needed: "a run that obeys both limits",
    mend: "Look at this run's own warnings before trusting the ratio",
  });
}

/** Beyond a limit by more than its 95 % interval allows. */
function isImpossible({ thrust, momentumLimit, shaftPower, electricalPower }: Plateau): boolean {
  const aboveLimit = momentumLimit !== null && thrust.interval95[0] > momentumLimit;
  const moreThanDrawn =
    shaftPower !== null && electricalPower !== null && shaftPower.interval95[0] > electricalPower.interval95[1];
  return aboveLimit || moreThanDrawn;
}

function mean({ reductions }: VariantRuns, quantity: (run: Reduction) => number): number {
  return moments(reductions.map(quantity)).mean;
}

/** Largest over smallest, less 1. */
function range(values: readonly number[]): number {
  return Math.max(...values) / Math.min(...values) - 1;
}

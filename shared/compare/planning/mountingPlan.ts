import type { MountingPlan, PlanRequest } from "../../model/mountingPlan.ts";
import { chiSquareUpperTail } from "../../numeric/chiSquare.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { type PlannedTest, smallestDifference, tTestPower, tTestSize } from "../../numeric/tTestPower.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { countInWords } from "../inWords.ts";
import { runSheet } from "./runSheet.ts";

/** Numbers of mountings that the table tells. */
const TOLD = [2, 3, 4, 5, 6, 8, 10, 15, 20] as const;

/**
 * How many mountings of each variant show a given relative difference with a given chance, from the spread between
 * mountings seen so far; and the sheet to run them by. The difference and the spread are taken in logarithms, as ratios
 * are compared: ln(1 + difference).
 *
 * Where the spread is itself an estimate, the same is told for the upper end of its 80 % interval, s √(ν/χ²_0.1): three
 * mountings say little of a spread.
 *
 * Source   noncentral t (tTestPower); interval of a variance e.g. NIST/SEMATECH e-Handbook 7.2.3.1.
 */
export function mountingPlan(request: PlanRequest): MountingPlan {
  const { runToRun, runToRunDegreesOfFreedom: degreesOfFreedom, difference, power, mountingsSoFar, sheet } = request;
  const logDifference = Math.log1p(difference);
  const sizeAt = (spread: number) => tTestSize(testOf(request, spread), { difference: logDifference, power });
  const { size, exact } = sizeAt(runToRun);
  const largerSpread = degreesOfFreedom === undefined ? null : upperEnd(runToRun, degreesOfFreedom);
  const test = testOf(request, runToRun);
  const plan = {
    mountings: size,
    exactMountings: exact,
    more: size === null ? null : Math.max(0, size - mountingsSoFar),
    power: size === null ? null : tTestPower(test, { difference: logDifference, size }),
    mountingsIfSpreadIsLarger: largerSpread === null ? null : sizeAt(largerSpread).size,
    largerSpread,
    rows: TOLD.map((mountings) => ({
      mountings,
      power: tTestPower(test, { difference: logDifference, size: mountings }),
      smallestDifference: Math.expm1(smallestDifference(test, { size: mountings, power })),
    })),
  };
  const drawn = sheet === undefined || size === null ? null : runSheet(sheet, size);
  return { ...plan, sentence: planSentence(request, plan), sheet: drawn, warnings: warningsOf(request, plan) };
}

/** The difference inside a block has the spread of two runs. */
function testOf({ design, level }: PlanRequest, spread: number): PlannedTest {
  const paired = design === "paired";
  return {
    design: paired ? "paired" : "twoSample",
    standardDeviation: paired ? Math.SQRT2 * spread : spread,
    level,
  };
}

/** Chance that a spread is smaller than the upper end told for it. */
const UPPER = 0.9;

function upperEnd(spread: number, degreesOfFreedom: number): number {
  // The quantile lies between nought and the mean.
  const lacking = (x: number) => chiSquareUpperTail(x, degreesOfFreedom) - UPPER;
  const { root } = bracketedRoot(lacking, 1e-9, degreesOfFreedom);
  return spread * Math.sqrt(degreesOfFreedom / root);
}

function planSentence(request: PlanRequest, plan: Omit<MountingPlan, "sentence" | "sheet" | "warnings">): string {
  const { difference, power, runToRun, mountingsSoFar, design } = request;
  const wanted = `a difference of ${formatPercent(difference)} with a chance of ${formatPercent(power)}`;
  const spread = `where mountings of one propeller differ by ${formatPercent(runToRun)}`;
  if (plan.mountings === null) {
    return `More than a thousand mountings of each variant would be needed to see ${wanted}, ${spread}: make the mounting repeat better first.`;
  }
  const each = design === "paired" ? "mountings of each, one of each a block," : "mountings of each variant";
  const there =
    mountingsSoFar === 0
      ? ""
      : plan.more === 0
        ? ` The ${countInWords(mountingsSoFar)} there are enough.`
        : ` ${plan.more} more than the ${countInWords(mountingsSoFar)} there are.`;
  const larger =
    plan.largerSpread === null
      ? ""
      : ` The spread is an estimate: were it ${formatPercent(plan.largerSpread)}, ${plan.mountingsIfSpreadIsLarger === null ? "more than a thousand" : `it would take ${plan.mountingsIfSpreadIsLarger}`}${plan.mountingsIfSpreadIsLarger === null ? " would be needed" : ""}.`;
  return `${plan.mountings} ${each} show ${wanted}, ${spread}.${there}${larger}`;
}

/** Spreads known from fewer degrees of freedom than this can be off by more than half. */
const FEW_DEGREES = 4;

function warningsOf(
  { runToRunDegreesOfFreedom, sheet }: PlanRequest,
  { mountings }: Pick<MountingPlan, "mountings">,
): Warning[] {
  const few =
    runToRunDegreesOfFreedom !== undefined && runToRunDegreesOfFreedom < FEW_DEGREES
      ? [
          warning({
            code: "compare.spread-uncertain",
            where: "spread from mounting to mounting",
            found: `The spread rests on ${formatNumber(runToRunDegreesOfFreedom, 2)} degrees of freedom, so it can be off by half of itself or more`,
            needed: "five mountings or more of one propeller, or several propellers mounted twice",
            mend: "Take the larger number of mountings, and plan again when more are there",
          }),
        ]
      : [];
  const uneven =
    sheet !== undefined && mountings !== null && sheet.blocks.length > 1 && mountings % sheet.blocks.length !== 0
      ? [
          warning({
            code: "compare.uneven-blocks",
            where: "blocks",
            found: `${mountings} mountings do not go evenly into ${sheet.blocks.length} blocks; the first blocks hold one more of each variant`,
            needed: "",
            mend: "Every block holds every variant equally often all the same",
          }),
        ]
      : [];
  return [...few, ...uneven];
}

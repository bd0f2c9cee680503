import type { Comparison } from "../../../../shared/model/comparison.ts";
import type { MountingPlan, PlanRequest, RunSheet } from "../../../../shared/model/mountingPlan.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";

/** The spread from mounting to mounting that was seen so far, over all variants, with its degrees of freedom; null where nothing was mounted twice. */
export function spreadSeen(
  comparisons: readonly Comparison[],
): { readonly spread: number; readonly degreesOfFreedom: number } | null {
  const summaries = new Map(
    comparisons.flatMap(({ baseline, variant }) => [baseline, variant]).map((one) => [one.name, one]),
  );
  let [squares, degreesOfFreedom] = [0, 0];
  for (const { runs, runToRun } of summaries.values()) {
    if (runToRun === null) continue;
    squares += (runs - 1) * runToRun ** 2;
    degreesOfFreedom += runs - 1;
  }
  return degreesOfFreedom === 0 ? null : { spread: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** Where nothing was mounted twice: common practice for a propeller taken off and put on again, no source. */
const USUAL_SPREAD = 0.02;

export interface PlanDraft {
  /** Relative difference that must be seen. */
  readonly difference: number;
  readonly power: number;
  readonly paired: boolean;
  readonly seed: number;
}

/** What the planner is asked, from the draft and what was seen. */
export function planRequest(
  draft: PlanDraft,
  comparisons: readonly Comparison[],
  { variants, diameter }: { readonly variants: readonly string[]; readonly diameter: number | null },
): PlanRequest {
  const seen = spreadSeen(comparisons);
  const runs = comparisons.flatMap(({ baseline, variant }) => [baseline.runs, variant.runs]);
  return {
    runToRun: seen?.spread ?? USUAL_SPREAD,
    ...(seen === null ? {} : { runToRunDegreesOfFreedom: seen.degreesOfFreedom }),
    difference: draft.difference,
    power: draft.power,
    level: 0.05,
    design: draft.paired ? "paired" : "separate",
    mountingsSoFar: runs.length === 0 ? 0 : Math.min(...runs),
    ...(variants.length === 0
      ? {}
      : {
          sheet: {
            variants: [...variants],
            seed: draft.seed,
            blocks: [],
            blockKind: "block" as const,
            inAir: false,
            ...(diameter === null ? {} : { diameter }),
          },
        }),
  };
}

/** Numbers of mountings with what each can see. */
export function planRows({ rows }: MountingPlan) {
  return rows.map(({ mountings, power, smallestDifference }) => ({
    mountings: `${mountings}`,
    chance: `${formatNumber(100 * power, 2)}\u202f%`,
    smallest: `${formatNumber(100 * smallestDifference, 2)}\u202f%`,
  }));
}

/** The sheet as a table to print: what is done in order, and empty columns to write in. */
export function sheetHead({ blanks, rows }: RunSheet): string[] {
  const blocked = new Set(rows.map(({ block }) => block)).size > 1;
  return [
    "Run",
    ...(blocked ? ["Block"] : []),
    "Variant",
    "Mounting",
    ...blanks.map(({ title, unit }) => (unit ? `${title}, ${unit}` : title)),
  ];
}

export function sheetRows({ rows, blanks }: RunSheet): string[][] {
  const blocked = new Set(rows.map(({ block }) => block)).size > 1;
  return rows.map(({ run, block, variant, mounting }) => [
    `${run}`,
    ...(blocked ? [block] : []),
    variant,
    `${mounting}`,
    ...blanks.map(() => ""),
  ]);
}

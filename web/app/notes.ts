import type { Reduction } from "../../shared/model/reduction.ts";

/** Warnings that a check of the quality card says in full, with what to do, by the code of the check. */
const TOLD_BY_CHECK: Readonly<Record<string, string>> = {
  "bench.low-reynolds": "bench.reynolds-range",
};

/** What to know of a run beside its quality card: nothing that a flagged check there says as well. */
export function notesOf({ warnings, quality }: Pick<Reduction, "warnings" | "quality">): Reduction["warnings"] {
  const flagged = new Set(quality.filter(({ verdict }) => verdict === "flag").map(({ code }) => code));
  return warnings.filter(({ code }) => !flagged.has(TOLD_BY_CHECK[code] ?? ""));
}

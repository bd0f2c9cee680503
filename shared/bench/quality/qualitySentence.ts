import type { QualityCheck, QualityVerdict } from "../../model/quality.ts";

/**
 * The card in one sentence: "8 of 14 checks passed; look at: pack sag, heating. Not known: immersion."
 * Checks that could not be judged count neither as passed nor as flagged.
 */
export function qualitySentence(checks: readonly QualityCheck[]): string {
  if (checks.length === 0) return "No check was made.";
  const named = (verdict: QualityVerdict) =>
    checks.filter((check) => check.verdict === verdict).map(({ name }) => `${name[0]!.toLowerCase()}${name.slice(1)}`);
  const [passes, flags, unknown] = [named("pass"), named("flag"), named("unknown")];
  const look = flags.length > 0 ? `; look at: ${flags.join(", ")}` : "";
  const open = unknown.length > 0 ? ` Not known: ${unknown.join(", ")}.` : "";
  return `${passes.length} of ${checks.length} checks passed${look}.${open}`;
}

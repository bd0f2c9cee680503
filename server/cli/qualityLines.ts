import { qualitySentence } from "../../shared/bench/quality/qualitySentence.ts";
import type { QualityCheck, QualityVerdict } from "../../shared/model/quality.ts";

const WORDS: { readonly [V in QualityVerdict]: string } = { flag: "look", unknown: "not known", pass: "passed" };
const ORDER: readonly QualityVerdict[] = ["flag", "unknown", "pass"];

/** The checks of a run as lines of text: the sentence, then each check with its finding and what to do, flags first. */
export function qualityLines(checks: readonly QualityCheck[]): string[] {
  if (checks.length === 0) return [];
  const width = Math.max(...checks.map(({ name }) => name.length));
  const ordered = ORDER.flatMap((verdict) => checks.filter((check) => check.verdict === verdict));
  return [
    `Can this run be trusted? ${qualitySentence(checks)}`,
    ...ordered.map(({ verdict, name, measured, sentence, mend }) => {
      const said = verdict === "pass" ? (measured?.text ?? sentence) : `${sentence} ${mend}`;
      return `  ${WORDS[verdict].padEnd(9)}  ${name.padEnd(width)}  ${said}`;
    }),
  ];
}

import { qualitySentence } from "../../../shared/bench/quality/qualitySentence.ts";
import type { QualityCheck, QualityVerdict } from "../../../shared/model/quality.ts";

export interface QualityRow {
  readonly code: string;
  readonly name: string;
  readonly verdict: QualityVerdict;
  /** The verdict in a word, beside its sign. */
  readonly word: string;
  readonly sentence: string;
  /** "Here 1.2 diameters; at least 1.5 diameters …" */
  readonly against: string;
  readonly mend: string;
}

export interface QualityCardModel {
  readonly sentence: string;
  readonly tone: "known" | "open";
  /** What asks for a look. */
  readonly open: readonly QualityRow[];
  /** What is fine. */
  readonly fine: readonly QualityRow[];
}

const WORDS: { readonly [V in QualityVerdict]: string } = { pass: "Passed", flag: "Look", unknown: "Not known" };

/** The checks of a run for the screen: what to look at, then what is not known; what passed apart. */
export function qualityCardModel(checks: readonly QualityCheck[]): QualityCardModel {
  const rows = (verdict: QualityVerdict) => checks.filter((check) => check.verdict === verdict).map(rowOf);
  return {
    sentence: qualitySentence(checks),
    tone: checks.some(({ verdict }) => verdict === "flag") ? "open" : "known",
    open: [...rows("flag"), ...rows("unknown")],
    fine: rows("pass"),
  };
}

function rowOf({ code, name, verdict, measured, limit, sentence, mend }: QualityCheck): QualityRow {
  const here = measured === null ? "" : `Here: ${measured.text}. `;
  return { code, name, verdict, word: WORDS[verdict], sentence, against: `${here}Asked for: ${limit}.`, mend };
}

/** How many checks of several runs ask for a look: "3 checks to look at", or empty. */
export function flagCount(cards: readonly (readonly QualityCheck[])[]): string {
  const count = cards.flat().filter(({ verdict }) => verdict === "flag").length;
  return count === 0 ? "" : `${count} ${count === 1 ? "check" : "checks"} to look at`;
}

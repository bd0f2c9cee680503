import { qualitySentence } from "../../../shared/bench/quality/qualitySentence.ts";
import type { QualityCheck, QualityVerdict } from "../../../shared/model/quality.ts";
import { joined } from "../../app/words.ts";

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

/** Which checks of several runs ask for a look, each once: "look at: blade Reynolds number", or empty. */
export function flaggedChecks(cards: readonly (readonly QualityCheck[])[]): string {
  const flagged = cards.flat().filter(({ verdict }) => verdict === "flag");
  const names = [...new Set(flagged.map(({ name }) => midSentence(name)))];
  return names.length === 0 ? "" : `look at: ${joined(names)}`;
}

/** The name as it stands within a sentence; a symbol or abbreviation keeps its capitals. */
const midSentence = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

import type { QualityCheck } from "../../model/quality.ts";
import { formatNumber } from "../../quantity/format.ts";

/** What a check is called and judged against. */
export interface CheckSubject {
  readonly code: string;
  readonly name: string;
  readonly limit: string;
}

interface Finding {
  readonly measured: QualityCheck["measured"];
  readonly sentence: string;
  readonly mend: string;
}

/** The run is fine in this respect. */
export function passed(subject: CheckSubject, measured: QualityCheck["measured"], sentence: string): QualityCheck {
  return { ...subject, verdict: "pass", measured: sound(measured), sentence, mend: "" };
}

/** Something to mend, or to keep in mind. */
export function flagged(subject: CheckSubject, finding: Finding): QualityCheck {
  return { ...subject, verdict: "flag", ...finding, measured: sound(finding.measured) };
}

/** A number that can be sent: none where it is beyond all bounds, and no minus zero. */
function sound(measured: QualityCheck["measured"]): QualityCheck["measured"] {
  return measured && Number.isFinite(measured.value) ? { ...measured, value: measured.value + 0 } : null;
}

/** No judgement; the sentence says what is missing, `mend` how to give it. */
export function unjudged(subject: CheckSubject, sentence: string, mend: string): QualityCheck {
  return { ...subject, verdict: "unknown", measured: null, sentence, mend };
}

/** A ratio shown in percent, and the words that go with it. */
export function inPercent(ratio: number, { after = "" } = {}): NonNullable<QualityCheck["measured"]> {
  return { value: 100 * ratio, unit: "%", text: `${percentText(ratio)}${after}` };
}

/** A change with the half-width of its interval: "−0.1 % ± 0.4 % over a plateau". */
export function changeInPercent(change: number, halfWidth: number, where: string) {
  // Beside a half-width a change of next to nothing is a number like others.
  const size = Math.abs(100 * change) < SMALLEST_PERCENT ? "0.0\u202f%" : percentText(change, true);
  return { value: 100 * change, unit: "%", text: `${size} ± ${percentText(halfWidth)} ${where}` };
}

/** What is smaller is not told in digits. */
const SMALLEST_PERCENT = 0.05;

/** "+1.2 %": two digits, one below 1 %, so that noise does not look like a finding. */
export function percentText(ratio: number, signed = false): string {
  const percent = 100 * ratio;
  const size = Math.abs(percent);
  if (size < SMALLEST_PERCENT) return size === 0 ? "0\u202f%" : `under ${SMALLEST_PERCENT}\u202f%`;
  const sign = percent < 0 ? "−" : signed ? "+" : "";
  return `${sign}${formatNumber(size, size < 1 ? 1 : 2)}\u202f%`;
}

import type { QualityCheck } from "../../model/quality.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, passed } from "./verdict.ts";

/** Plateaus, and range of n², that show whether thrust follows n². Common practice, no source. */
const FEWEST = 5;
const LEAST_RANGE = 4;

const SUBJECT = {
  code: "bench.plateau-range",
  name: "Plateaus and their range",
  limit: `at least ${FEWEST} plateaus, and n² over a factor of ${LEAST_RANGE} (common practice)`,
};

/** Are there enough plateaus, far enough apart, to see a wrong zero or a bent law? */
export function plateauRange({ used }: Pick<RunFacts, "used">): QualityCheck {
  const rates = used.map(({ measured }) => measured.rotationRate.mean);
  const range = (Math.max(...rates) / Math.min(...rates)) ** 2;
  const text = `${used.length} plateaus, n² over a factor of ${formatNumber(range, 2)}`;
  const measured = { value: used.length, unit: "1", text };
  if (used.length >= FEWEST && range >= LEAST_RANGE) return passed(SUBJECT, measured, `The fit rests on ${text}.`);
  return flagged(SUBJECT, {
    measured,
    sentence: `The fit rests on ${text}: a wrong zero or a coefficient that changes with speed would hardly show.`,
    mend: "Hold five steps or more from half the top speed, or less, to full speed; up and down again is better.",
  });
}

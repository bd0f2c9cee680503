import type { AdvanceFit } from "../../model/advance.ts";
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
export function plateauRange({ used, advance }: Pick<RunFacts, "used" | "advance">): QualityCheck {
  if (advance) return advanceRange(advance);
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

/** Plateaus that show how the coefficients bend with the advance ratio: three for a parabola, as many again to check it. */
const FEWEST_AT_SPEED = 6;

/** At speed it is the advance ratio that must be covered, to where the thrust ends. */
function advanceRange({ points, range: [low, high], zeroThrust }: AdvanceFit): QualityCheck {
  const count = points.filter(({ isFitted }) => isFitted).length;
  const text = `${count} plateaus, advance ratios ${formatNumber(low, 2)} to ${formatNumber(high, 2)}`;
  const measured = { value: count, unit: "1", text };
  const subject = {
    ...SUBJECT,
    limit: `at least ${FEWEST_AT_SPEED} plateaus, and one beyond zero thrust (common practice)`,
  };
  const reachesZero = zeroThrust !== null && !zeroThrust.isExtrapolated;
  if (count >= FEWEST_AT_SPEED && reachesZero)
    return passed(subject, measured, `The curves rest on ${text}, beyond zero thrust.`);
  return flagged(subject, {
    measured,
    sentence: `The curves rest on ${text}${reachesZero ? "" : ", short of zero thrust"}: how they bend is known no better than that.`,
    mend: "Add plateaus: at rest, and at speeds up to where the thrust falls to zero.",
  });
}

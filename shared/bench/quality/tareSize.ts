import type { QualityCheck } from "../../model/quality.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { RunFacts } from "../runFacts.ts";
import { driftOf, tareUncertainty } from "../tareLine.ts";
import { flagged, inPercent, passed, percentText, unjudged } from "./verdict.ts";

/** Zero, its move over the run, and its doubt, next to the greatest thrust. Common practice, no source. */
const LARGEST_ZERO = 3;
const LARGEST_MOVE = 0.05;
const LARGEST_DOUBT = 0.02;

const SUBJECT = {
  code: "bench.tare-size",
  name: "Tare next to the signal",
  limit: `zero under ${LARGEST_ZERO} times the greatest thrust, moving by less than ${percentText(LARGEST_MOVE)} of it, known to ${percentText(LARGEST_DOUBT)} of it (common practice)`,
};

/** How large is what was taken off, next to what is left? */
export function tareSize({ thrustTare, used, recipe }: Pick<RunFacts, "thrustTare" | "used" | "recipe">): QualityCheck {
  if (thrustTare.windows.length === 0) {
    return unjudged(
      SUBJECT,
      recipe.tare.mode === "none" ? "No tare was taken." : "The log holds no rest to take a tare from.",
      "Log a few seconds at rest before and after the run.",
    );
  }
  const greatest = Math.max(...used.map(({ thrustPoint }) => Math.abs(thrustPoint.y)));
  const zero = Math.max(...thrustTare.windows.map(({ mean }) => Math.abs(mean.mean))) / greatest;
  const move = Math.abs(driftOf(thrustTare)?.value ?? 0) / greatest;
  const doubt = Math.max(...used.map(({ measured }) => tareUncertainty(thrustTare, measured.thrustTare))) / greatest;
  const parts = `zero ${percentText(zero)}, moved ${percentText(move)}, in doubt by ${percentText(doubt)} of the greatest thrust`;
  const measured = { ...inPercent(zero), text: parts };
  const told = `The greatest thrust is ${formatNumber(greatest)}\u202fN; ${parts}.`;
  if (zero <= LARGEST_ZERO && move <= LARGEST_MOVE && doubt <= LARGEST_DOUBT) return passed(SUBJECT, measured, told);
  return flagged(SUBJECT, {
    measured,
    sentence: told,
    mend:
      move > LARGEST_MOVE || doubt > LARGEST_DOUBT
        ? "Take a rest between steps, let scale and electronics warm up for some minutes, keep cables from pulling, and shade the stand."
        : "Balance the lever or zero the scale, so that the thrust is not a small difference of large readings.",
  });
}

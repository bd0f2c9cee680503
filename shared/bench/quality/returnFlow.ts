import type { QualityCheck } from "../../model/quality.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import { remembered } from "../remembered.ts";
import type { RunFacts } from "../runFacts.ts";
import { segmentOf } from "../tareLine.ts";
import type { PlateauReadings } from "../writtenPlateau.ts";
import { type Change, changeWithin, pooledChange } from "./changeWithin.ts";
import { heldStretches } from "./heldStretches.ts";
import { changeInPercent, flagged, passed, percentText, unjudged } from "./verdict.ts";

/** Change of thrust at steady rotation rate over one plateau that matters. Common practice, no source. */
const RELEVANT = 0.01;
/** Chance of it by accident below which it is told. */
const TOO_RARE = 0.01;
/** Part of the zero's move within a plateau that it may be off by: the zero need not move evenly. */
const UNEVEN_ZERO = 0.5;

const SUBJECT = {
  code: "bench.return-flow",
  name: "Tank return flow",
  limit: `thrust at steady speed changes by less than ${percentText(RELEVANT)} over a plateau (common practice)`,
};

/**
 * Does thrust drift while the rotation rate is steady? The slope of T/n² within each plateau, the move of the zero taken
 * off, pooled over the plateaus.
 */
export function returnFlow(facts: RunFacts): QualityCheck {
  const pooled = pooledChange(heldStretches(facts).map((held) => thrustChange(held, facts)));
  if (pooled === null) {
    return unjudged(
      SUBJECT,
      "Fewer than 3 plateaus have the 20 readings that a drift within them needs.",
      "Log at 5 readings a second or more and hold each step for 5 seconds or more.",
    );
  }
  const { change, standardError, stretches } = pooled;
  const measured = changeInPercent(change, 2 * standardError, "over a plateau");
  if (pooled.pValue >= TOO_RARE || Math.abs(change) < RELEVANT) {
    return passed(SUBJECT, measured, `Thrust holds within ${stretches} plateaus.`);
  }
  const falls = change < 0;
  return flagged(SUBJECT, {
    measured,
    sentence: `Thrust ${falls ? "falls" : "rises"} by ${percentText(Math.abs(change))} over a plateau while the rotation rate is steady${
      falls ? ", as it does when the stream comes back through the tank" : ""
    }.`,
    mend: falls
      ? "Pause between steps until the water is at rest, shorten the steps, use larger water; compare the first seconds of each step."
      : "Look for a scale that creeps, a pivot that sticks, or water that still sped up: hold steps longer and take the tare more often.",
  });
}

function thrustChange(held: MeasuredPlateau, { thrustTare, timeline }: RunFacts): Change | null {
  const { span, written } = held;
  const segment = segmentOf(timeline, span.from);
  const [start, end] = [span.from, span.to - 1].map((row) => thrustTare.writtenAt(timeline.times[row]!, segment));
  const moved = end! - start!;
  return remembered(written, { stage: "returnFlow", dependsOn: moved }, () => changeOf(written.readings, moved));
}

/** Change of T/n² with the movement of the zero over the stretch taken off, all in the units of the columns. */
function changeOf({ thrust, rotationRate }: PlateauReadings, moved: number): Change | null {
  const last = Math.max(1, thrust.length - 1);
  const ratios = new Float64Array(thrust.length);
  for (let i = 0; i < ratios.length; i++) {
    const n = rotationRate[i]!;
    ratios[i] = n > 0 ? (thrust[i]! - moved * (i / last - 0.5)) / (n * n) : Number.NaN;
  }
  return changeWithin(ratios, (UNEVEN_ZERO * Math.abs(moved)) / meanSquare(rotationRate));
}

function meanSquare(values: Float64Array): number {
  let [sum, count] = [0, 0];
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value * value;
    count++;
  }
  return sum / count;
}

import type { QualityCheck } from "../../model/quality.ts";
import { formatNumber } from "../../quantity/format.ts";
import { weighingUncertainty } from "../coefficientFit.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import { remembered } from "../remembered.ts";
import type { RunFacts } from "../runFacts.ts";
import { atBollard } from "./heldStretches.ts";
import { flagged, inPercent, passed, percentText } from "./verdict.ts";

/** Fall of the rotation rate that is no hunting, while command or thrust grow by so much of their range. Common practice, no source. */
const FALL = 0.05;
const COMMAND_GROWTH = 0.02;
const THRUST_GROWTH = 0.1;
/** Doubt of thrust over n² from the step of the tachometer that still goes. */
const COARSE = 0.02;
/** Standard deviation, in steps, from which on scatter evens the steps out (Widrow & Kollár, Quantization Noise, 2008, ch. 19). */
const DITHER = 0.6;

const SUBJECT = {
  code: "bench.tachometer-aliasing",
  name: "Tachometer",
  limit: `rate rises with command and thrust; its step makes less than ${percentText(COARSE)} of thrust over n²; marks pass at less than half the sampling rate`,
};

/** Does the rotation rate fold back, or come in steps that are too coarse? */
export function tachometerAliasing(facts: RunFacts): QualityCheck {
  const fold = foldOf(facts);
  const step = coarseness(facts);
  const nyquist = nyquistPart(facts);
  const texts = [
    `largest fall of the rate ${percentText(fold?.fall ?? 0)}`,
    `step ${percentText(step)} of thrust over n²`,
    ...(nyquist === null ? [] : [`marks at ${formatNumber(nyquist, 2)} of the sampling rate`]),
  ];
  const measured = { ...inPercent(fold?.fall ?? 0), text: texts.join(", ") };
  if (nyquist !== null && nyquist > 0.5) return undersampled(measured, nyquist, facts);
  if (fold) {
    return flagged(SUBJECT, {
      measured,
      sentence: `The rotation rate falls from ${rpm(fold.before)} to ${rpm(fold.after)} rpm while the ${fold.by} grows: it may have folded back, as a camera or a slow counter makes it.`,
      mend: "Use fewer marks, a faster camera or counter, or the electrical rate of the controller; check one speed with another tachometer.",
    });
  }
  if (step > COARSE) {
    return flagged(SUBJECT, {
      measured,
      sentence: `The rotation rate comes in steps so coarse that thrust over n² of the slowest plateau is in doubt by ${percentText(step)}.`,
      mend: "Count over a longer time, use more marks per turn, or log the rate with more digits.",
    });
  }
  return passed(SUBJECT, measured, "The rotation rate rises with the load, in steps that are fine enough.");
}

const rpm = ({ measured }: JudgedPlateau) => formatNumber(measured.rotationRate.mean * 60);

interface Fold {
  readonly before: JudgedPlateau;
  readonly after: JudgedPlateau;
  readonly fall: number;
  readonly by: "command" | "thrust";
}

function foldOf(facts: RunFacts): Fold | null {
  return foldByCommand(facts) ?? (atBollard(facts) ? foldByThrust(facts.used) : null);
}

function foldByCommand({ used, rest }: RunFacts): Fold | null {
  const idle = rest.idleCommand;
  if (idle === null || used.some(({ measured }) => measured.command === null)) return null;
  const size = ({ measured }: JudgedPlateau) => Math.abs(measured.command! - idle);
  const range = Math.max(...used.map(size));
  return greatestFall(used, size, (before, after) => size(after) - size(before) > COMMAND_GROWTH * range, "command");
}

function foldByThrust(used: readonly JudgedPlateau[]): Fold | null {
  const size = ({ thrustPoint }: JudgedPlateau) => Math.abs(thrustPoint.y);
  const grows = (before: JudgedPlateau, after: JudgedPlateau) => {
    const doubt = Math.hypot(weighingUncertainty(before.thrustPoint), weighingUncertainty(after.thrustPoint));
    return size(after) - size(before) > Math.max(THRUST_GROWTH * size(after), 4 * doubt);
  };
  return greatestFall(used, size, grows, "thrust");
}

function greatestFall(
  used: readonly JudgedPlateau[],
  size: (plateau: JudgedPlateau) => number,
  grows: (before: JudgedPlateau, after: JudgedPlateau) => boolean,
  by: Fold["by"],
): Fold | null {
  const ordered = used.toSorted((a, b) => size(a) - size(b));
  let worst: Fold | null = null;
  let fastest = 0;
  ordered.forEach((after, i) => {
    const fallFrom = (rate: number) => 1 - rateOf(after) / rate;
    // Where even the fastest of those before gives no greater fall, none does: a sound run is gone through once.
    for (let k = 0; fallFrom(fastest) > (worst?.fall ?? FALL) && k < i; k++) {
      const before = ordered[k]!;
      const fall = fallFrom(rateOf(before));
      if (fall > (worst?.fall ?? FALL) && grows(before, after)) worst = { before, after, fall, by };
    }
    fastest = Math.max(fastest, rateOf(after));
  });
  return worst;
}

const rateOf = ({ measured }: JudgedPlateau) => measured.rotationRate.mean;

/** Relative doubt of thrust over n² at the slowest plateau, from the step that its readings really have. */
function coarseness({ used, channels }: RunFacts): number {
  const slowest = used.reduce((a, b) => (b.measured.rotationRate.mean < a.measured.rotationRate.mean ? b : a)).measured;
  const step = Math.max(
    channels.rotationRate.resolution,
    slowest.scales.rotationRate *
      remembered(slowest.written, { stage: "readStep", dependsOn: null }, () =>
        readStep(slowest.written.readings.rotationRate),
      ),
  );
  if (slowest.rotationRate.standardDeviation >= DITHER * step) return 0;
  return (2 * step) / Math.sqrt(12) / slowest.rotationRate.mean;
}

/** Different values, at most, of a reading that comes in steps. */
const FEW_VALUES = 6;

/** Least distance of two readings where few different values recur; 0 for a reading without steps. */
function readStep(readings: Float64Array): number {
  const different = new Set<number>();
  for (let i = 0; i < readings.length && different.size <= FEW_VALUES; i++) {
    if (!Number.isNaN(readings[i]!)) different.add(readings[i]!);
  }
  const values = [...different].sort((a, b) => a - b);
  if (values.length < 2 || values.length > FEW_VALUES || readings.length < 5 * values.length) return 0;
  return Math.min(...values.slice(1).map((value, i) => value - values[i]!));
}

/** Marks a second over looks a second at the top rate; beyond one half they fold (Shannon 1949). Null: not stated. */
function nyquistPart({ recipe, used }: RunFacts): number | null {
  const { tachometerMarkers: markers, tachometerSampling: sampling } = recipe.stand ?? {};
  if (markers === undefined || sampling === undefined) return null;
  return (markers * Math.max(...used.map(({ measured }) => measured.rotationRate.mean))) / sampling;
}

function undersampled(measured: QualityCheck["measured"], part: number, { recipe }: RunFacts): QualityCheck {
  const { tachometerMarkers: markers, tachometerSampling: sampling } = recipe.stand!;
  return flagged(SUBJECT, {
    measured,
    sentence: `At the top rate ${markers === 1 ? "the mark passes" : `${markers} marks pass`} ${formatNumber(part * sampling!)} times a second and are looked at ${formatNumber(sampling!)} times: above half the sampling rate the reading folds back.`,
    mend: `Sample at ${formatNumber(2 * part * sampling!)}\u202fHz or more, or use fewer marks.`,
  });
}

import type { Recipe } from "../../model/recipe.ts";
import { InputProblem } from "../../quantity/problem.ts";
import type { Channels } from "../channels.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import type { SampleMean } from "../sampleMean.ts";

/** A plateau on its way through the water. */
export interface Advance {
  /** m/s; positive ahead. */
  readonly speed: SampleMean;
  /** J = V/(n D). */
  readonly ratio: number;
  /** Standard uncertainty of J that is the plateau's own: scatter and rounding of speed and rotation rate. */
  readonly ratioUncertainty: number;
  readonly isAtRest: boolean;
}

/**
 * Advance ratio up to which a plateau counts as bollard: thrust falls by about as much of itself as J grows, so that it
 * is off by some 1 %. Common practice, no source.
 */
const AT_REST = 0.01;

/** Throws InputProblem `bench.speed-twice` where both a column and the recipe give advance speeds. */
export function requireOneSpeed({ advanceSpeed }: Channels, { advanceSpeeds }: Recipe): void {
  if (!advanceSpeed || !advanceSpeeds) return;
  throw new InputProblem({
    code: "bench.speed-twice",
    where: `column ${advanceSpeed.header}`,
    found: "the column holds advance speeds, and others were stated by hand",
    needed: "one source of the advance speed",
    mend: "Mark the column as not used, or take the stated speeds away",
  });
}

/**
 * How a plateau moves through the water past a propeller of `diameter` (m); null where the run has no advance speed.
 *
 *   J = V/(n D),   u²(J) = (u(V)/(n D))² + (J u(n)/n)²   of the plateau's own scatter and rounding
 *
 * Source   ITTC Symbols and Terminology List (2021); JCGM 100:2008, 5.1, from memory.
 */
export function advanceOf(plateau: MeasuredPlateau, recipe: Recipe, diameter: number): Advance | null {
  const speed = plateau.advanceSpeed ?? statedSpeed(plateau.middle, recipe);
  if (speed === null) return null;
  const { rotationRate } = plateau;
  const n = rotationRate.mean;
  const J = speed.mean / (n * diameter);
  const ofSpeed = Math.hypot(speed.scatter, speed.rounding) / (n * diameter);
  const ofRate = (J * Math.hypot(rotationRate.scatter, rotationRate.rounding)) / n;
  return { speed, ratio: J, ratioUncertainty: Math.hypot(ofSpeed, ofRate), isAtRest: Math.abs(J) <= AT_REST };
}

function statedSpeed(middle: number, { advanceSpeeds }: Recipe): SampleMean | null {
  if (!advanceSpeeds) return null;
  if (advanceSpeeds.mode === "constant") return exactly(advanceSpeeds.speed);
  const span = advanceSpeeds.spans.find(({ start, end }) => middle >= start && middle <= end);
  return exactly(span?.speed ?? 0);
}

function exactly(mean: number): SampleMean {
  const none = {
    scatter: 0,
    rounding: 0,
    standardDeviation: 0,
    degreesOfFreedom: Infinity,
    series: new Float64Array(0),
    blockSize: 1,
  };
  return { mean, samples: 1, effectiveSamples: 1, ...none };
}

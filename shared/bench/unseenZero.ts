import { type StraightLine, straightLine } from "../numeric/straightLine.ts";
import { type FitPoint, type OriginFit, scattersMore, weighingUncertainty } from "./coefficientFit.ts";
import type { CommonPart } from "./commonParts.ts";
import { asOneInput } from "./doubtInput.ts";

/** Fewest points that can show a zero that is off. */
const FEWEST_POINTS = 4;
/** Part of the chi-squared that a line with a zero of its own must take away. */
const EXPLAINED = 0.5;

export interface UnseenZero {
  /** What a line with a zero of its own says, N. */
  readonly zero: number;
  /** How far it may be off at any plateau, N: that and its standard error, as one value need not do for all plateaus. */
  readonly reach: number;
}

/**
 * By how much the zero of the scale seems off during the run although the rests agree; null where nothing says so.
 *
 * A zero that wanders out and back between two rests leaves no trace in them, but it moves all plateaus: they then miss
 * the line through the origin by far more than their readings explain, and a line with an intercept fits.
 */
export function unseenZero(points: readonly FitPoint[], { chiSquared }: OriginFit): UnseenZero | null {
  if (points.length < FEWEST_POINTS || points.some(({ spread }) => spread)) return null;
  if (!scattersMore(chiSquared, points.length - 1)) return null;
  const line = zeroLine(points);
  if (line.chiSquared >= (1 - EXPLAINED) * chiSquared) return null;
  const scatter = Math.sqrt(Math.max(1, line.chiSquared / line.degreesOfFreedom));
  return { zero: line.intercept, reach: Math.abs(line.intercept) + scatter * line.interceptStandardError };
}

/** The line with a zero of its own. */
export function zeroLine(points: readonly FitPoint[]): StraightLine {
  return straightLine({
    x: points.map((point) => point.x),
    y: points.map((point) => point.y),
    uncertaintyX: points.map((point) => point.roundingX),
    uncertaintyY: points.map(weighingUncertainty),
  });
}

/**
 * What such a zero brings to a coefficient: it may be off by that much at every plateau, or the thrust may depart from
 * the square of the rotation rate; either way the coefficient is no better known than the two lines agree.
 */
export function unseenZeroPart(points: readonly FitPoint[], fit: OriginFit, run: string): CommonPart[] {
  const unseen = unseenZero(points, fit);
  if (unseen === null) return [];
  const name = "zero of the scale: what moved unseen between the rests";
  const words = { name, source: "tareDrift", kind: "B", distribution: "rectangular", unit: "N" } as const;
  const pull = fit.influences.reduce((sum, influence) => sum + influence, 0);
  const inputs = asOneInput({ words, sensitivities: [-pull], uncertainties: [unseen.reach / Math.sqrt(3)] });
  return inputs.map((input) => ({
    name,
    key: `unseen-zero:${run}`,
    change: input.sensitivity * input.standardUncertainty,
    degreesOfFreedom: Infinity,
    inputs: [input],
  }));
}

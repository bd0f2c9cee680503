import { chiSquareUpperTail } from "../numeric/chiSquare.ts";
import { straightLine } from "../numeric/straightLine.ts";
import { type FitPoint, type OriginFit, weighingUncertainty } from "./coefficientFit.ts";
import type { CommonPart } from "./commonParts.ts";
import { asOneInput } from "./doubtInput.ts";

/** Fewest points that can show a zero that is off. */
const FEWEST_POINTS = 4;
/** Chance of so much scatter below which the points are taken not to lie on the line. */
const TOO_RARE = 0.01;
/** Part of the chi-squared that a line with a zero of its own must take away. */
const EXPLAINED = 0.5;

/**
 * Thrust by which the zero of the scale seems off during the run although the rests agree, N; null where nothing says so.
 *
 * A zero that wanders out and back between two rests leaves no trace in them, but it moves all plateaus: they then miss
 * the line through the origin by far more than their readings explain, and a line with an intercept fits.
 */
export function unseenZero(points: readonly FitPoint[], { chiSquared }: OriginFit): number | null {
  if (points.length < FEWEST_POINTS) return null;
  if (chiSquareUpperTail(chiSquared, points.length - 1) > TOO_RARE) return null;
  const line = straightLine({
    x: points.map((point) => point.x),
    y: points.map((point) => point.y),
    uncertaintyX: points.map((point) => point.roundingX),
    uncertaintyY: points.map(weighingUncertainty),
  });
  return line.chiSquared < (1 - EXPLAINED) * chiSquared ? line.intercept : null;
}

/**
 * What such a zero brings to a coefficient: it may be off by that much at every plateau, or the thrust may depart from
 * the square of the rotation rate; either way the coefficient is no better known than the two lines agree.
 */
export function unseenZeroPart(points: readonly FitPoint[], fit: OriginFit, run: string): CommonPart[] {
  const zero = unseenZero(points, fit);
  if (zero === null) return [];
  const name = "zero of the scale: what moved unseen between the rests";
  const words = { name, source: "tareDrift", kind: "B", distribution: "rectangular", unit: "N" } as const;
  const pull = fit.influences.reduce((sum, influence) => sum + influence, 0);
  const inputs = asOneInput({ words, sensitivities: [-pull], uncertainties: [Math.abs(zero) / Math.sqrt(3)] });
  return inputs.map((input) => ({
    name,
    key: `unseen-zero:${run}`,
    change: input.sensitivity * input.standardUncertainty,
    degreesOfFreedom: Infinity,
    inputs: [input],
  }));
}

import type { AdvanceFit } from "../../model/advance.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import type { CommonPart } from "../commonParts.ts";
import { withContributions } from "../contributions.ts";
import { type AdvanceCurves, efficiencyOf } from "./advanceFit.ts";
import type { CurveFit } from "./curveFit.ts";

/** Part of the measured range by which the thrust curve is followed beyond it to its zero. */
const BEYOND = 0.25;
/** Steps of the search for a change of sign or a greatest value. */
const STEPS = 400;
/** Step of the central difference, of the range; the curves are polynomials of low order. */
const DIFFERENCE = 1e-4;

/**
 * First J at which the thrust curve falls to zero, within the measured range or a quarter beyond it; null where it does
 * not, or its root was not settled.
 *
 *   u(J_0) = u(K_T)/|K_T′(J_0)|
 *
 * Source   implicit function, law of propagation: JCGM 100:2008, 5.1, from memory.
 * Error    first order; beyond the range it is told as extrapolated.
 */
export function zeroThrustOf({ thrust, thrustAt, range: [low, high] }: AdvanceCurves): AdvanceFit["zeroThrust"] {
  const { at, slopeAt } = thrust.polynomial;
  const from = Math.max(0, low);
  const to = high + BEYOND * (high - from);
  for (let step = 0; step < STEPS; step++) {
    const [left, right] = [from + (step / STEPS) * (to - from), from + ((step + 1) / STEPS) * (to - from)];
    if (!(at(left) > 0) || at(right) > 0) continue;
    const { root, converged } = bracketedRoot(at, left, right);
    const slope = slopeAt(root);
    if (!converged || slope === 0) return null;
    const { parts, fit } = thrustAt(root);
    const own = { weight: 1 / slope, independent: fit.independent, degreesOfFreedom: fit.degreesOfFreedom, parts };
    return { advanceRatio: withContributions(root, [own]), isExtrapolated: root > high };
  }
  return null;
}

/**
 * The best efficiency η = J K_T/C_P within the measured range and its J, both 1; null where there is no power or no thrust.
 *
 * Source   open-water efficiency: ITTC Symbols and Terminology List (2021); the place by Brent's method on dη/dJ, its
 *          doubt as that of the slope over the curvature, JCGM 100:2008, 5.1, from memory.
 * Error    first order. At an end of the range the place is that end, without a doubt of its own, and told so.
 */
export function peakOf(
  curves: AdvanceCurves,
  ratioParts: (advanceRatio: number) => readonly CommonPart[],
): AdvanceFit["peak"] {
  const { thrust, power, thrustAt, powerAt, range } = curves;
  if (!power || !powerAt) return null;
  const [from, to] = [Math.max(0, range[0]), range[1]];
  const efficiency = (J: number) =>
    power.polynomial.at(J) > 0 ? (J * thrust.polynomial.at(J)) / power.polynomial.at(J) : -Infinity;
  const grid = Array.from({ length: STEPS + 1 }, (_, step) => from + (step / STEPS) * (to - from));
  const best = grid.reduce((a, b, i) => (efficiency(b) > efficiency(grid[a]!) ? i : a), 0);
  if (!(efficiency(grid[best]!) > 0)) return null;
  const isAtEdge = best === STEPS || best === 0;
  const steepness = (J: number) => steepnessAt(J, thrust, power);
  const J = isAtEdge ? grid[best]! : bracketedRoot(steepness, grid[best - 1]!, grid[best + 1]!).root;
  const value = efficiencyOf(J, thrustAt(J), powerAt(J));
  if (value === null) return null;
  if (isAtEdge) return { efficiency: value, advanceRatio: uncertain(J, 0), isAtEdge };
  const curvature =
    (steepness(J + DIFFERENCE * (to - from)) - steepness(J - DIFFERENCE * (to - from))) /
    (2 * DIFFERENCE * (to - from));
  const own = placeUncertainty(J, thrust, power, DIFFERENCE * (to - from)) / Math.abs(curvature);
  const degreesOfFreedom = Math.min(thrustAt(J).fit.degreesOfFreedom, powerAt(J).fit.degreesOfFreedom);
  const place = { weight: 1, independent: own, degreesOfFreedom, parts: ratioParts(J) };
  return { efficiency: value, advanceRatio: withContributions(J, [place]), isAtEdge };
}

/** dη/dJ times C_P², of η = J K_T/C_P: K_T C_P + J (K_T' C_P - K_T C_P'). Zero at the best efficiency. */
function steepnessAt(J: number, thrust: CurveFit, power: CurveFit): number {
  const [K, C] = [thrust.polynomial, power.polynomial];
  return K.at(J) * C.at(J) + J * (K.slopeAt(J) * C.at(J) - K.at(J) * C.slopeAt(J));
}

/** Standard uncertainty of that steepness from the points of both curves, which are taken as independent. */
function placeUncertainty(J: number, thrust: CurveFit, power: CurveFit, h: number): number {
  const [K, C] = [thrust.polynomial, power.polynomial];
  const ofThrust = pulls(thrust, J, h).map(
    ({ value, slope }) => value * C.at(J) + J * (slope * C.at(J) - value * C.slopeAt(J)),
  );
  const ofPower = pulls(power, J, h).map(
    ({ value, slope }) => K.at(J) * value + J * (K.slopeAt(J) * value - K.at(J) * slope),
  );
  const spread = (changes: readonly number[], { polynomial, scatterRatio }: CurveFit) =>
    scatterRatio * Math.hypot(...changes.map((change, i) => change * polynomial.pointUncertainties[i]!));
  return Math.hypot(spread(ofThrust, thrust), spread(ofPower, power));
}

/** Change of a curve and of its slope at J by a change of each point. */
function pulls({ polynomial }: CurveFit, J: number, h: number): { value: number; slope: number }[] {
  const [below, above] = [polynomial.influencesAt(J - h), polynomial.influencesAt(J + h)];
  return polynomial.influencesAt(J).map((value, i) => ({ value, slope: (above[i]! - below[i]!) / (2 * h) }));
}

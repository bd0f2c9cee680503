import { chiSquareUpperTail } from "../numeric/chiSquare.ts";
import { straightLine } from "../numeric/straightLine.ts";
import { uncertain } from "../quantity/uncertain.ts";
import { weighingUncertainty, wideningOf, withoutSpread } from "./coefficientFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { RunFacts } from "./runFacts.ts";

/** Change of K_T from the slowest to the fastest plateau that does not matter to anyone who builds a vehicle. */
const RELEVANT_FOR_THRUST = 0.02;
/** The same of C_P, which friction and low Reynolds numbers lift at the slow end of any run. Common practice, no source. */
const RELEVANT_FOR_POWER = 0.05;
/** Scatter of C_P among plateaus that matters. Common practice, no source. */
const RELEVANT_SCATTER = 0.02;
/** Chance of so much scatter below which it is told, and the widening from which on. */
const TOO_RARE = 0.01;
const TELLING_WIDENING = 1.5;

/** Fewest plateaus that tell a trend from scatter. */
const FEWEST = 4;

/** How C_P changes with the rotation rate. */
export interface PowerMisfit {
  readonly slowest: JudgedPlateau;
  readonly fastest: JudgedPlateau;
  /** C_P = P/(ρ n³ D⁵) of these two plateaus. */
  readonly atSlowest: number;
  readonly atFastest: number;
  /** Relative change of C_P from the one to the other. */
  readonly change: number;
  /** Relative scatter of the plateaus about the one C_P of the fit. */
  readonly scatter: number;
  /** What is wrong: C_P changes with the rate, its plateaus scatter by more than their readings explain, or nothing. */
  readonly kind: "trend" | "scatter" | "none";
}

/** Relative change of K_T from the slowest to the fastest plateau where it is one, not scatter; null where it is none. */
export function thrustTrend({ law, used }: Pick<RunFacts, "law" | "used">): number | null {
  if (law === null) return null;
  const { exponent } = law.ifZeroStood;
  const [low, high] = exponent.interval95;
  const rates = used.map(({ measured }) => measured.rotationRate.mean);
  const change = (Math.max(...rates) / Math.min(...rates)) ** (exponent.value - 2) - 1;
  return (low <= 2 && high >= 2) || Math.abs(change) < RELEVANT_FOR_THRUST ? null : change;
}

/**
 * Does the shaft power grow with the cube of the rotation rate, as one C_P takes it? Null where that can not be told: no
 * shaft power, too few plateaus or all of one rate, curves at speed, or a sweep that is fitted as a whole.
 *
 * Source   a straight line of ln C_P on ln n, weighted by the readings and widened by the scatter (Birge, Physical Review
 *          40 (1932) 207); scatter by chi-squared as for the thrust.
 */
export function powerMisfit({ used, power, law, sweep, singleReadings }: RunFacts): PowerMisfit | null {
  if (power === null || law === null || sweep) return null;
  const known = used.filter(({ powerPoint }) => powerPoint !== null && powerPoint.y > 0);
  const { fit } = power;
  if (known.length < FEWEST || known.length !== fit.influences.length) return null;
  const rates = known.map(({ measured }) => measured.rotationRate.mean);
  const coefficients = known.map(({ powerPoint }) => powerPoint!.y / powerPoint!.x);
  const [low, high] = [rates.indexOf(Math.min(...rates)), rates.indexOf(Math.max(...rates))];
  if (rates[high]! < LEAST_RANGE * rates[low]!) return null;
  const { slope, differs } = trendOf(known, singleReadings);
  const byLine = (rates[high]! / rates[low]!) ** slope - 1;
  const change = coefficients[high]! / coefficients[low]! - 1;
  const trends = differs && Math.abs(byLine) >= RELEVANT_FOR_POWER && change * byLine > 0;
  const squares = coefficients.reduce((sum, one) => sum + (one / fit.coefficient - 1) ** 2, 0);
  const scatter = Math.sqrt(squares / (known.length - 1));
  const scatters =
    !singleReadings &&
    scatter >= RELEVANT_SCATTER &&
    fit.scatterRatio >= TELLING_WIDENING &&
    chiSquareUpperTail(fit.chiSquared, known.length - 1) <= TOO_RARE;
  return {
    slowest: known[low]!,
    fastest: known[high]!,
    atSlowest: coefficients[low]!,
    atFastest: coefficients[high]!,
    change,
    scatter,
    kind: trends ? "trend" : scatters ? "scatter" : "none",
  };
}

/** Ratio of the fastest to the slowest rate below which a trend is not to be seen. */
const LEAST_RANGE = 1.05;

/** Slope of ln C_P on ln n, and whether its 95 % interval leaves nought out. */
function trendOf(known: readonly JudgedPlateau[], singleReadings: boolean) {
  const points = known.map(({ powerPoint }) => withoutSpread(powerPoint!));
  const line = straightLine({
    x: known.map(({ measured }) => Math.log(measured.rotationRate.mean)),
    y: points.map(({ x, y }) => Math.log(y / x)),
    uncertaintyY: points.map((point) => Math.hypot(weighingUncertainty(point) / point.y, point.roundingX / point.x)),
  });
  const widening = wideningOf(line.chiSquared, line.degreesOfFreedom, Infinity, singleReadings);
  const slope = uncertain(line.slope, line.slopeStandardError * widening.ratio, widening.degreesOfFreedom);
  const [low, high] = slope.interval95;
  return { slope: line.slope, differs: low > 0 || high < 0 };
}

import type { AdvanceCurve } from "../../model/advance.ts";
import { combined, judgedTogether, known } from "../../numeric/combined.ts";
import { correctedInformationCriterion } from "../../numeric/informationCriterion.ts";
import { type PolynomialFit, polynomialFit } from "../../numeric/polynomialFit.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type FitPoint, type OriginFit, weighingUncertainty, wideningOf } from "../coefficientFit.ts";

/** A point of a curve: y = K(J) x. */
export interface CurvePoint {
  readonly advanceRatio: number;
  readonly advanceRatioUncertainty: number;
  readonly point: FitPoint;
}

/** A coefficient as polynomial of the advance ratio. */
export interface CurveFit {
  readonly points: readonly CurvePoint[];
  readonly polynomial: PolynomialFit;
  readonly orderFrom: AdvanceCurve["orderFrom"];
  readonly criteria: AdvanceCurve["criteria"];
  readonly scatterRatio: number;
  /** The curve at one advance ratio, in the form in which a line through the origin is told. */
  readonly at: (advanceRatio: number) => OriginFit;
  /** Change of the curve at `advanceRatio` by a relative change of the advance ratio of each point. */
  readonly advancePulls: (advanceRatio: number) => readonly number[];
}

const HIGHEST_ORDER = 4;
/** Orders whose criterion lies this close to the least are as good; the lowest of them is taken. Burnham & Anderson, 2.6. */
const AS_GOOD = 2;
/** Advance ratios closer than this are one: they tell no slope. */
const ONE_RATIO = 0.01;
/** Part of itself that a point leaves free at least; one that rules the curve shows no scatter. */
const LEAST_FREEDOM = 1e-3;

/**
 * Polynomial of y/x in the advance ratio, weighted, with doubt in both coordinates, widened where the points scatter more
 * than their doubts explain. Without a stated `order` the corrected information criterion chooses it.
 *
 * Source   order: Hurvich & Tsai, Biometrika 76 (1989) 297, and Burnham & Anderson, Model Selection and Multimodel
 *          Inference, 2nd ed. (2002), 2.6; widening: Birge, Physical Review 40 (1932) 207.
 * Throws   InputProblem `bench.advance-order` where a stated order asks for more points than there are.
 */
export function curveFit(points: readonly CurvePoint[], singleReadings: boolean, order?: number): CurveFit {
  const data = dataOf(points);
  const { chosen, orderFrom, criteria } = order === undefined ? choose(data) : stated(order, data);
  const polynomial = polynomialFit({ ...data, order: chosen });
  const widening = (promised: number) =>
    wideningOf(polynomial.chiSquared, polynomial.degreesOfFreedom, promised, singleReadings);
  const advancePulls = (advanceRatio: number) => {
    const influences = polynomial.influencesAt(advanceRatio);
    return points.map(({ advanceRatio: J }, i) => -influences[i]! * polynomial.slopeAt(J) * J);
  };
  return {
    ...{ points, polynomial, orderFrom, criteria, advancePulls },
    scatterRatio: widening(Infinity).ratio,
    at: (advanceRatio) => fitAt({ points, polynomial, advanceRatio, singleReadings, widening }),
  };
}

/** How many different advance ratios there are, those that lie close together counted once. */
export function differentRatios(ratios: readonly number[]): number {
  return ratios.toSorted((a, b) => a - b).filter((ratio, i, all) => i === 0 || ratio - all[i - 1]! > ONE_RATIO).length;
}

type Data = ReturnType<typeof dataOf>;

function dataOf(points: readonly CurvePoint[]) {
  return {
    x: points.map(({ advanceRatio }) => advanceRatio),
    y: points.map(({ point }) => point.y / point.x),
    uncertaintyX: points.map(({ advanceRatioUncertainty }) => advanceRatioUncertainty),
    uncertaintyY: points.map(({ point }) => Math.hypot(weighingUncertainty(point) / point.x, ofRate(point))),
  };
}

/** Standard uncertainty of y/x because the rotation rate comes in steps. */
const ofRate = ({ x, y, roundingX }: FitPoint) => Math.abs(y / x) * (roundingX / x);

/** All orders are judged with the same weights: those of the highest that the points can carry. */
function choose(data: Data) {
  const count = data.x.length;
  const orders = [1, 2, 3, HIGHEST_ORDER].filter((m) => count >= m + 4 && differentRatios(data.x) >= m + 2);
  if (orders.length === 0) return { chosen: 1, orderFrom: "fewPoints" as const, criteria: [] };
  const { pointUncertainties } = polynomialFit({ ...data, order: Math.max(...orders) });
  const criteria = orders.map((m) => {
    const { chiSquared } = polynomialFit({ x: data.x, y: data.y, uncertaintyY: pointUncertainties, order: m });
    return { order: m, criterion: correctedInformationCriterion({ chiSquared, points: count, coefficients: m + 1 }) };
  });
  const least = Math.min(...criteria.map(({ criterion }) => criterion));
  const best = criteria.find(({ criterion }) => criterion <= least + AS_GOOD)!;
  return { chosen: best.order, orderFrom: "informationCriterion" as const, criteria };
}

function stated(order: number, { x }: Data) {
  const different = differentRatios(x);
  if (different >= order + 1) return { chosen: order, orderFrom: "stated" as const, criteria: [] };
  throw new InputProblem({
    code: "bench.advance-order",
    where: "order of the curve",
    found: `order ${order} for plateaus at ${different} advance ratios`,
    needed: `at least ${order + 1} advance ratios`,
    mend: "State a lower order, or measure at more speeds",
  });
}

interface FitAt {
  readonly points: readonly CurvePoint[];
  readonly polynomial: PolynomialFit;
  readonly advanceRatio: number;
  readonly singleReadings: boolean;
  readonly widening: (promised: number) => { readonly ratio: number; readonly degreesOfFreedom: number };
}

function fitAt({ points, polynomial, advanceRatio, singleReadings, widening }: FitAt): OriginFit {
  const pulls = polynomial.influencesAt(advanceRatio);
  const scatters = points.map(({ point }, i) => ({
    standardUncertainty: Math.abs(pulls[i]! * (point.scatter / point.x)),
    degreesOfFreedom: point.scatterDegreesOfFreedom,
    commonDegreesOfFreedom: point.scatterCommonDegreesOfFreedom,
  }));
  const others = points.map(({ point, advanceRatio: J, advanceRatioUncertainty }, i) => {
    const own = Math.hypot(point.rounding / point.x, point.repeatability / point.x, ofRate(point));
    return pulls[i]! * Math.hypot(own, polynomial.slopeAt(J) * advanceRatioUncertainty);
  });
  const { standardUncertainty: promised, degreesOfFreedom } = combined([judgedTogether(scatters), ...known(...others)]);
  const widened = widening(degreesOfFreedom);
  const seen = singleReadings ? scatterSeen(polynomial, points, pulls) : 0;
  return {
    coefficient: polynomial.at(advanceRatio),
    influences: pulls.map((pull, i) => pull / points[i]!.point.x),
    independent: Math.max(promised * widened.ratio, seen),
    degreesOfFreedom: widened.degreesOfFreedom,
    chiSquared: polynomial.chiSquared,
    scatterRatio: Math.max(widened.ratio, promised > 0 ? seen / promised : 1),
    residuals: polynomial.residuals,
    converged: polynomial.converged,
  };
}

/** As in the fit through the origin: MacKinnon & White, Journal of Econometrics 29 (1985) 305 (HC3). */
function scatterSeen(polynomial: PolynomialFit, points: readonly CurvePoint[], pulls: readonly number[]): number {
  if (polynomial.degreesOfFreedom < 1) return 0;
  return Math.hypot(
    ...points.map(({ advanceRatio }, i) => {
      const distance = polynomial.residuals[i]! * polynomial.pointUncertainties[i]!;
      const leverage = polynomial.influencesAt(advanceRatio)[i]!;
      return (pulls[i]! * distance) / Math.max(1 - leverage, LEAST_FREEDOM);
    }),
  );
}

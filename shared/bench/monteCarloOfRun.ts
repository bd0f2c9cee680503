import type { MonteCarlo, MonteCarloResult } from "../model/budget.ts";
import { normalDraw, rectangularDraw, scaleDraw, type Uniform } from "../numeric/distributions.ts";
import { lineThroughOrigin } from "../numeric/lineThroughOrigin.ts";
import { againstFirstOrder } from "../numeric/monteCarlo.ts";
import { uniformsFrom } from "../numeric/pcg32.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
import { within } from "../quantity/domain.ts";
import type { Uncertain } from "../quantity/uncertain.ts";
import { type CoefficientInputs, fitPointsOf, inputsOf, type KeyedInput } from "./budget.ts";
import { type FitPoint, fittingUncertainty, type OriginFit } from "./coefficientFit.ts";
import { type DoubtInput, powerFactor } from "./doubtInput.ts";
import type { RunFacts } from "./runFacts.ts";

export interface MonteCarloRequest {
  readonly draws: number;
  /** The same seed gives the same draws. */
  readonly seed: number;
}

/** Fewest and most draws: ten turns of ten thousand at most take some seconds. */
export const DRAWS = { fewest: 1000, most: 1_000_000, usual: 20_000 } as const;

/** Draws between two reports of progress. */
const SLICE = 1000;

/** Errors of one draw that coefficients share, in standard uncertainties, by key and name of the input. */
type Shared = Map<string, readonly number[]>;

/**
 * The coefficients of a run by propagation of distributions: every input is drawn from its own distribution, the line is
 * fitted again, and what all plateaus share acts on the coefficient as the full factor it is. Yields the share done, then
 * returns the result: whoever runs it can stop between two steps.
 *
 * Source   JCGM 101:2008, 5 to 8; agreement with the first order by 8.1, tolerance to one digit by 7.9.2.
 * Assumes  means of plateaus and of rests are t-distributed, steps are rectangular, what was typed as a standard
 *          uncertainty is normal. The exponents with which power from the motor's constants hangs on current and speed are
 *          held at those of the run.
 * Throws   OutOfDomain for draws beyond `DRAWS`.
 */
export function* monteCarloOfRun(facts: RunFacts, { draws, seed }: MonteCarloRequest): Generator<number, MonteCarlo> {
  within(draws, DRAWS.fewest, DRAWS.most, "the number of draws", "");
  const uniform = uniformsFrom(seed);
  const points = fitPointsOf(facts);
  const inputs = inputsOf(facts);
  const drawThrust = coefficientDraw(facts.thrust.fit, points.thrust, inputs.thrust);
  const drawPower = facts.power && inputs.power && coefficientDraw(facts.power.fit, points.power, inputs.power);
  const [thrusts, powers, merits] = [draws, draws, draws].map((count) => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let i = 0; i < draws; i++) {
    if (i % SLICE === 0) yield i / draws;
    const shared: Shared = new Map();
    const K_T = drawThrust(uniform, shared);
    thrusts[i] = K_T;
    if (!drawPower) continue;
    powers[i] = drawPower(uniform, shared);
    merits[i] = meritOfDraw(K_T, powers[i]!);
  }
  const results = [
    ...resultOf("thrustCoefficient", thrusts, facts.thrust.document.coefficient),
    ...resultOf("powerCoefficient", powers, facts.power?.document.coefficient ?? null),
    ...resultOf("staticMerit", merits, facts.merit),
  ];
  return { draws, seed, results };
}

/** A draw may carry a badly known coefficient through zero, where there is no merit. */
function meritOfDraw(K_T: number, C_P: number): number {
  return K_T > 0 && C_P > 0 ? staticMerit({ thrustCoefficient: K_T, powerCoefficient: C_P }) : Number.NaN;
}

function coefficientDraw(fit: OriginFit, points: readonly FitPoint[] | null, inputs: CoefficientInputs) {
  const refit = points ? refittedDraw(fit, points, inputs) : () => fit.coefficient;
  const added = [...(points ? [] : inputs.beyond), ...inputs.common.filter(({ nominal }) => nominal === undefined)];
  const powers = inputs.common.filter(({ nominal }) => nominal !== undefined);
  return (uniform: Uniform, shared: Shared): number => {
    let K = refit(uniform);
    for (const input of added) {
      const errors = errorsOf(input, uniform, shared);
      input.pieces.forEach(({ change }, k) => {
        K += change * errors[k]!;
      });
    }
    for (const input of powers) {
      const off = input.standardUncertainty * errorsOf(input, uniform, shared)[0]!;
      K *= powerFactor(input, fit.coefficient, off);
    }
    return K;
  };
}

function errorsOf(input: KeyedInput, uniform: Uniform, shared: Shared): readonly number[] {
  const id = `${input.key}|${input.name}`;
  const known = shared.get(id);
  if (known) return known;
  // Pieces of a scatter were judged by one estimate: where it is too small, it is so for all of them.
  const scale = input.distribution === "student" ? scaleDraw(input.degreesOfFreedom, uniform) : 1;
  const errors = input.pieces.map(() => scale * unitDraw(input.distribution, uniform));
  shared.set(id, errors);
  return errors;
}

function unitDraw(distribution: DoubtInput["distribution"], uniform: Uniform): number {
  return distribution === "rectangular" ? rectangularDraw(uniform) : normalDraw(uniform);
}

/**
 * The line through plateaus that are moved by their own doubts. Scatters of all plateaus were judged by one estimate and so
 * were their spreads: each has one drawn scale. Where the plateaus scatter more than their doubts explain, the doubts are
 * widened as in the fit.
 */
function refittedDraw(fit: OriginFit, points: readonly FitPoint[], inputs: CoefficientInputs) {
  const uncertaintyX = points.map((point) => point.roundingX);
  const uncertaintyY = points.map(fittingUncertainty);
  const promised = Math.hypot(...inputs.own.map((input) => input.sensitivity * input.standardUncertainty));
  const widening = fit.independent / promised;
  const degreesOf = (source: DoubtInput["source"]) =>
    inputs.own.find((input) => input.source === source)?.degreesOfFreedom ?? Infinity;
  const byScatter = inputs.beyond.length > 0 && fit.degreesOfFreedom === points.length - 1;
  const [ofScatter, ofSpread] = byScatter
    ? [Infinity, Infinity]
    : [degreesOf("plateauScatter"), degreesOf("plateauSpread")];
  return (uniform: Uniform): number => {
    const scale = byScatter ? widening * scaleDraw(fit.degreesOfFreedom, uniform) : widening;
    const [scatter, spread] = [scaleDraw(ofScatter, uniform), scaleDraw(ofSpread, uniform)];
    const x = points.map((point) => point.x + scale * point.roundingX * unitDraw("rectangular", uniform));
    const y = points.map((point) => point.y + scale * ownError(point, { scatter, spread }, uniform));
    return lineThroughOrigin({ x, y, uncertaintyX, uncertaintyY }).slope;
  };
}

/** `scales`: what the estimates of scatter and of spread are off by, as factors. */
function ownError(
  point: FitPoint,
  scales: { readonly scatter: number; readonly spread: number },
  uniform: Uniform,
): number {
  const { scatter, rounding, repeatability, spread } = point;
  const steps = rounding === 0 ? 0 : rounding * unitDraw("rectangular", uniform);
  const beyond = spread ? scales.spread * spread.uncertainty * normalDraw(uniform) : 0;
  return scales.scatter * scatter * normalDraw(uniform) + steps + beyond + repeatability * normalDraw(uniform);
}

/** None where the coefficient is not known, or so badly that a draw has none: a diameter of less than nothing. */
function resultOf(
  quantity: MonteCarloResult["quantity"],
  values: Float64Array,
  firstOrder: Uncertain | null,
): MonteCarloResult[] {
  if (firstOrder === null || !values.every(Number.isFinite)) return [];
  return [{ quantity, ...againstFirstOrder(values, firstOrder) }];
}

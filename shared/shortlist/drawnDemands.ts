import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { DrawnProbability } from "../model/shortlistResult.ts";
import { normalDraw } from "../numeric/distributions.ts";
import { uniformsFrom } from "../numeric/pcg32.ts";
import type { Candidate } from "./candidate.ts";
import { AT_PARTS } from "./demandSlots.ts";
import type { Doubts } from "./inputs.ts";

export interface DrawChoice {
  readonly draws: number;
  readonly seed: number;
}

/** Just below full correlation, so that the factor of the matrix exists. */
const FULL = 1 - 1e-9;

/**
 * Shares of draws of all doubtful inputs in which the combination that `candidate` holds keeps its demands; checks the
 * first-order probabilities. Null where nothing is doubtful.
 *
 * Source   JCGM 101:2008, 5.9 and 6.4.8: normal inputs, those that hang together by the factor of their correlations.
 *          The stream of draws is that of the combination's number, so that combinations do not share their draws.
 * Assumes  no input is negative: one drawn so counts as 0. The parts by themselves are taken as exact, but for the endurance,
 *          as in the first order: a propeller of just the greatest diameter is meant to fit.
 * Error    standard error sqrt(p (1 − p)/draws).
 */
export function drawnDemands(candidate: Candidate, { draws, seed }: DrawChoice): DrawnProbability | null {
  const doubts = candidate.doubts();
  if (doubts.inputs.length === 0) return null;
  const { judge, number } = candidate;
  candidate.take(number);
  candidate.ownCurves();
  const { slots, partsBase } = judge.table;
  const asked = slots.map((_, slot) => slot).filter((slot) => judge.share[slot] !== Infinity);
  const exact = asked.filter((slot) => slot >= partsBase && slot !== partsBase + AT_PARTS.endurance);
  const shares = new Map(exact.map((slot) => [slot, judge.share[slot]!]));
  const kept = new Float64Array(slots.length);
  let all = 0;
  const draw = drawerOf(candidate, doubts, uniformsFrom(seed, number % 2 ** 31));
  for (let i = 0; i < draws; i++) {
    draw();
    candidate.judgeAgain();
    let everything = true;
    for (const slot of asked) {
      if ((shares.get(slot) ?? judge.share[slot]!) >= 0) kept[slot]!++;
      else everything = false;
    }
    if (everything) all++;
  }
  draw.putBack();
  candidate.take(number);
  const demands = asked.map((slot) => {
    const { duty, demand } = slots[slot]!;
    return { duty, demand, probability: kept[slot]! / draws };
  });
  return { draws, seed, all: all / draws, demands };
}

/** Puts drawn inputs into the candidate each time it is called. */
function drawerOf(candidate: Candidate, { inputs, correlations }: Doubts, uniform: () => number) {
  const values = inputs.map(({ input }) => candidate.valueOf(input));
  const lower = factorOf({ inputs, correlations });
  const independent = new Float64Array(inputs.length);
  const draw = (): void => {
    for (let k = 0; k < inputs.length; k++) independent[k] = normalDraw(uniform);
    for (let k = 0; k < inputs.length; k++) {
      let error = 0;
      for (let j = 0; j <= k; j++) error += lower[k]![j]! * independent[j]!;
      const { input, standardUncertainty } = inputs[k]!;
      candidate.setValue(input, Math.max(0, values[k]! + standardUncertainty * error));
    }
  };
  const putBack = (): void => {
    for (let k = 0; k < inputs.length; k++) candidate.setValue(inputs[k]!.input, values[k]!);
  };
  return Object.assign(draw, { putBack });
}

function factorOf({ inputs, correlations }: Doubts): number[][] {
  const places = new Map(inputs.map(({ input }, place) => [input, place]));
  const matrix = Matrix.eye(inputs.length);
  for (const { of, and, coefficient } of correlations) {
    const [a, b] = [places.get(of), places.get(and)];
    if (a === undefined || b === undefined || a === b) continue;
    const held = Math.max(-FULL, Math.min(FULL, coefficient));
    matrix.set(a, b, held);
    matrix.set(b, a, held);
  }
  return new CholeskyDecomposition(matrix).lowerTriangularMatrix.to2DArray();
}

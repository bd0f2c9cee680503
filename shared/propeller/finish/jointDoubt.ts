import { boundedInterval } from "../../numeric/boundedInterval.ts";
import { propagate } from "../../numeric/propagation.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { Derived } from "./derived.ts";
import type { FittedSide } from "./finishSide.ts";
import type { FittedSurface } from "./fitSurface.ts";

export interface SidesWithDoubt {
  readonly sides: readonly FittedSide[];
  /** Covariance of the measured numbers of all finishes, also of those that could not be fitted. */
  readonly covariance: readonly (readonly number[])[];
  /** Relative standard uncertainty of the blade elements, common to all. */
  readonly model: { readonly thrust: number; readonly torque: number };
}

/**
 * Standard uncertainties of what follows from the fits. What was measured has its covariance; blade elements that are off
 * by one part of K_T and one of K_Q for every surface move all finishes alike, so that most of it cancels in a change.
 *
 *   δp = S δK - S K δm
 *
 * Intervals of what has a physical bound stay on its side: `boundedInterval`.
 *
 * Source   JCGM 100:2008, 5.2; JCGM 102:2011, 6.2.1.3; Feldman & Cousins, Physical Review D 57 (1998)
 *          3873. All from memory.
 */
export function jointDoubt({ sides, covariance, model }: SidesWithDoubt): (derived: Derived) => Uncertain {
  const rows = sides.flatMap((side) => side.fit.sensitivities.map((row) => rowOfAll(row, side, covariance.length)));
  const inputs = [
    ...covariance.map((row) => [...row, 0, 0]),
    [...covariance.map(() => 0), model.thrust ** 2, 0],
    [...covariance.map(() => 0), 0, model.torque ** 2],
  ];
  const unknowns = propagate(rows, inputs).covariance;
  return (derived) => bounded(derived, propagate([derived.gradient], unknowns).standardUncertainties[0]!);
}

function bounded({ value, bound }: Derived, standardUncertainty: number): Uncertain {
  const free = uncertain(value, standardUncertainty);
  if (bound === undefined || standardUncertainty === 0) return free;
  const { least, unheld: estimate } = bound;
  return { ...free, interval95: boundedInterval({ estimate, standardUncertainty, least }) };
}

/** Where points lie further from the fit than their doubts explain, these are widened; never narrowed. */
const scatterFactor = ({ chiSquared, degreesOfFreedom }: FittedSurface) =>
  degreesOfFreedom > 0 ? Math.sqrt(Math.max(1, chiSquared / degreesOfFreedom)) : 1;

/** Sensitivities of one unknown to all measured numbers and to the two errors of the blade elements. */
function rowOfAll(row: readonly number[], { fit, from, measured }: FittedSide, count: number): number[] {
  const widened = scatterFactor(fit);
  const ofModel = (kind: 0 | 1) => -row.reduce((sum, one, i) => sum + (i % 2 === kind ? one * measured[i]! : 0), 0);
  return [...Array.from({ length: count }, (_, i) => widened * (row[i - from] ?? 0)), ofModel(0), ofModel(1)];
}

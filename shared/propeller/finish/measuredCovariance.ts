import type { MeasuredPoint, ModelUncertainty } from "../../model/finishFit.ts";
import { InputProblem } from "../../quantity/problem.ts";

/** Measured numbers in a row: K_T and K_Q of each point in turn. */
export const measuredValues = (points: readonly MeasuredPoint[]): number[] =>
  points.flatMap(({ thrustCoefficient, torqueCoefficient }) => [thrustCoefficient.value, torqueCoefficient.value]);

/**
 * Covariance of `measuredValues`: points share the part of their errors that is common to all; K_T and K_Q go together by
 * their correlation, in the common part as in the rest.
 *
 * Source   JCGM 100:2008, 5.2 and F.1.2.3.
 * Throws   InputProblem `propeller.common-above-total` where a common part exceeds the whole.
 */
export function measuredCovariance(points: readonly MeasuredPoint[]): number[][] {
  const all = points.flatMap((point, index) => {
    return (["thrustCoefficient", "torqueCoefficient"] as const).map((kind) => {
      const { standardUncertainty, commonUncertainty } = point[kind];
      if (commonUncertainty > standardUncertainty) throw commonAboveTotal(kind, commonUncertainty, standardUncertainty);
      return { index, kind, total: standardUncertainty, common: commonUncertainty, r: point.correlation };
    });
  });
  return all.map((a) =>
    all.map((b) => {
      const correlation = a.kind === b.kind ? 1 : (a.r + b.r) / 2;
      return correlation * (a.index === b.index ? a.total * b.total : a.common * b.common);
    }),
  );
}

/**
 * Covariance of the differences between measured numbers and those of blade elements that are off by one part of K_T and
 * one of K_Q for all points: what says whether a surface can be reached.
 */
export function differenceCovariance(
  measured: readonly number[],
  covariance: readonly (readonly number[])[],
  model: ModelUncertainty,
): number[][] {
  const off = measured.map((value, i) => value * (i % 2 === 0 ? model.thrust : model.torque));
  return covariance.map((row, i) => row.map((one, j) => one + (i % 2 === j % 2 ? off[i]! * off[j]! : 0)));
}

function commonAboveTotal(kind: string, common: number, total: number): InputProblem {
  return new InputProblem({
    code: "propeller.common-above-total",
    where: `measured.${kind}.commonUncertainty`,
    found: `The common part ${common} is more than the whole standard uncertainty ${total}`,
    needed: "at most the whole",
    mend: "Give the whole standard uncertainty, common part included",
  });
}

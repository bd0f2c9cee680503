import type { FinishResult } from "../../model/finishFit.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { type Derived, ofOneFit, sectionDragOf } from "./derived.ts";
import { outOfReachSentence } from "./finishInWords.ts";
import { roughnessOfDrag } from "./finishPicture.ts";
import type { FinishSide } from "./finishSide.ts";
import type { FittedSurface, SurfaceFit } from "./fitSurface.ts";

/** Doubt of what follows from the fits, and all fits it is counted over. */
export interface Doubts {
  readonly doubtOf: (derived: Derived) => Uncertain;
  readonly all: readonly FittedSurface[];
}

/** What is told of one finish. */
export function finishResult({ name, fit, response, measured }: FinishSide, { doubtOf, all }: Doubts): FinishResult {
  if (fit.state === "failed") return { ...fit, name };
  if (fit.state === "outOfReach") return outOfReach(name, fit, measured);
  const { liftFactor, dragFactor, answer, chiSquared, degreesOfFreedom, converged, steps } = fit;
  return {
    state: "fitted",
    name,
    liftFactor: doubtOf(ofOneFit(liftFactor, { fit, all }, [1, 0])),
    dragFactor: doubtOf(ofOneFit(dragFactor, { fit, all }, [0, 1])),
    sectionDrag: doubtOf(sectionDragOf(fit, all, response)),
    roughness: roughnessOfDrag(answer.sectionDrag, liftFactor, response),
    chiSquared,
    degreesOfFreedom,
    converged,
    steps,
  };
}

function outOfReach(
  name: string,
  { bound, liftFactor, dragFactor, chiSquared, answer }: SurfaceFit & { state: "outOfReach" },
  measured: readonly number[],
): FinishResult {
  const { thrustCoefficient, torqueCoefficient } = answer.points[0]!;
  const nearest = { thrustCoefficient, torqueCoefficient };
  const found = { thrustCoefficient: measured[0]!, torqueCoefficient: measured[1]! };
  const sentence = outOfReachSentence(name, bound, { measured: found, nearest });
  return { state: "outOfReach", name, bound, liftFactor, dragFactor, ...nearest, chiSquared, sentence };
}

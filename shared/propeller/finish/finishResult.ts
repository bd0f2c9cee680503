import type { FinishResult } from "../../model/finishFit.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { type Derived, dragFactorOf, liftFactorOf, sectionDragOf } from "./derived.ts";
import { outOfReachSentence } from "./finishInWords.ts";
import type { FinishSide } from "./finishSide.ts";
import type { FittedSurface, SurfaceFit } from "./fitSurface.ts";
import { readRoughness } from "./roughnessOfDrag.ts";

/** Doubt of what follows from the fits, and all fits it is counted over. */
export interface Doubts {
  readonly doubtOf: (derived: Derived) => Uncertain;
  readonly all: readonly FittedSurface[];
}

/** What is told of one finish. */
export function finishResult({ name, fit, response, measured }: FinishSide, { doubtOf, all }: Doubts): FinishResult {
  if (fit.state === "failed") return { ...fit, name };
  if (fit.state === "outOfReach") return outOfReach(name, fit, measured);
  const { chiSquared, degreesOfFreedom, converged, steps } = fit;
  const drag = sectionDragOf(fit, all, response);
  const { roughness, interval95 } = readRoughness({ fit, all, response, drag, doubtOf });
  return {
    state: "fitted",
    name,
    liftFactor: doubtOf(liftFactorOf(fit, all)),
    dragFactor: doubtOf(dragFactorOf(fit, all)),
    sectionDrag: doubtOf(drag),
    roughness,
    roughnessInterval95: interval95,
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

import type { FinishPicture } from "../../model/finishFit.ts";
import { laminarFloor } from "../section/laminarFloor.ts";
import { sectionDrag } from "../section/sectionDrag.ts";
import type { BladeAnswer, BladeResponse, MidSection } from "./bladeResponse.ts";
import { ROUGHNESS_RANGE } from "./roughnessOfDrag.ts";

/** Reynolds numbers that a small printed blade can have. */
const REYNOLDS_RANGE = [1e4, 1e6] as const;
const DRAG_FACTORS = [0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 8] as const;
const POINTS = 25;

const spacedByFactors = ([low, high]: readonly [number, number]) =>
  Array.from({ length: POINTS }, (_, i) => low * (high / low) ** (i / (POINTS - 1)));

export interface BladeToDraw {
  readonly response: BladeResponse;
  readonly smooth: BladeAnswer;
  readonly section: MidSection;
  /** The finishes that could be fitted, in turn; the last is the one that smoothing would go on from. */
  readonly fitted: readonly FittedLift[];
}

export interface FittedLift {
  readonly name: string;
  readonly liftFactor: number;
  readonly response: BladeResponse;
}

/** Lines of drag against roughness and Reynolds number at the working lift, and what drag costs in thrust. */
export function finishPicture({ response, smooth, section, fitted }: BladeToDraw): FinishPicture {
  const { reynolds } = smooth;
  const liftFactor = fitted.at(-1)?.liftFactor ?? 1;
  const clean = { name: null, liftFactor: 1, response };
  const leastAt = (Re: number) => sectionDrag({ ...section, reynolds: Re, roughness: 0 });
  const dragOfLift = smooth.sectionDrag - leastAt(reynolds);
  return {
    reynolds,
    smoothDrag: smooth.sectionDrag,
    laminarFloor: laminarFloor(reynolds),
    dragAgainstRoughness: (fitted.length > 0 ? fitted : [clean]).map((one) => ({
      finish: one.name,
      liftFactor: one.liftFactor,
      points: roughnessCurve(one),
    })),
    smoothDragAgainstReynolds: spacedByFactors(REYNOLDS_RANGE).map((at) => ({ at, drag: leastAt(at) + dragOfLift })),
    laminarFloorAgainstReynolds: spacedByFactors(REYNOLDS_RANGE).map((at) => ({ at, drag: laminarFloor(at) })),
    thrustAgainstDrag: DRAG_FACTORS.flatMap((dragFactor) => {
      const answer = response({ roughness: 0, liftFactor, dragFactor });
      if (answer === null) return [];
      return [{ dragFactor, sectionDrag: answer.sectionDrag, thrustRatio: atEqualPower(answer, smooth) }];
    }),
  };
}

/** Drag of the section over the roughness, a smooth one first: what `roughnessOfDrag` looks along. */
function roughnessCurve({ response, liftFactor }: Omit<FittedLift, "name">) {
  return [0, ...spacedByFactors(ROUGHNESS_RANGE)].flatMap((at) => {
    const answer = response({ roughness: at, liftFactor, dragFactor: 1 });
    return answer === null ? [] : [{ at, drag: answer.sectionDrag }];
  });
}

/** Thrust over that of the smooth blade from the same shaft power at bollard. */
function atEqualPower({ points: [rough] }: BladeAnswer, { points: [smooth] }: BladeAnswer): number {
  const torqueRatio = smooth!.torqueCoefficient / rough!.torqueCoefficient;
  return (rough!.thrustCoefficient / smooth!.thrustCoefficient) * torqueRatio ** (2 / 3);
}

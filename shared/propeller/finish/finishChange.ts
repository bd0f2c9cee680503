import type { FinishChange } from "../../model/finishFit.ts";
import { differenceOf, liftFactorOf, ratioOf, sectionDragOf } from "./derived.ts";
import { type ChangeToDraw, drawnChange } from "./drawnChange.ts";
import { changeSentence } from "./finishInWords.ts";
import type { Doubts } from "./finishResult.ts";
import type { FittedSide } from "./finishSide.ts";

/** What the second finish changed, with the doubts that both share taken off. */
export function finishChange(
  sides: readonly [FittedSide, FittedSide],
  { doubtOf, all }: Doubts,
  drawing: Omit<ChangeToDraw, "sides">,
): FinishChange {
  const [before, after] = sides;
  const [liftBefore, liftAfter] = [before, after].map(({ fit }) => liftFactorOf(fit, all));
  const [dragBefore, dragAfter] = [before, after].map(({ fit, response }) => sectionDragOf(fit, all, response));
  const liftRatio = doubtOf(ratioOf(liftAfter!, liftBefore!));
  const dragRatio = doubtOf(ratioOf(dragAfter!, dragBefore!));
  const dragChange = doubtOf(differenceOf(dragAfter!, dragBefore!));
  const named = [
    { name: before.name, sectionDrag: doubtOf(dragBefore!) },
    { name: after.name, sectionDrag: doubtOf(dragAfter!) },
  ] as const;
  return {
    liftRatio,
    dragRatio,
    dragChange,
    monteCarlo: drawing.draws === 0 ? null : drawnChange({ sides, ...drawing }),
    sentence: changeSentence(named, { liftRatio, dragChange }),
  };
}

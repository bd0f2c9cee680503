import type { BladeResponse } from "./bladeResponse.ts";
import type { FittedSurface } from "./fitSurface.ts";

/** Something that follows from the fitted unknowns: its gradient over k_L and k_D of each finish in turn. */
export interface Derived {
  readonly value: number;
  readonly gradient: readonly number[];
}

/** What depends on one fit among `all`, by its lift factor and by its drag factor. */
export function ofOneFit(
  value: number,
  { fit, all }: { readonly fit: FittedSurface; readonly all: readonly FittedSurface[] },
  [byLift, byDrag]: readonly [number, number],
): Derived {
  return { value, gradient: all.flatMap((one) => (one === fit ? [byLift, byDrag] : [0, 0])) };
}

/** Step of the differences that tell how the section drag follows from the unknowns. */
const STEP = 1e-4;

/** Section drag at 0.7 of the radius of a fit. */
export function sectionDragOf(fit: FittedSurface, all: readonly FittedSurface[], response: BladeResponse): Derived {
  const { liftFactor, dragFactor, answer } = fit;
  const moved = (lift: number, drag: number) =>
    response({ roughness: 0, liftFactor: liftFactor + lift, dragFactor: dragFactor + drag })?.sectionDrag ??
    answer.sectionDrag;
  const byLift = (moved(STEP, 0) - moved(-STEP, 0)) / (2 * STEP);
  const byDrag = (moved(0, STEP) - moved(0, -STEP)) / (2 * STEP);
  return ofOneFit(answer.sectionDrag, { fit, all }, [byLift, byDrag]);
}

export function ratioOf(above: Derived, below: Derived): Derived {
  const value = above.value / below.value;
  return { value, gradient: above.gradient.map((one, i) => (one - value * below.gradient[i]!) / below.value) };
}

export function differenceOf(from: Derived, taken: Derived): Derived {
  return { value: from.value - taken.value, gradient: from.gradient.map((one, i) => one - taken.gradient[i]!) };
}

import type { BladeAnswer, BladeResponse } from "./bladeResponse.ts";
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

/** Step of the differences that tell how an answer follows from the unknowns. */
const STEP = 1e-4;

/** Something that blade elements give for the fitted surface. */
export function fromAnswer(
  fit: FittedSurface,
  all: readonly FittedSurface[],
  { response, of }: { readonly response: BladeResponse; readonly of: (answer: BladeAnswer) => number },
): Derived {
  const { liftFactor, dragFactor, answer } = fit;
  const moved = (lift: number, drag: number) =>
    of(response({ roughness: 0, liftFactor: liftFactor + lift, dragFactor: dragFactor + drag }) ?? answer);
  const byLift = (moved(STEP, 0) - moved(-STEP, 0)) / (2 * STEP);
  const byDrag = (moved(0, STEP) - moved(0, -STEP)) / (2 * STEP);
  return ofOneFit(of(answer), { fit, all }, [byLift, byDrag]);
}

/** Section drag at 0.7 of the radius of a fit. */
export function sectionDragOf(fit: FittedSurface, all: readonly FittedSurface[], response: BladeResponse): Derived {
  return fromAnswer(fit, all, { response, of: ({ sectionDrag }) => sectionDrag });
}

export function ratioOf(above: Derived, below: Derived): Derived {
  const value = above.value / below.value;
  return { value, gradient: above.gradient.map((one, i) => (one - value * below.gradient[i]!) / below.value) };
}

export function differenceOf(from: Derived, taken: Derived): Derived {
  return { value: from.value - taken.value, gradient: from.gradient.map((one, i) => one - taken.gradient[i]!) };
}

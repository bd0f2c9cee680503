import { laminarFloor } from "../section/laminarFloor.ts";
import type { BladeAnswer, BladeResponse } from "./bladeResponse.ts";
import type { FittedSurface } from "./fitSurface.ts";

/** Something that follows from the fitted unknowns: its gradient over k_L and k_D of each finish in turn. */
export interface Derived {
  readonly value: number;
  readonly gradient: readonly number[];
  /** Least that it can physically be, and what would have been found without that bound; absent: anything can be. */
  readonly bound?: { readonly least: number; readonly unheld: number };
}

/** What can not be negative. */
export const notNegative = (derived: Derived): Derived => ({
  ...derived,
  bound: { least: 0, unheld: derived.value },
});

/** Lift factor of a fit. */
export function liftFactorOf(fit: FittedSurface, all: readonly FittedSurface[]): Derived {
  return notNegative(ofOneFit(fit.liftFactor, { fit, all }, [1, 0]));
}

/** Drag factor of a fit: nothing shaped like a blade has less drag than two laminar sides. */
export function dragFactorOf(fit: FittedSurface, all: readonly FittedSurface[]): Derived {
  const bound = { least: fit.leastDragFactor, unheld: fit.unheld.dragFactor };
  return { ...ofOneFit(fit.dragFactor, { fit, all }, [0, 1]), bound };
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
export const STEP = 1e-4;

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

/** Section drag at 0.7 of the radius of a fit, at least that of two laminar sides. */
export function sectionDragOf(fit: FittedSurface, all: readonly FittedSurface[], response: BladeResponse): Derived {
  const drag = fromAnswer(fit, all, { response, of: ({ sectionDrag }) => sectionDrag });
  const from = 2 * all.indexOf(fit);
  const lift = drag.gradient[from]! * (fit.unheld.liftFactor - fit.liftFactor);
  const unheld = drag.value + lift + drag.gradient[from + 1]! * (fit.unheld.dragFactor - fit.dragFactor);
  return { ...drag, bound: { least: Math.min(laminarFloor(fit.answer.reynolds), drag.value), unheld } };
}

/** Of two that can not be negative. */
export function ratioOf(above: Derived, below: Derived): Derived {
  const value = above.value / below.value;
  const gradient = above.gradient.map((one, i) => (one - value * below.gradient[i]!) / below.value);
  return notNegative({ value, gradient });
}

export function differenceOf(from: Derived, taken: Derived): Derived {
  return { value: from.value - taken.value, gradient: from.gradient.map((one, i) => one - taken.gradient[i]!) };
}

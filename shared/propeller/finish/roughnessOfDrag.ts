import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import type { BladeResponse } from "./bladeResponse.ts";
import { type Derived, differenceOf, ofOneFit, STEP } from "./derived.ts";
import type { FittedSurface } from "./fitSurface.ts";

/** Roughness heights that a small printed blade can have, m. */
export const ROUGHNESS_RANGE = [1e-6, 1e-3] as const;

export interface ReadRoughness {
  /** Null where a smooth section has as much drag, or the roughest less. */ readonly roughness: number | null;
  /** The first end 0: a smooth section is inside. The second null: beyond the roughest that is computed. */
  readonly interval95: readonly [number, number | null] | null;
}

interface DragToRead {
  readonly fit: FittedSurface;
  readonly all: readonly FittedSurface[];
  readonly response: BladeResponse;
  /** Section drag of the fit with its gradient. */ readonly drag: Derived;
  readonly doubtOf: (derived: Derived) => Uncertain;
}

/**
 * Roughness height with which the section model has the drag of a fit at its lift factor, and its 95 % interval.
 *
 *   C(k) - C_D = 0,   kept where |C(k) - C_D| lies within the doubt of the difference; C(k) grows with k, so the ends of
 *   the interval of C_D, at least the drag C(0) of a smooth section, are read off the same curve
 *
 * The lift factor is in both drags: its doubt counts in their difference, taken where the two meet.
 *
 * Source   inversion of a test, e.g. Casella & Berger, Statistical Inference, 2nd ed. (2002), 9.2.1; from memory.
 * Range    roughness to 1 mm.
 * Error    not that of the section model's step from roughness to drag, which has none stated.
 */
export function readRoughness({ fit, all, response, drag, doubtOf }: DragToRead): ReadRoughness {
  const curve = roughSection(fit.liftFactor, response);
  const smooth = curve(0);
  if (smooth === null) return { roughness: null, interval95: null };
  const roughness = roughnessOfDrag(drag.value, curve);
  const model = ofSection(roughness ?? 0, { fit, all, response });
  const unheld = drag.bound?.unheld ?? drag.value;
  const apart = { ...differenceOf(drag, model), bound: { least: smooth - model.value, unheld: unheld - model.value } };
  const [low, high] = doubtOf(apart).interval95.map((end) => end + model.value) as [number, number];
  const [least, greatest] = [low, high].map((end) => roughnessOfDrag(end, curve)) as [number | null, number | null];
  const roughest = curve(ROUGHNESS_RANGE[1]);
  if (roughest === null || low >= roughest) return { roughness, interval95: null };
  return { roughness, interval95: [least ?? 0, greatest ?? (high >= roughest ? null : ROUGHNESS_RANGE[0])] };
}

/** Section drag over roughness at a lift factor; null where the blade elements have no solution. */
type Curve = (roughness: number) => number | null;

const roughSection =
  (liftFactor: number, response: BladeResponse): Curve =>
  (roughness) =>
    response({ roughness, liftFactor, dragFactor: 1 })?.sectionDrag ?? null;

/** Drag of the section model at a roughness, as it follows from the lift factor of the fit. */
function ofSection(roughness: number, { fit, all, response }: Pick<DragToRead, "fit" | "all" | "response">): Derived {
  // The model's own drag factor is 1 whatever that of the fit is, so only the lift moves it.
  const at = (liftFactor: number) => roughSection(liftFactor, response)(roughness);
  const value = at(fit.liftFactor) ?? fit.answer.sectionDrag;
  const byLift = ((at(fit.liftFactor + STEP) ?? value) - (at(fit.liftFactor - STEP) ?? value)) / (2 * STEP);
  return ofOneFit(value, { fit, all }, [byLift, 0]);
}

/** Where the curve meets `drag`; null where a smooth section has more or the roughest less. */
function roughnessOfDrag(drag: number, curve: Curve): number | null {
  const more = (exponent: number) => (curve(10 ** exponent) ?? Number.NaN) - drag;
  const [low, high] = ROUGHNESS_RANGE.map(Math.log10) as [number, number];
  if (!(more(low) < 0 && more(high) > 0)) return null;
  const { root, converged } = bracketedRoot(more, low, high, { relativeTolerance: 1e-6 });
  return converged ? 10 ** root : null;
}

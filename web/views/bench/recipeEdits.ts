import type { Propeller } from "../../../shared/model/parts.ts";
import type { ChannelCorrection, ColumnRole, ColumnUse, Recipe } from "../../../shared/model/recipe.ts";
import type { Plateau } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";

interface Span {
  readonly start: number;
  readonly end: number;
}

const NO_CORRECTION: ChannelCorrection = { factor: 1, offset: 0, relativeUncertainty: 0 };

export function withColumns(recipe: Recipe, columns: readonly ColumnUse[]): Recipe {
  return { ...recipe, columns: [...columns] };
}

/** A plateau set aside from the fit, with its reason; it stays on the picture. */
export function leavingOut(recipe: Recipe, span: Span, reason: string): Recipe {
  const { start, end } = span;
  return { ...recipe, leftOut: [...puttingBack(recipe, span).leftOut, { start, end, reason: reason.trim() }] };
}

/** The plateau counts again: every span that covers its middle is dropped. */
export function puttingBack(recipe: Recipe, { start, end }: Span): Recipe {
  const middle = (start + end) / 2;
  return { ...recipe, leftOut: recipe.leftOut.filter((one) => middle < one.start || middle > one.end) };
}

/**
 * One plateau moved to `span` by hand. From then on all plateaus of the run are the person's: those that were found
 * automatically become fixed spans, so that moving one never moves another. A plateau left out stays left out.
 */
export function withPlateauMoved(recipe: Recipe, plateaus: readonly Plateau[], index: number, span: Span): Recipe {
  const spans = spansOf(plateaus);
  const former = spans[index];
  if (former === undefined || !(span.end > span.start)) return recipe;
  const reason = plateaus[index]?.leftOutBecause ?? null;
  const moved = { start: span.start, end: span.end };
  const ordered = spans.map((one, i) => (i === index ? moved : one)).sort((a, b) => a.start - b.start);
  const next: Recipe = { ...recipe, plateaus: { mode: "spans", spans: ordered } };
  const wasByHand = recipe.leftOut.some((one) => covers(one, former));
  return wasByHand && reason !== null ? leavingOut(puttingBack(next, former), moved, reason) : next;
}

/** A stretch added to the plateaus by hand. */
export function withPlateauAdded(recipe: Recipe, plateaus: readonly Plateau[], span: Span): Recipe {
  const spans = [...spansOf(plateaus), { start: span.start, end: span.end }].sort((a, b) => a.start - b.start);
  return { ...recipe, plateaus: { mode: "spans", spans } };
}

export function withTareMoved(recipe: Recipe, windows: readonly Span[], index: number, span: Span): Recipe {
  const moved = windows.map((one, i) => (i === index ? span : one)).map(({ start, end }) => ({ start, end }));
  return moved.length === 0 ? recipe : { ...recipe, tare: { mode: "windows", windows: moved } };
}

/** Plateaus, tares and left-out stretches as the program finds them. */
export function automatic(recipe: Recipe): Recipe {
  return { ...recipe, plateaus: { mode: "automatic" }, tare: { mode: "zeroThrottle" }, leftOut: [] };
}

export function isAutomatic(recipe: Recipe): boolean {
  return recipe.plateaus.mode === "automatic" && recipe.tare.mode === "zeroThrottle" && recipe.leftOut.length === 0;
}

export function correctionOf(recipe: Recipe, role: ColumnRole): ChannelCorrection {
  return recipe.corrections[role] ?? NO_CORRECTION;
}

export function withCorrection(recipe: Recipe, role: ColumnRole, change: Partial<ChannelCorrection>): Recipe {
  return {
    ...recipe,
    corrections: { ...recipe.corrections, [role]: { ...correctionOf(recipe, role), ...change } },
  };
}

/** The recipe with an optional entry set, or taken away when `value` is undefined. */
export function withEntry<K extends "polePairs" | "motorId" | "controllerId">(
  recipe: Recipe,
  key: K,
  value: Recipe[K] | undefined,
): Recipe {
  const { [key]: _former, ...others } = recipe;
  return (value === undefined ? others : { ...others, [key]: value }) as Recipe;
}

/**
 * The run with another propeller on the stand, or with none. A run that has no variant yet takes the finish of the
 * propeller, else its name, as its variant, because that is what is compared most.
 */
export function withPropeller(run: Run, propeller: StoredDocument<Propeller> | undefined): Run {
  const { propellerId: _former, ...others } = run;
  if (propeller === undefined) return others;
  const { finish = "", name } = propeller.document;
  const variant = run.variant || (finish || name).slice(0, 60);
  return { ...others, propellerId: propeller.id, variant };
}

/** Spans of the plateaus that have times; a table without time has none. */
function spansOf(plateaus: readonly Plateau[]): Span[] {
  return plateaus.flatMap(({ start, end }) => (start === null || end === null ? [] : [{ start, end }]));
}

function covers(outer: Span, inner: Span): boolean {
  const middle = (inner.start + inner.end) / 2;
  return middle >= outer.start && middle <= outer.end;
}

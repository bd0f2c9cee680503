import type { FluidState } from "../../../shared/model/fluid.ts";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { ChannelCorrection, ColumnRole, ColumnUse, Recipe } from "../../../shared/model/recipe.ts";
import type { Plateau } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";

interface Span {
  readonly start: number;
  readonly end: number;
}

type HandSpan = Extract<Recipe["plateaus"], { mode: "spans" }>["spans"][number];

/** What it takes to say which plateau is meant. */
export type PlateauPlace = Pick<Plateau, "span" | "firstLine" | "lastLine" | "foundBy">;

const NO_CORRECTION: ChannelCorrection = { factor: 1, offset: 0, relativeUncertainty: 0 };

export function withColumns(recipe: Recipe, columns: readonly ColumnUse[]): Recipe {
  return { ...recipe, columns: [...columns] };
}

/** A plateau set aside from the fit, with its reason; it stays on the picture. A table without a clock is named by line. */
export function leavingOut(recipe: Recipe, plateau: PlateauPlace, reason: string): Recipe {
  const others = puttingBack(recipe, plateau).leftOut;
  const { start, end } = plateau.span;
  const place = plateau.foundBy === "row" ? { line: plateau.firstLine } : { start, end };
  return { ...recipe, leftOut: [...others, { ...place, reason: reason.trim() }] };
}

/** The plateau counts again: every entry that names one of its lines or covers its middle is dropped. */
export function puttingBack(recipe: Recipe, plateau: PlateauPlace): Recipe {
  return { ...recipe, leftOut: recipe.leftOut.filter((entry) => !names(entry, plateau)) };
}

/**
 * One plateau moved to `span` by hand; it stops at its neighbours, so that no reading counts twice. From then on all
 * plateaus of the run are the person's: those that were found automatically become fixed spans, which no later search
 * and no other change of the recipe moves. A plateau left out stays left out.
 */
export function withPlateauMoved(recipe: Recipe, plateaus: readonly Plateau[], index: number, span: Span): Recipe {
  const former = plateaus[index];
  if (former === undefined || !(span.end > span.start)) return recipe;
  const spans = spansNow(recipe, plateaus);
  const at = placeOf(former.span, spans);
  if (at < 0) return recipe;
  const { start, end } = betweenNeighbours(span, spans[at]!, spans);
  if (!(end > start)) return recipe;
  const next = withSpans(recipe, spans.with(at, { start, end, origin: "moved" }));
  const byHand = recipe.leftOut.find((entry) => names(entry, former));
  if (byHand === undefined) return next;
  return leavingOut(puttingBack(next, former), { ...former, span: { start, end } }, byHand.reason);
}

/** A plateau that a person set, moved in a run that can not be reduced, so that nothing is known of its neighbours. */
export function withHandPlateauMoved(recipe: Recipe, index: number, { start, end }: Span): Recipe {
  const { plateaus } = recipe;
  if (plateaus.mode !== "spans" || !plateaus.spans[index] || !(end > start)) return recipe;
  return withSpans(recipe, plateaus.spans.with(index, { start, end, origin: "moved" }));
}

/** One plateau cut in two at `at`, a reading at that very time in the second; both halves stay left out where the whole was. */
export function withPlateauSplit(recipe: Recipe, plateaus: readonly Plateau[], index: number, at: number): Recipe {
  const shown = plateaus[index]?.span;
  const spans = spansNow(recipe, plateaus);
  const place = shown === undefined ? -1 : placeOf(shown, spans);
  const whole = spans[place];
  if (whole === undefined || !(at > whole.start && at < whole.end)) return recipe;
  return withSpans(
    recipe,
    spans.toSpliced(
      place,
      1,
      { start: whole.start, end: at, origin: "split" },
      { start: at, end: whole.end, origin: "split" },
    ),
  );
}

/** A plateau and the next one as one; it counts unless both were left out. */
export function withPlateausMerged(recipe: Recipe, plateaus: readonly Plateau[], index: number): Recipe {
  const [first, second] = [plateaus[index], plateaus[index + 1]];
  if (first === undefined || second === undefined) return recipe;
  const spans = spansNow(recipe, plateaus);
  const at = placeOf(first.span, spans);
  if (at < 0 || placeOf(second.span, spans) !== at + 1) return recipe;
  const span = { start: spans[at]!.start, end: Math.max(spans[at]!.end, spans[at + 1]!.end) };
  const next = withSpans(recipe, spans.toSpliced(at, 2, { ...span, origin: "merged" }));
  const reasons = [first, second].map((one) => recipe.leftOut.find((entry) => names(entry, one))?.reason);
  const counted = puttingBack(puttingBack(next, first), second);
  return reasons.every((reason) => reason !== undefined)
    ? leavingOut(counted, { ...first, span }, reasons[0]!)
    : puttingBack(counted, { ...first, span });
}

/** A stretch added to the plateaus by hand. */
export function withPlateauAdded(recipe: Recipe, plateaus: readonly Plateau[], { start, end }: Span): Recipe {
  return withSpans(recipe, [...spansNow(recipe, plateaus), { start, end, origin: "added" }]);
}

/** The whole run as a slow ramp, by regression instead of plateaus. */
export function asSweep(recipe: Recipe): Recipe {
  return { ...recipe, plateaus: { mode: "sweep" } };
}

/** The tare windows that a person set. */
export function tareWindowsOf({ tare }: Recipe): readonly Span[] {
  return tare.mode === "windows" ? tare.windows : [];
}

/** `shown`: the windows that were on the screen; the one meant may have moved or gone meanwhile. */
export function withTareMoved(recipe: Recipe, shown: readonly Span[], index: number, span: Span): Recipe {
  return withTareChanged(recipe, shown, index, [span]);
}

export function withTareAdded(recipe: Recipe, shown: readonly Span[], span: Span): Recipe {
  return withTareWindows(recipe, [...tareWindowsNow(recipe, shown), span]);
}

/** One tare window less; the last one stays, because no tare at all is another thing. */
export function withTareRemoved(recipe: Recipe, shown: readonly Span[], index: number): Recipe {
  return withTareChanged(recipe, shown, index, []);
}

function withTareChanged(recipe: Recipe, shown: readonly Span[], index: number, to: readonly Span[]): Recipe {
  const windows = tareWindowsNow(recipe, shown);
  const at = shown[index] === undefined ? -1 : placeOf(shown[index], windows);
  return at < 0 ? recipe : withTareWindows(recipe, windows.toSpliced(at, 1, ...to));
}

/** Those that a person set, which may be newer than those on the screen. */
function tareWindowsNow(recipe: Recipe, shown: readonly Span[]): readonly Span[] {
  return recipe.tare.mode === "windows" ? recipe.tare.windows : shown;
}

function withTareWindows(recipe: Recipe, windows: readonly Span[]): Recipe {
  if (windows.length === 0) return recipe;
  const ordered = windows.map(({ start, end }) => ({ start, end })).sort((a, b) => a.start - b.start);
  return { ...recipe, tare: { mode: "windows", windows: ordered, ...shapeOf(recipe) } };
}

/** How the zero goes between the windows; without a tare there is nothing to shape. */
export function withTareShape(recipe: Recipe, shape: "piecewise" | "line"): Recipe {
  const { tare } = recipe;
  return tare.mode === "none" ? recipe : { ...recipe, tare: { ...tare, shape } };
}

function shapeOf({ tare }: Recipe): { shape?: "piecewise" | "line" } {
  return tare.mode === "none" || tare.shape === undefined ? {} : { shape: tare.shape };
}

/** Plateaus, tares and left-out stretches as the program finds them. */
export function automatic(recipe: Recipe): Recipe {
  return { ...recipe, plateaus: { mode: "automatic" }, tare: { mode: "zeroThrottle" }, leftOut: [] };
}

export function isAutomatic(recipe: Recipe): boolean {
  return recipe.plateaus.mode === "automatic" && recipe.tare.mode === "zeroThrottle" && recipe.leftOut.length === 0;
}

/** The fluid as a person states it: no longer one that was taken unasked. */
export function withFluid({ fluidAssumed: _, ...recipe }: Recipe, fluid: FluidState): Recipe {
  return { ...recipe, fluid };
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
  const { propellerId: former, takenPartIds, ...rest } = run;
  // Whoever chooses a propeller, be it the same, has stated it.
  const stillTaken = takenPartIds?.filter((id) => id !== former) ?? [];
  const others = stillTaken.length === 0 ? rest : { ...rest, takenPartIds: stillTaken };
  if (propeller === undefined) return others;
  const { finish = "", name } = propeller.document;
  const variant = run.variant || (finish || name).slice(0, 60);
  return { ...others, propellerId: propeller.id, variant };
}

function withSpans(recipe: Recipe, spans: readonly HandSpan[]): Recipe {
  return { ...recipe, plateaus: { mode: "spans", spans: [...spans].sort((a, b) => a.start - b.start) } };
}

/** The spans that a person set, which may be newer than the plateaus on the screen; else these, each with what found it. */
function spansNow({ plateaus: stated }: Recipe, shown: readonly Plateau[]): readonly HandSpan[] {
  return stated.mode === "spans" ? stated.spans : spansOf(shown);
}

/** Where a stretch that was on the screen stands among those of now, by its middle; -1 where it is gone. */
function placeOf({ start, end }: Span, now: readonly Span[]): number {
  const same = now.findIndex((one) => one.start === start && one.end === end);
  const middle = (start + end) / 2;
  return same >= 0 ? same : now.findIndex((one) => one.start <= middle && middle <= one.end);
}

/** The plateaus as they are, each with what found it. */
function spansOf(plateaus: readonly Plateau[]): HandSpan[] {
  return plateaus.map(({ span: { start, end }, foundBy }) =>
    foundBy === "hand" || foundBy === "row" || foundBy === "binned" ? { start, end } : { start, end, origin: foundBy },
  );
}

/** `span` without what belongs to the spans on either side of `former`. */
function betweenNeighbours({ start, end }: Span, former: Span, spans: readonly Span[]): Span {
  const before = spans.map((one) => one.end).filter((edge) => edge <= former.start);
  const after = spans.map((one) => one.start).filter((edge) => edge >= former.end);
  return { start: Math.max(start, ...before), end: Math.min(end, ...after) };
}

function names(entry: Recipe["leftOut"][number], { span, firstLine, lastLine }: PlateauPlace): boolean {
  if ("line" in entry) return entry.line >= firstLine && entry.line <= lastLine;
  const middle = (span.start + span.end) / 2;
  return middle >= entry.start && middle <= entry.end;
}

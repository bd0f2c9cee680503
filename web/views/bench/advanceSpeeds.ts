import type { AdvanceSpeeds, Recipe } from "../../../shared/model/recipe.ts";
import type { Plateau } from "../../../shared/model/reduction.ts";
import { formatNumber } from "../../../shared/quantity/format.ts";
import { placeInWords } from "./plateausModel.ts";

/** A stretch of the log at one speed through the water, m/s; outside all of them the propeller is at rest. */
export type SpeedSpan = Extract<AdvanceSpeeds, { mode: "spans" }>["spans"][number];

export const hasSpeedColumn = ({ columns }: Recipe): boolean => columns.some(({ role }) => role === "advanceSpeed");

export function speedSpans({ advanceSpeeds }: Recipe): readonly SpeedSpan[] {
  return advanceSpeeds?.mode === "spans" ? advanceSpeeds.spans : [];
}

/** The recipe with one advance speed for the run, or with none. */
export function withAdvanceSpeed(recipe: Recipe, speed: number | null): Recipe {
  if (speed === null || speed === 0) return withoutSpeeds(recipe);
  return { ...recipe, advanceSpeeds: { mode: "constant", speed, relativeUncertainty: speedUncertainty(recipe) } };
}

/** The recipe with advance speeds by spans of time, in their order; without any span the run is at rest. */
export function withSpeedSpans(recipe: Recipe, spans: readonly SpeedSpan[]): Recipe {
  if (spans.length === 0) return withoutSpeeds(recipe);
  const ordered = [...spans].sort((a, b) => a.start - b.start);
  return {
    ...recipe,
    advanceSpeeds: { mode: "spans", spans: ordered, relativeUncertainty: speedUncertainty(recipe) },
  };
}

function withoutSpeeds({ advanceSpeeds: _former, ...others }: Recipe): Recipe {
  return others;
}

/** One span a plateau, all at `speed`: what is left to do is to type the speeds. */
export function spansOfPlateaus(plateaus: readonly Plateau[], speed: number): SpeedSpan[] {
  return plateaus.map(({ span: { start, end } }) => ({ start, end, speed }));
}

/** Why `span` can not stand beside the others: a plateau would have two speeds; empty when it can. */
export function speedSpanGap(others: readonly SpeedSpan[], span: SpeedSpan, hasClock: boolean): string {
  if (!(span.end > span.start)) return "The end must come after the start.";
  const other = others.find(({ start, end }) => span.start < end && span.end > start);
  if (other === undefined) return "";
  const at = `${formatNumber(other.speed, 3)}\u202fm/s`;
  return `It overlaps ${placeInWords(other, hasClock)}, which is at ${at}: a plateau has one speed.`;
}

/** Where the relative uncertainty of the advance speed is kept: with the column, or with the stated speeds. */
export function withSpeedUncertainty(recipe: Recipe, relativeUncertainty: number): Recipe {
  if (recipe.advanceSpeeds) return { ...recipe, advanceSpeeds: { ...recipe.advanceSpeeds, relativeUncertainty } };
  const former = recipe.corrections.advanceSpeed ?? { factor: 1, offset: 0 };
  return { ...recipe, corrections: { ...recipe.corrections, advanceSpeed: { ...former, relativeUncertainty } } };
}

export const speedUncertainty = (recipe: Recipe): number =>
  (recipe.advanceSpeeds ?? recipe.corrections.advanceSpeed)?.relativeUncertainty ?? 0;

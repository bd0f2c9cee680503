import type { Prediction, PredictionSource } from "../../../../shared/model/prediction.ts";
import type { SeriesPropeller, SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import { areaRatioOf } from "../../../../shared/propeller/series/areaRatioOf.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";
import { FAMILY_NAMES } from "../series/familyNames.ts";
import { SMOOTH, type SurfaceChoice, surfaceWords } from "../surface/surfaceChoice.ts";

/** What stands in the form of a prediction; null for an empty field. */
export interface PredictionDraft {
  readonly name: string;
  readonly kind: PredictionSource["kind"];
  readonly series: SeriesWithoutPitch;
  /** Whether all fields of the series can be read; while not, `series` is what they held last. */
  readonly isSeriesWhole: boolean;
  readonly pitchRatio: number | null;
  readonly diameter: number | null;
  readonly staticMerit: number | null;
  readonly propellerId: string;
  readonly surface: SurfaceChoice;
}

/** A propeller the draft may start from. */
export interface StartingPropeller {
  readonly id: string;
  readonly diameter: number;
  readonly pitchRatio?: number | undefined;
  readonly bladeCount?: number | undefined;
  readonly chordAt07?: number | undefined;
  readonly nozzle: boolean;
}

export const KIND_NAMES: Readonly<Record<PredictionSource["kind"], string>> = {
  series: "Published series",
  blades: "Blade elements of a propeller",
  staticMerit: "Stated static merit",
};

/** The good series propeller that is most like `propeller`: equal pitch ratio, blades and diameter. */
export function draftLike(propeller: StartingPropeller | null): PredictionDraft {
  const blades = within(propeller?.bladeCount ?? 3, 2, 7);
  return {
    name: "",
    kind: "series",
    series: propeller?.nozzle
      ? { family: "ka-4-70-19a" }
      : { family: "wageningen-b", blades, areaRatio: testedAreaRatio(propeller, blades) },
    isSeriesWhole: true,
    pitchRatio: propeller?.pitchRatio ?? 1,
    diameter: propeller?.diameter ?? null,
    staticMerit: 0.5,
    propellerId: propeller?.id ?? "",
    surface: SMOOTH,
  };
}

/** Area ratio of the series screw most like the propeller, inside what was tested. */
function testedAreaRatio(propeller: StartingPropeller | null, blades: number): number {
  const ratio = propeller === null ? null : areaRatioOf({ ...propeller, bladeCount: blades });
  if (ratio === null) return blades === 2 ? 0.3 : 0.5;
  return within(Math.round(ratio * 100) / 100, 0.3, 1.05);
}

/** The draft of a prediction that is there, for changing it. */
export function draftOf({ name, source }: Prediction, start: PredictionDraft): PredictionDraft {
  const { kind } = source;
  if (kind === "staticMerit")
    return { ...start, name, kind, diameter: source.diameter, staticMerit: source.staticMerit };
  if (kind === "blades") {
    const { roughness, liftFactor } = source.surface;
    return { ...start, name, kind, propellerId: source.propellerId, surface: { state: null, roughness, liftFactor } };
  }
  const { pitchRatio, ...series } = source.series;
  return { ...start, name, kind, diameter: source.diameter, series, pitchRatio };
}

/** The prediction of a complete draft; in words what is missing. `taken`: names of the other predictions. */
export function predictionOf(
  draft: PredictionDraft,
  taken: readonly string[],
): { readonly prediction: Prediction } | { readonly missing: string } {
  const source = sourceOf(draft);
  if (typeof source === "string") return { missing: source };
  const name = draft.name.trim() || suggestedName(draft);
  if (taken.includes(name)) return { missing: `There is a prediction named "${name}" already: choose another name.` };
  return { prediction: { name, source } };
}

function sourceOf(draft: PredictionDraft): PredictionSource | string {
  const { kind, diameter } = draft;
  if (kind === "blades") {
    if (draft.propellerId === "") return "Choose a propeller whose blade shape is known.";
    const { roughness, liftFactor } = draft.surface;
    if (roughness === null || liftFactor === null) return "Give the roughness height and the lift factor.";
    return { kind, propellerId: draft.propellerId, surface: { roughness, liftFactor, dragFactor: 1 } };
  }
  if (diameter === null) return "Give the diameter.";
  if (kind === "staticMerit") {
    if (draft.staticMerit === null) return "Give the static merit.";
    return { kind, diameter, staticMerit: draft.staticMerit, nozzleAreaRatio: null };
  }
  const series = seriesOf(draft);
  return typeof series === "string" ? series : { kind, diameter, series };
}

function seriesOf({ series, isSeriesWhole, pitchRatio }: PredictionDraft): SeriesPropeller | string {
  if (!isSeriesWhole) return "Give the number of blades and the area ratio.";
  if (pitchRatio === null) return "Give the pitch ratio.";
  return { ...series, pitchRatio };
}

/** "B 3-50, P/D 0.80, 76.0 mm": what a person would call it. */
export function suggestedName(draft: PredictionDraft): string {
  const size = draft.diameter === null ? "" : `, ${formatQuantity(draft.diameter, MILLIMETRE)}`;
  if (draft.kind === "staticMerit") return `Static merit ${formatNumber(draft.staticMerit ?? 0, 2)}${size}`;
  if (draft.kind === "blades") return `Blade elements, ${surfaceWords(draft.surface)}`;
  const { series } = draft;
  const screw =
    series.family === "wageningen-b"
      ? `B ${series.blades}-${Math.round(series.areaRatio * 100)}`
      : FAMILY_NAMES[series.family];
  return `${screw}, P/D ${formatNumber(draft.pitchRatio ?? 0, 2)}${size}`;
}

function within(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

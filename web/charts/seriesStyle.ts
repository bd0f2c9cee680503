import type { ChartSeries } from "./chartSpec.ts";

export type Marker = "circle" | "rect" | "triangle" | "rectRot" | "crossRot" | "star";

/** Colour, marker and dash that belong together, so that no series is told apart by colour alone. */
export interface SeriesStyle {
  /** Number of the colour token `--series-…` in style/tokens.css. */
  readonly colour: number;
  readonly marker: Marker;
  /** Dash of a prediction; a fit is always solid. */
  readonly dash: readonly number[];
}

const MARKERS: readonly Marker[] = ["circle", "rect", "triangle", "rectRot", "crossRot", "star"];
const DASHES: readonly (readonly number[])[] = [
  [9, 5],
  [3, 4],
  [12, 4, 3, 4],
  [6, 3],
  [14, 6],
  [3, 3, 9, 3],
];
/** Colour tokens there are. */
export const COLOURS = 5;

export function seriesStyle(style: number): SeriesStyle {
  const at = Math.abs(Math.trunc(style));
  return {
    colour: at % COLOURS,
    // Five colours and six markers: the same pair comes back only after thirty series.
    marker: MARKERS[at % MARKERS.length]!,
    dash: DASHES[at % DASHES.length]!,
  };
}

/** What a legend adds to the name of a series, so that the picture can be read without its text. */
export function kindWords({ kind, points }: ChartSeries): string {
  const doubt = points.some(({ xInterval, yInterval }) => xInterval !== undefined || yInterval !== undefined);
  switch (kind) {
    case "measured":
      return doubt ? "measured, bars 95 %" : "measured";
    case "leftOut":
      return "left out of the fit";
    case "fit":
      return doubt ? "line, band 95 %" : "line";
    case "prediction":
      return doubt ? "prediction, band 95 %" : "prediction";
    case "limit":
      return "not possible beyond";
    case "trace":
      return doubt ? "least to greatest" : "";
  }
}

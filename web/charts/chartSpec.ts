/** What a chart shows, without saying how it is drawn: views make these as pure data, `Chart.tsx` draws them. */
export interface ChartPoint {
  readonly x: number;
  readonly y: number;
  /** Ends of the 95 % interval, where the point has one. */
  readonly xInterval?: readonly [number, number];
  readonly yInterval?: readonly [number, number];
  /** Extra words for the tooltip and the table, e.g. "plateau 3, lines 210 to 260". */
  readonly note?: string;
}

/**
 * - measured: markers with error bars
 * - leftOut: hollow markers
 * - fit: solid line; with `yInterval` a band
 * - prediction: dashed line; with `yInterval` a band
 * - limit: the upper edge of the physically possible; the side away from zero is hatched grey
 * - trace: thin line, `yInterval` is least and greatest in the step
 */
export type SeriesKind = "measured" | "leftOut" | "fit" | "prediction" | "limit" | "trace";

export interface ChartSeries {
  readonly id: string;
  readonly name: string;
  readonly kind: SeriesKind;
  /** Series of one variant share a style number: it picks colour, marker and dash together. */
  readonly style: number;
  readonly points: readonly ChartPoint[];
  /** Name that series of one thing, its points and its fit, share in the legend: they are one entry there. */
  readonly legend?: string;
  /** Draw against the right-hand axis. */
  readonly secondAxis?: boolean;
}

export interface ChartAxis {
  /** Quantity in words, e.g. "Thrust". */
  readonly label: string;
  /** Printed unit, e.g. "N"; empty for a plain number. */
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Significant digits it takes to tell two neighbouring points apart; 4 where absent. */
  readonly digits?: number;
}

/** A stretch of the x axis: a plateau, a tare window, a stretch left out, one that was not taken. */
export interface ChartSpan {
  readonly id: string;
  readonly start: number;
  readonly end: number;
  readonly label: string;
  readonly kind: "plateau" | "tare" | "leftOut" | "rejected";
  /** Its edges can not be dragged. */
  readonly fixed?: boolean;
}

export interface ChartMarker {
  readonly x: number;
  readonly label: string;
}

export interface ChartSpec {
  /** What the picture shows, a phrase; also the name of exported files. */
  readonly title: string;
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly y2?: ChartAxis;
  readonly series: readonly ChartSeries[];
  /** Curves carry the number of their legend entry: for pictures of many curves. Names: the entry of each number from 1. */
  readonly numbered?: boolean | readonly string[];
  readonly spans?: readonly ChartSpan[];
  readonly markers?: readonly ChartMarker[];
}

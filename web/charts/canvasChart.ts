import {
  Chart,
  type ChartConfiguration,
  type ChartOptions,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
  type TooltipItem,
} from "chart.js";
import { PointWithErrorBar, ScatterWithErrorBarsController } from "chartjs-chart-error-bars";
import zoomPlugin from "chartjs-plugin-zoom";
import type { Cursor } from "./chartCursor.ts";
import { applyScales, FONT } from "./chartScales.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { cursorPlugin } from "./cursorPlugin.ts";
import { type Dataset, datasetsOf } from "./datasets.ts";
import type { Drawing } from "./drawing.ts";
import { isOverTime } from "./overTime.ts";
import type { Palette } from "./palette.ts";
import { pointLines } from "./pointWords.ts";
import { xRange } from "./ranges.ts";
import { regionsPlugin } from "./regionsPlugin.ts";
import { followSpanDrags, type SpanHandlers } from "./spanDrag.ts";
import { spansPlugin } from "./spansPlugin.ts";
import { isCrowded } from "./tags.ts";
import { TAG_COLUMN, tagsPlugin } from "./tagsPlugin.ts";

Chart.register(
  LineController,
  LineElement,
  LinearScale,
  PointElement,
  PointWithErrorBar,
  ScatterWithErrorBarsController,
  Tooltip,
  zoomPlugin,
);

export interface Shown {
  readonly spec: ChartSpec;
  readonly hidden: ReadonlySet<string>;
  readonly cursor: Cursor | null;
  readonly palette: Palette;
}

/** A stretch of the x axis, in its printed unit. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface CanvasChartHandlers extends SpanHandlers {
  /** The stretch on show after a zoom, or after a zoomed picture was moved; null when the whole is back. */
  readonly zoomed?: ((stretch: Stretch | null) => void) | undefined;
}

/** A zoom ends at the edges of the whole picture. */
const WITHIN_PICTURE = { min: "original", max: "original" } as const;

type Kind = "line" | "scatterWithErrorBars";

/** A chart on a canvas. `still` is a picture for export: fixed size, no pointer. */
export class CanvasChart {
  private readonly chart: Chart<Kind>;
  private readonly drawing: Drawing;
  private readonly release: () => void;
  private readonly handlers: () => CanvasChartHandlers;
  private zoomed = false;

  constructor(canvas: HTMLCanvasElement, shown: Shown, handlers: () => CanvasChartHandlers, still = false) {
    this.drawing = { ...shown, dragged: null };
    this.handlers = handlers;
    this.chart = new Chart<Kind>(canvas, {
      type: "line",
      data: { datasets: datasetsOf(this.drawing) },
      options: optionsOf(this.drawing, still, () => this.afterZoom()),
      plugins: [
        spansPlugin(this.drawing),
        regionsPlugin(this.drawing),
        tagsPlugin(this.drawing),
        cursorPlugin(this.drawing),
      ],
    } as ChartConfiguration<Kind>);
    this.release = still ? () => undefined : followSpanDrags(this.chart, this.drawing, handlers);
  }

  /** Redraws for other data, theme, hidden series or cursor; a zoom stays. */
  show(shown: Shown): void {
    Object.assign(this.drawing, shown);
    this.chart.data.datasets = datasetsOf(this.drawing) as Dataset[];
    applyScales(this.chart.options, this.drawing, this.zoomed);
    this.chart.update("none");
  }

  /** Moves the cursor only. */
  point(cursor: Cursor | null): void {
    this.drawing.cursor = cursor;
    this.chart.draw();
  }

  /** Zooms in (`factor` above 1) or out, about the cursor or else the middle. */
  zoomBy(factor: number): void {
    // The library takes the part of the range that goes: 1.25 leaves three quarters, 0.5 half as much again.
    const amount = 2 - 1 / factor;
    this.chart.zoom({ x: amount, y: isOverTime(this.drawing.spec) ? 1 : amount, focalPoint: this.focus() }, "none");
    this.afterZoom();
  }

  /** Moves a zoomed picture along x by `share` of its width. */
  moveBy(share: number): void {
    if (!this.zoomed) return;
    this.chart.pan({ x: -share * this.chart.chartArea.width }, undefined, "none");
    this.afterZoom();
  }

  resetZoom(): void {
    // Before it as well: the library tells of a reset as of a zoom.
    this.zoomed = false;
    this.chart.resetZoom("none");
    this.zoomed = false;
    applyScales(this.chart.options, this.drawing, false);
    this.chart.update("none");
    this.handlers().zoomed?.(null);
  }

  private afterZoom(): void {
    const { spec } = this.drawing;
    const { min: from, max: to } = this.chart.scales["x"]!;
    const whole = xRange(spec);
    if (isOverTime(spec) && from <= whole.low && to >= whole.high) {
      if (this.zoomed) this.resetZoom();
      return;
    }
    this.zoomed = true;
    applyScales(this.chart.options, this.drawing, true);
    // The point under the pointer has moved away.
    this.chart.tooltip?.setActiveElements([], { x: 0, y: 0 });
    this.chart.update("none");
    this.handlers().zoomed?.({ from, to });
  }

  destroy(): void {
    this.release();
    this.chart.destroy();
  }

  /** Where the data cursor stands on the canvas, else the middle. */
  private focus(): { x: number; y: number } {
    const { spec, cursor } = this.drawing;
    const { left, right, top, bottom } = this.chart.chartArea;
    const series = spec.series.find(({ id }) => id === cursor?.seriesId);
    const point = cursor && series?.points[cursor.index];
    if (!series || !point) return { x: (left + right) / 2, y: (top + bottom) / 2 };
    const { x, y, y2 } = this.chart.scales;
    const height = series.secondAxis ? (y2 ?? y) : y;
    return { x: x!.getPixelForValue(point.x), y: height!.getPixelForValue(point.y) };
  }
}

function optionsOf(drawing: Drawing, still: boolean, zoomed: () => void): ChartOptions<Kind> {
  // In a log only the time is of interest; elsewhere a corner of the picture is.
  const mode = isOverTime(drawing.spec) ? "x" : "xy";
  const options: ChartOptions<Kind> = {
    animation: false,
    font: { family: FONT },
    responsive: !still,
    maintainAspectRatio: false,
    normalized: true,
    interaction: { mode: "nearest", axis: "xy", intersect: false },
    layout: { padding: () => ({ top: 8, right: isCrowded(drawing.spec) ? TAG_COLUMN : 12 }) },
    plugins: {
      tooltip: {
        enabled: !still,
        displayColors: false,
        titleFont: { family: FONT },
        bodyFont: { family: FONT },
        backgroundColor: () => drawing.palette.ink,
        titleColor: () => drawing.palette.paper,
        bodyColor: () => drawing.palette.paper,
        callbacks: tooltipWords(drawing),
      },
      zoom: {
        zoom: {
          mode,
          // A bare wheel scrolls the page, as everywhere else.
          wheel: { enabled: !still, modifierKey: "ctrl", speed: 0.15 },
          pinch: { enabled: !still },
          drag: { enabled: !still, threshold: 8, backgroundColor: "rgba(86, 180, 233, 0.2)" },
          onZoomComplete: zoomed,
        },
        pan: { enabled: !still, mode, modifierKey: "shift", onPanComplete: zoomed },
        limits: { x: WITHIN_PICTURE, y: WITHIN_PICTURE },
      },
    },
  };
  if (still) options.devicePixelRatio = 2;
  applyScales(options, drawing, false);
  return options;
}

function tooltipWords(drawing: Drawing) {
  const found = (item: TooltipItem<Kind> | undefined) => {
    const id = (item?.dataset as Dataset | undefined)?.seriesId;
    const series = drawing.spec.series.find((one) => one.id === id);
    return { series, point: item && series?.points[item.dataIndex] };
  };
  return {
    title: (items: TooltipItem<Kind>[]) => found(items[0]).series?.name ?? "",
    label: (item: TooltipItem<Kind>) => {
      const { series, point } = found(item);
      return series && point ? pointLines(drawing.spec, series, point) : "";
    },
  };
}

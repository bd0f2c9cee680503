import {
  Chart,
  type ChartConfiguration,
  type ChartOptions,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type ScaleOptionsByType,
  Tooltip,
  type TooltipItem,
} from "chart.js";
import { PointWithErrorBar, ScatterWithErrorBarsController } from "chartjs-chart-error-bars";
import zoomPlugin from "chartjs-plugin-zoom";
import type { Cursor } from "./chartCursor.ts";
import type { ChartAxis, ChartSpec } from "./chartSpec.ts";
import { cursorPlugin } from "./cursorPlugin.ts";
import { type Dataset, datasetsOf } from "./datasets.ts";
import type { Drawing } from "./drawing.ts";
import type { Palette } from "./palette.ts";
import { axisTitle, pointLines } from "./pointWords.ts";
import { type Range, xRange, yRange } from "./ranges.ts";
import { regionsPlugin } from "./regionsPlugin.ts";
import { followSpanDrags, type SpanHandlers } from "./spanDrag.ts";
import { spansPlugin } from "./spansPlugin.ts";

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

export interface CanvasChartHandlers extends SpanHandlers {
  readonly zoomed?: ((zoomed: boolean) => void) | undefined;
}

/** A zoom ends at the edges of the whole picture. */
const WITHIN_PICTURE = { min: "original", max: "original" } as const;

type Kind = "line" | "scatterWithErrorBars";

const FONT = "system-ui, sans-serif";

/** A chart on a canvas. `still` is a picture for export: fixed size, no pointer. */
export class CanvasChart {
  private readonly chart: Chart<Kind>;
  private readonly drawing: Drawing;
  private readonly release: () => void;
  private zoomed = false;

  constructor(canvas: HTMLCanvasElement, shown: Shown, handlers: () => CanvasChartHandlers, still = false) {
    this.drawing = { ...shown, dragged: null };
    const told = () => {
      this.zoomed = true;
      // The point under the pointer has moved away.
      this.chart.tooltip?.setActiveElements([], { x: 0, y: 0 });
      this.chart.draw();
      handlers().zoomed?.(true);
    };
    this.chart = new Chart<Kind>(canvas, {
      type: "line",
      data: { datasets: datasetsOf(this.drawing) },
      options: optionsOf(this.drawing, still, told),
      plugins: [spansPlugin(this.drawing), regionsPlugin(this.drawing), cursorPlugin(this.drawing)],
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

  resetZoom(): void {
    this.zoomed = false;
    this.chart.resetZoom("none");
    applyScales(this.chart.options, this.drawing, false);
    this.chart.update("none");
  }

  destroy(): void {
    this.release();
    this.chart.destroy();
  }
}

function optionsOf(drawing: Drawing, still: boolean, zoomed: () => void): ChartOptions<Kind> {
  // In a log only the time is of interest; elsewhere a corner of the picture is.
  const mode = drawing.spec.series.some(isTrace) ? "x" : "xy";
  const options: ChartOptions<Kind> = {
    animation: false,
    font: { family: FONT },
    responsive: !still,
    maintainAspectRatio: false,
    normalized: true,
    interaction: { mode: "nearest", axis: "xy", intersect: false },
    layout: { padding: { top: 8, right: 12 } },
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

function applyScales(options: ChartOptions<Kind>, drawing: Drawing, zoomed: boolean): void {
  const { spec } = drawing;
  const scales = {
    x: scaleOf(spec.x, xRange(spec), drawing, { position: "bottom", tight: spec.series.some(isTrace) }),
    y: scaleOf(spec.y, yRange(spec, "y"), drawing, { position: "left" }),
    ...(spec.y2 ? { y2: scaleOf(spec.y2, yRange(spec, "y2"), drawing, { position: "right" }) } : {}),
  };
  const last = options.scales as Record<string, { min?: number; max?: number }> | undefined;
  if (zoomed && last) {
    for (const [name, scale] of Object.entries(scales)) Object.assign(scale, pickEnds(last[name] ?? {}));
  }
  options.scales = scales as never;
}

const isTrace = ({ kind }: { readonly kind: string }) => kind === "trace";
const pickEnds = ({ min, max }: { min?: number; max?: number }) => ({
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
});

function scaleOf(
  axis: ChartAxis,
  { low, high }: Range,
  { palette }: Drawing,
  { position, tight = false }: { position: "bottom" | "left" | "right"; tight?: boolean },
) {
  return {
    type: "linear",
    position,
    // A log ends where it ends; other pictures end at a round number, but for noise about zero, which is worth no step.
    ...(tight ? { min: low, max: high } : { suggestedMin: low, suggestedMax: high }),
    ...(isNoiseBelowZero(low, high) ? { min: low } : {}),
    ...pickEnds(axis),
    title: { display: true, text: axisTitle(axis), color: palette.ink, font: { family: FONT, size: 13, weight: 600 } },
    ticks: {
      color: palette.soft,
      maxRotation: 0,
      autoSkipPadding: 14,
      includeBounds: false,
      format: { useGrouping: false },
    },
    grid: { color: palette.line, drawOnChartArea: position !== "right", tickLength: 5 },
    border: { color: palette.soft },
  } as unknown as ScaleOptionsByType<"linear">;
}

const isNoiseBelowZero = (low: number, high: number) => low < 0 && -low < 0.05 * high;

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

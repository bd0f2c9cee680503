import { useId, useRef, useState } from "preact/hooks";
import { ChartHead } from "./ChartHead.tsx";
import { ChartTable } from "./ChartTable.tsx";
import type { Stretch } from "./canvasChart.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { Legend } from "./Legend.tsx";
import { SpanEdges } from "./SpanEdges.tsx";
import { useCanvasChart, type ZoomActs } from "./useCanvasChart.ts";
import { useDataCursor } from "./useDataCursor.ts";
import { useHiddenSeries } from "./useHiddenSeries.ts";
import { zoomKey } from "./zoomKeys.ts";
import "./chart.css";

export interface ChartProps {
  /** A new object redraws; keep the ids of series and spans. */
  readonly spec: ChartSpec;
  /** Height of the picture in CSS pixels. */
  readonly height?: number;
  /** Makes the edges of spans draggable; called when one is let go. It stays there until a promised change is done. */
  readonly onSpanChange?: (id: string, start: number, end: number) => unknown;
  /** Called when a span is pressed. */
  readonly onSpanSelect?: (id: string) => void;
  /** Called with the stretch of x that is on show after a zoom; null when the whole picture is back. */
  readonly onZoom?: (stretch: Stretch | null) => void;
  /** Series out of the picture by the legend of a group; without it the picture has a legend of its own. */
  readonly hiddenInGroup?: ReadonlySet<string>;
}

/** A picture of measured and computed numbers, with the same numbers for keyboard, ear, table and file. */
export function Chart({ spec, height = 380, onSpanChange, onSpanSelect, onZoom, hiddenInGroup }: ChartProps) {
  const id = useId();
  const canvas = useRef<HTMLCanvasElement>(null);
  const own = useHiddenSeries();
  const hidden = hiddenInGroup ?? own.hidden;
  const [tabled, setTabled] = useState(false);
  const { cursor, spoken, walk, leave } = useDataCursor(spec, hidden);
  const handlers = { change: onSpanChange, select: onSpanSelect, zoomed: onZoom };
  const picture = useCanvasChart(canvas, spec, hidden, cursor, handlers);

  const spans = spec.spans ?? [];

  return (
    <figure class="chart" aria-labelledby={`${id}-title`}>
      <ChartHead titleId={`${id}-title`} {...{ spec, hidden, picture, tabled }} onTable={setTabled} />
      {spec.series.length > 0 && hiddenInGroup === undefined && (
        <Legend series={spec.series} numbered={spec.numbered} hidden={hidden} onToggle={own.toggle} />
      )}
      <div
        class="chart-canvas"
        style={{ height: `${height}px` }}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the data cursor is moved from the keyboard
        tabIndex={0}
        role="application"
        aria-roledescription="data cursor"
        aria-label={spec.title}
        aria-describedby={`${id}-keys`}
        onKeyDown={(event) => takeKey(event, picture.zoom, walk)}
        onBlur={leave}
      >
        <canvas ref={canvas} />
        {!picture.ready && <p class="chart-wait">{picture.problem ?? "Drawing …"}</p>}
      </div>
      <p class="chart-keys" id={`${id}-keys`}>
        Arrow keys: points and series. + and −, a drag, or Ctrl and wheel: zoom; Shift and arrows: along; 0: whole.
      </p>
      <p class="chart-spoken" aria-live="polite">
        {spoken}
      </p>
      {onSpanChange && spans.length > 0 && <SpanEdges axis={spec.x} spans={spans} onSpanChange={onSpanChange} />}
      {tabled && <ChartTable spec={spec} />}
    </figure>
  );
}

/** A key that zooms, or else moves the data cursor. */
function takeKey(event: KeyboardEvent, zoomActs: ZoomActs, walk: (key: string) => boolean): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const zoom = zoomKey(event, zoomActs);
  if (!zoom && !walk(event.key)) return;
  zoom?.();
  event.preventDefault();
}

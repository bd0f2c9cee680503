import { useId, useRef, useState } from "preact/hooks";
import { sentenceOf } from "../api/apiProblem.ts";
import { tell } from "../app/toast.ts";
import { ChartTable } from "./ChartTable.tsx";
import { chartCsv, fileNameOf } from "./chartCsv.ts";
import { type Cursor, cursorAfter } from "./chartCursor.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { Legend } from "./Legend.tsx";
import { spokenPoint } from "./pointWords.ts";
import { SpanEdges } from "./SpanEdges.tsx";
import { saveFile } from "./saveFile.ts";
import { useCanvasChart } from "./useCanvasChart.ts";
import "./chart.css";

export interface ChartProps {
  /** A new object redraws; keep the ids of series and spans. */
  readonly spec: ChartSpec;
  /** Height of the picture in CSS pixels. */
  readonly height?: number;
  /** Makes the edges of spans draggable; called when one is let go. */
  readonly onSpanChange?: (id: string, start: number, end: number) => void;
  /** Called when a span is pressed. */
  readonly onSpanSelect?: (id: string) => void;
}

const NOTHING: ReadonlySet<string> = new Set();

/** A picture of measured and computed numbers, with the same numbers for keyboard, ear, table and file. */
export function Chart({ spec, height = 380, onSpanChange, onSpanSelect }: ChartProps) {
  const id = useId();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [hidden, setHidden] = useState(NOTHING);
  const [cursor, setCursor] = useState<Cursor | null>(null);
  const [tabled, setTabled] = useState(false);
  const picture = useCanvasChart(canvas, spec, hidden, cursor, { change: onSpanChange, select: onSpanSelect });

  const toggle = (ids: readonly string[]) => {
    const out = ids.every((one) => hidden.has(one));
    const others = [...hidden].filter((one) => !ids.includes(one));
    setHidden(new Set(out ? others : [...others, ...ids]));
  };
  const walk = (event: KeyboardEvent) => {
    const next = cursorAfter(event.key, cursor, spec, hidden);
    if (next === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    setCursor(next);
  };
  const series = spec.series.find((one) => one.id === cursor?.seriesId);
  const spoken = cursor && series?.points[cursor.index] ? spokenPoint(spec, series, cursor.index) : "";
  const spans = spec.spans ?? [];

  return (
    <figure class="chart" aria-labelledby={`${id}-title`}>
      <figcaption class="chart-head">
        <span class="chart-title" id={`${id}-title`}>
          {spec.title}
        </span>
        <span class="chart-tools">
          {picture.zoomed && (
            <button type="button" class="quiet" onClick={picture.resetZoom}>
              Whole picture
            </button>
          )}
          <button type="button" class="quiet" aria-pressed={tabled} onClick={() => setTabled(!tabled)}>
            Table
          </button>
          <button type="button" class="quiet" onClick={() => saveCsv(spec)}>
            CSV
          </button>
          <button type="button" class="quiet" onClick={() => void savePng(spec, hidden)}>
            PNG
          </button>
        </span>
      </figcaption>
      {spec.series.length > 0 && <Legend series={spec.series} hidden={hidden} onToggle={toggle} />}
      <div
        class="chart-canvas"
        style={{ height: `${height}px` }}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the data cursor is moved from the keyboard
        tabIndex={0}
        role="application"
        aria-roledescription="data cursor"
        aria-label={spec.title}
        aria-describedby={`${id}-keys`}
        onKeyDown={walk}
        onBlur={() => setCursor(null)}
      >
        <canvas ref={canvas} />
        {!picture.ready && <p class="chart-wait">{picture.problem ?? "Drawing …"}</p>}
      </div>
      <p class="chart-keys" id={`${id}-keys`}>
        Arrow keys: next point, next series. Drag, or Ctrl and wheel: zoom.
      </p>
      <p class="chart-spoken" aria-live="polite">
        {spoken}
      </p>
      {onSpanChange && spans.length > 0 && <SpanEdges axis={spec.x} spans={spans} onSpanChange={onSpanChange} />}
      {tabled && <ChartTable spec={spec} />}
    </figure>
  );
}

function saveCsv(spec: ChartSpec): void {
  // The mark at the start makes spreadsheets read the file as UTF-8.
  saveFile(new Blob(["\ufeff", chartCsv(spec)], { type: "text/csv;charset=utf-8" }), fileNameOf(spec.title, "csv"));
}

async function savePng(spec: ChartSpec, hidden: ReadonlySet<string>): Promise<void> {
  try {
    const { pictureFile } = await import("./pictureFile.ts");
    saveFile(await pictureFile(spec, hidden), fileNameOf(spec.title, "png"));
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

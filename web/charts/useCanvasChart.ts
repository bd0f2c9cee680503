import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { theme } from "../app/theme.ts";
import type { CanvasChart, CanvasChartHandlers, Stretch } from "./canvasChart.ts";
import type { Cursor } from "./chartCursor.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { readPalette } from "./palette.ts";

export interface CanvasState {
  /** The drawing library is loaded and the picture is there. */
  readonly ready: boolean;
  /** Why there is no picture. */
  readonly problem: string | null;
  readonly zoomed: boolean;
  readonly zoom: ZoomActs;
}

/** What a person can do with the stretch on show. */
export interface ZoomActs {
  readonly by: (factor: number) => void;
  readonly move: (share: number) => void;
  readonly reset: () => void;
}

/** Keeps a canvas showing `spec`; loads the drawing library at the first use. */
export function useCanvasChart(
  canvas: RefObject<HTMLCanvasElement | null>,
  spec: ChartSpec,
  hidden: ReadonlySet<string>,
  cursor: Cursor | null,
  handlers: CanvasChartHandlers,
): CanvasState {
  const latest = useRef({ spec, hidden, cursor, handlers });
  latest.current = { spec, hidden, cursor, handlers };
  const { chart, ready, problem, zoomed } = useDrawnChart(canvas, latest);
  const seen = theme.value;

  useEffect(() => {
    if (!canvas.current) return;
    chart.current?.show({ ...latest.current, palette: readPalette(canvas.current.parentElement!) });
  }, [spec, hidden, seen, ready]);

  useLightOnPaper((scheme) => {
    if (canvas.current) chart.current?.show({ ...latest.current, palette: readPalette(document.body, scheme) });
  });

  useEffect(() => chart.current?.point(cursor), [cursor]);

  const zoom = {
    by: (factor: number) => chart.current?.zoomBy(factor),
    move: (share: number) => chart.current?.moveBy(share),
    reset: () => chart.current?.resetZoom(),
  };
  return { ready, problem, zoomed, zoom };
}

interface Shown {
  readonly spec: ChartSpec;
  readonly hidden: ReadonlySet<string>;
  readonly cursor: Cursor | null;
  readonly handlers: CanvasChartHandlers;
}

/** The chart on the canvas from the first drawing until the canvas goes; null until the library is loaded. */
function useDrawnChart(canvas: RefObject<HTMLCanvasElement | null>, latest: { readonly current: Shown }) {
  const chart = useRef<CanvasChart | null>(null);
  const [ready, setReady] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [zoomed, setZoomed] = useState(false);

  useEffect(() => {
    let wanted = true;
    const told = () => ({
      ...latest.current.handlers,
      zoomed: (stretch: Stretch | null) => {
        setZoomed(stretch !== null);
        latest.current.handlers.zoomed?.(stretch);
      },
    });
    import("./canvasChart.ts")
      .then(({ CanvasChart: Drawn }) => {
        if (!wanted || !canvas.current) return;
        const { spec: first, hidden: away, cursor: at } = latest.current;
        chart.current = new Drawn(
          canvas.current,
          { spec: first, hidden: away, cursor: at, palette: readPalette(canvas.current.parentElement!) },
          told,
        );
        setReady(true);
      })
      .catch(() => wanted && setProblem("The picture could not be loaded. The table has the same numbers."));
    return () => {
      wanted = false;
      chart.current?.destroy();
      chart.current = null;
    };
  }, []);

  return { chart, ready, problem, zoomed };
}

/** Paper is white whatever the screen shows; the browser takes its copy right after the event. */
function useLightOnPaper(redraw: (scheme?: "light") => void): void {
  const latest = useRef(redraw);
  latest.current = redraw;
  useEffect(() => {
    const [before, after] = [() => latest.current("light"), () => latest.current()];
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
    };
  }, []);
}

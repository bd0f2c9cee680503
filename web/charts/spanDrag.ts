import type { Chart } from "chart.js";
import type { ChartSpan } from "./chartSpec.ts";
import type { Drawing } from "./drawing.ts";

export interface SpanHandlers {
  readonly change?: ((id: string, start: number, end: number) => unknown) | undefined;
  readonly select?: ((id: string) => void) | undefined;
}

const REACH = 7;

/** Lets the edges of spans be dragged. Returns the function that takes the listeners off again. */
export function followSpanDrags(chart: Chart, drawing: Drawing, handlers: () => SpanHandlers): () => void {
  const { canvas } = chart;
  let grip: Grip | null = null;
  let isOver = false;

  const xAt = (event: PointerEvent) => chart.scales["x"]!.getValueForPixel(event.offsetX) ?? 0;
  const selectAt = (event: PointerEvent) => {
    const span = spanAt(drawing, xAt(event));
    if (span) handlers().select?.(span.id);
  };
  const down = (event: PointerEvent) => {
    const change = handlers().change;
    grip = change ? gripAt(chart, drawing, event.offsetX) : null;
    if (!grip) return selectAt(event);
    // A cancelled pointerdown sends no mouse event, so the drag does not zoom as well.
    event.preventDefault();
    drawing.dragged = null;
    canvas.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent) => {
    if (!grip) {
      canvas.style.cursor = handlers().change && gripAt(chart, drawing, event.offsetX) ? "ew-resize" : "";
      return;
    }
    drawing.dragged = draggedTo(grip, xAt(event));
    chart.draw();
  };
  const up = () => {
    const moved = grip && drawing.dragged;
    grip = null;
    if (moved) void Promise.resolve(handlers().change?.(moved.id, moved.start, moved.end)).finally(() => letGo(moved));
  };
  // The picture with the edge in its new place is drawn after the next frame.
  const letGo = (moved: Drawing["dragged"]) =>
    requestAnimationFrame(() => setTimeout(() => !isOver && drawing.dragged === moved && putBack()));
  const putBack = () => {
    drawing.dragged = null;
    chart.draw();
  };
  const cancel = () => {
    grip = null;
    putBack();
  };
  const unheard = heard(canvas, { pointerdown: down, pointermove: move, pointerup: up, pointercancel: cancel });
  return () => {
    isOver = true;
    unheard();
  };
}

/** The span on top at a place of the axis. */
const spanAt = ({ spec }: Drawing, x: number) => spec.spans?.findLast(({ start, end }) => x >= start && x <= end);

/** Adds listeners to the pointer on `canvas`; returns the function that takes them off again. */
function heard(canvas: HTMLCanvasElement, listeners: Readonly<Record<string, (event: PointerEvent) => void>>) {
  for (const [name, listen] of Object.entries(listeners)) canvas.addEventListener(name, listen as EventListener);
  return () => {
    for (const [name, listen] of Object.entries(listeners)) canvas.removeEventListener(name, listen as EventListener);
  };
}

interface Grip {
  readonly span: ChartSpan;
  readonly edge: "start" | "end";
}

function gripAt(chart: Chart, drawing: Drawing, pixel: number): Grip | null {
  const x = chart.scales["x"]!;
  for (const span of (drawing.spec.spans ?? []).filter(({ fixed }) => !fixed)) {
    for (const edge of ["start", "end"] as const) {
      if (Math.abs(x.getPixelForValue(span[edge]) - pixel) <= REACH) return { span, edge };
    }
  }
  return null;
}

/** An edge dragged past the other one turns the span round instead of making it negative. */
export function draggedTo({ span, edge }: Grip, x: number): { id: string; start: number; end: number } {
  const other = edge === "start" ? span.end : span.start;
  return { id: span.id, start: Math.min(x, other), end: Math.max(x, other) };
}

import { computed, effect, signal } from "@preact/signals";
import type { Trace } from "../../../shared/model/trace.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { readTrace } from "../../api/client.ts";
import { openProjectId } from "../../app/session.ts";
import { tell } from "../../app/toast.ts";
import type { Stretch } from "../../charts/canvasChart.ts";
import { openRun, TRACE_STEPS, trace } from "./benchState.ts";
import { coversStretch, type FinerTrace } from "./traceZoomModel.ts";

/** The part of the log that the picture is zoomed to, of the run named; null while all of it shows. */
const zoomed = signal<{ readonly run: string; readonly stretch: Stretch } | null>(null);
const finer = signal<FinerTrace | null>(null);
const working = signal(false);

/** How long a zoom must rest before its samples are asked for: a wheel turns in many steps. */
const REST_MS = 180;

/** Told by the picture of the log: it shows only this stretch now, or all of it for null. */
export function zoomTrace(stretch: Stretch | null): void {
  const run = openRun.peek()?.id;
  zoomed.value = stretch === null || run === undefined ? null : { run, stretch };
}

const zoomedTo = computed(() => (zoomed.value?.run === openRun.value?.id ? (zoomed.value?.stretch ?? null) : null));

/** What the picture draws: the finer trace where it covers all that is on show, else that of the whole log. */
export const shownTrace = computed((): Trace | null => {
  const whole = trace.value;
  const stretch = zoomedTo.value;
  if (!whole?.value || stretch === null) return whole?.value ?? null;
  return coversStretch(finer.value, whole.of, stretch) ? finer.value.trace : whole.value;
});

/** The samples of a zoomed stretch are on their way. */
export const refining = computed(() => working.value && zoomedTo.value !== null);

/** Asks for the samples of what the picture is zoomed to; started with the screen, stopped when it goes. */
export function followZoom(): () => void {
  return effect(() => {
    const of = trace.value?.value ? trace.value.of : null;
    const stretch = zoomedTo.value;
    if (of === null || stretch === null) return undefined;
    const aborter = new AbortController();
    const timer = setTimeout(() => void refine(of, stretch, aborter.signal), REST_MS);
    return () => {
      clearTimeout(timer);
      aborter.abort();
    };
  });
}

async function refine(of: string, { from, to }: Stretch, stop: AbortSignal): Promise<void> {
  working.value = true;
  try {
    const [run = ""] = of.split(" ");
    const read = await readTrace(openProjectId(), run, { from, to, points: TRACE_STEPS }, stop);
    if (!stop.aborted) finer.value = { of, stretch: { from, to }, trace: read };
  } catch (thrown) {
    if (!stop.aborted) tell({ tone: "problem", text: `The log is drawn no finer. ${sentenceOf(thrown)}` });
  } finally {
    if (!stop.aborted) working.value = false;
  }
}

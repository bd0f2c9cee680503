import type { ColumnRole, Recipe } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Trace } from "../../../shared/model/trace.ts";
import type { ChartAxis, ChartPoint, ChartSeries, ChartSpan, ChartSpec } from "../../charts/chartSpec.ts";
import { isMovable, plateauName } from "./plateausModel.ts";
import { tareWindowsOf } from "./recipeEdits.ts";
import { RPM } from "./shownUnits.ts";

/** What the picture of a log is made from. */
interface TracePicture {
  readonly trace: Trace;
  /** The log from end to end, where `trace` is a stretch of it. */
  readonly whole: Pick<Trace, "start" | "end">;
  readonly reduction: Reduction | null;
  /** Says which spans a person set, where nothing came out to show. */
  readonly recipe: Recipe;
  /** Else rows are counted. */
  readonly hasClock: boolean;
}

/** The log as it came: thrust, and rotation rate on the second axis, with plateaus and tares marked. */
export function traceChart({ trace, whole, reduction, recipe, hasClock }: TracePicture): ChartSpec {
  const series = [
    traceSeries(trace, "thrust", "Thrust reading", 0),
    reduction && tareSeries(reduction),
    traceSeries(trace, "rotationRate", "Rotation rate", 1),
  ].filter((one) => one !== null);
  const x = { ...clockAxis(trace, hasClock), min: whole.start, max: whole.end };
  if (!series.some(({ id }) => id === "thrust")) return withoutThrust(trace, x);
  return {
    title: "Log over time with plateaus and tares",
    x,
    y: { label: "Thrust reading", unit: "N" },
    y2: { label: "Rotation rate", unit: "rpm", min: 0 },
    series,
    spans: reduction === null ? handSpans(recipe) : traceSpans(reduction),
  };
}

/** A log without thrust is told by its rotation rate alone. */
function withoutThrust(trace: Trace, x: ChartAxis): ChartSpec {
  const rate = traceSeries(trace, "rotationRate", "Rotation rate", 1);
  return {
    title: "Log over time",
    x,
    y: { label: "Rotation rate", unit: "rpm", min: 0 },
    series: rate ? [{ ...rate, secondAxis: false }] : [],
  };
}

/** The remaining channels over the same time, two at most in one picture: the command, and the electrical side. */
export function detailCharts(trace: Trace, hasClock: boolean): ChartSpec[] {
  return [
    detailChart(trace, "command", "Throttle command"),
    detailChart(trace, "current", "Supply current", "voltage", "Supply voltage"),
    detailChart(trace, "torque", "Shaft torque"),
    detailChart(trace, "temperature", "Temperature"),
    detailChart(trace, "advanceSpeed", "Speed through the water"),
  ]
    .filter((chart) => chart !== null)
    .map((chart) => ({ ...chart, x: clockAxis(trace, hasClock) }));
}

/** A log without a clock is told row by row. */
function clockAxis(trace: Trace, hasClock: boolean): ChartAxis {
  const digits = digitsOf(trace);
  return hasClock ? { label: "Time", unit: "s", digits } : { label: "Row", unit: "", digits };
}

/** Enough to tell one step of the trace from the next, late in the log as early. */
function digitsOf({ start, end, times }: Trace): number {
  const step = (end - start) / Math.max(1, times.length);
  const greatest = Math.max(Math.abs(start), Math.abs(end));
  return step > 0 ? Math.min(9, Math.max(4, Math.ceil(Math.log10(greatest / step)) + 1)) : 4;
}

/** The zero that is taken off, under the reading it is taken from. */
function tareSeries({ tare }: Reduction): ChartSeries | null {
  if (tare.line.length === 0) return null;
  const points = tare.line.map(({ at, thrust }) => ({ x: at, y: thrust }));
  return { id: "tare", name: "Tare taken off", kind: "fit", style: 3, points };
}

const PLATEAU = "plateau-";
const TARE = "tare-";
const REJECTED = "rejected-";

/** The windows and plateaus that a person set: what a run that can not be reduced is mended by. */
function handSpans(recipe: Recipe): ChartSpan[] {
  const { plateaus } = recipe;
  const spans = plateaus.mode === "spans" ? plateaus.spans : [];
  return [
    ...tareWindowsOf(recipe).map((window, index) => tareSpan(window, index)),
    ...spans.map(({ start, end }, index): ChartSpan => {
      return { id: `${PLATEAU}${index}`, start, end, label: plateauName(index), kind: "plateau" };
    }),
  ];
}

function tareSpan({ start, end }: { readonly start: number; readonly end: number }, index: number): ChartSpan {
  return { id: `${TARE}${index}`, start, end, label: `Tare ${index + 1}`, kind: "tare" };
}

/**
 * Plateaus, left-out stretches, tare windows, and what did not become a plateau; the identity tells which of them was
 * dragged. The bins of a sweep cover the whole of it and say nothing here.
 */
export function traceSpans(reduction: Reduction): ChartSpan[] {
  const plateaus = reduction.plateaus.flatMap((plateau, index): ChartSpan[] => {
    if (!isMovable(plateau)) return [];
    const label = plateau.used
      ? plateauName(index)
      : `${plateauName(index)}, left out: ${plateau.leftOutBecause ?? ""}`;
    return [{ id: `${PLATEAU}${index}`, ...plateau.span, label, kind: plateau.used ? "plateau" : "leftOut" }];
  });
  const tares = reduction.tare.windows.map((window, index) => tareSpan(window, index));
  const rejected = reduction.rejected.map(
    ({ start, end, because }, index): ChartSpan => ({
      id: `${REJECTED}${index}`,
      ...{ start, end, kind: "rejected", fixed: true },
      label: `Not taken: ${because}`,
    }),
  );
  return [...rejected, ...tares, ...plateaus];
}

/** What a span of the picture stands for. */
export function spanTarget(id: string): { readonly kind: "plateau" | "tare" | "rejected"; readonly index: number } {
  const index = Number(id.slice(id.lastIndexOf("-") + 1));
  return { kind: id.startsWith(TARE) ? "tare" : id.startsWith(REJECTED) ? "rejected" : "plateau", index };
}

function detailChart(
  trace: Trace,
  role: ColumnRole,
  name: string,
  secondRole?: ColumnRole,
  secondName = "",
): Omit<ChartSpec, "x"> | null {
  const first = traceSeries(trace, role, name, 0);
  const second = secondRole === undefined ? null : traceSeries(trace, secondRole, secondName, 1);
  if (first === null) return null;
  return {
    title: `${name}${second === null ? "" : ` and ${secondName.toLowerCase()}`} over time`,
    y: { label: name, unit: unitOf(trace, role) },
    ...(second !== null && secondRole !== undefined && { y2: { label: secondName, unit: unitOf(trace, secondRole) } }),
    series: second === null ? [first] : [first, { ...second, secondAxis: true }],
  };
}

function traceSeries(trace: Trace, role: ColumnRole, name: string, style: number): ChartSeries | null {
  const channel = trace.channels.find((one) => one.role === role);
  if (channel === undefined) return null;
  const factor = role === "rotationRate" ? RPM.factor : 1;
  const points = trace.times.flatMap((time, index): ChartPoint[] => {
    const low = channel.low[index] ?? null;
    const high = channel.high[index] ?? null;
    if (low === null || high === null) return [];
    const y = (low + high) / 2 / factor;
    return [trace.raw ? { x: time, y } : { x: time, y, yInterval: [low / factor, high / factor] }];
  });
  return { id: role, name, kind: "trace", style, points, ...(role === "rotationRate" && { secondAxis: true }) };
}

function unitOf(trace: Trace, role: ColumnRole): string {
  const unit = trace.channels.find((one) => one.role === role)?.unit ?? "";
  return unit === "1" ? "" : unit;
}

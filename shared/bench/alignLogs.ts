import type { LogTable } from "../log/logTable.ts";
import type { Alignment, Companion } from "../model/alignment.ts";
import type { ColumnRole, Recipe } from "../model/recipe.ts";
import { formatNumber } from "../quantity/format.ts";
import { InputProblem } from "../quantity/problem.ts";
import { NORMAL_975, type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { type Channel, channelsByRole, samplesOf } from "./channels.ts";
import { type FoundLag, findLag } from "./lagSearch.ts";
import type { Signal } from "./steadyStep.ts";
import { timelineOf } from "./timeline.ts";

/** A log with what its columns stand for. */
export interface LogPart {
  readonly table: LogTable;
  readonly recipe: Recipe;
}

/** Two logs of one run, the clock of the second to be found. */
export interface TwoLogs {
  readonly first: LogPart;
  readonly second: LogPart;
  readonly lag: Companion["lag"];
}

/** What tells the same in both logs, or rises and falls together, the likeliest to be alike first. */
const COMMON: readonly (readonly [ColumnRole, ColumnRole])[] = [
  ["rotationRate", "rotationRate"],
  ["command", "command"],
  ["thrust", "current"],
  ["thrust", "electricalPower"],
  ["rotationRate", "current"],
  ["rotationRate", "electricalPower"],
  ["torque", "current"],
  ["torque", "electricalPower"],
  ["command", "current"],
  ["command", "electricalPower"],
  ["thrust", "thrust"],
];

/** Below this correlation the two signals do not show the same run. Common practice, no source. */
const LEAST_CORRELATION = 0.6;
/** Clocks of small computers differ by no more, 1. Ceramic resonators: 0.5 %; common practice, no source. */
const LARGEST_RATE = 0.01;
/** Standard uncertainties from which a difference of the clocks is allowed for. */
const SIGNIFICANT = 3;

/** The lag with the signals it was found on; both on their own clocks. */
export interface LaidOver {
  readonly alignment: Alignment;
  readonly first: Signal;
  readonly second: Signal;
}

/**
 * Lays the second log over the first: time of the first = t + lag + rate · (t − middle of the second), t the clock of
 * the second. The lag is found by normalised cross-correlation of a signal that both have, the rate from the lags of
 * its two halves, where these differ significantly; or the lag is as a person stated it.
 *
 * Assumes  both ran through the run without a stop; a clock that starts again in one of them stands as its timeline has it.
 * Throws   InputProblem `bench.align-no-time`, `bench.no-common-signal`, `bench.lag-not-found`, `bench.lag-not-distinct`;
 *          those of channelsByRole and timelineOf.
 */
export function alignLogs({ first, second, lag }: TwoLogs): LaidOver {
  const [a, b] = [channelsByRole(first.table, first.recipe), channelsByRole(second.table, second.recipe)];
  const [timesA, timesB] = [timesOf(first.table, a), timesOf(second.table, b)];
  const common = COMMON.find(([roleA, roleB]) => a.has(roleA) && b.has(roleB));
  const signal = (channel: Channel, times: Float64Array): Signal => ({ times, values: clipped(channel) });
  const x = common && signal(a.get(common[0])!, timesA);
  const y = common && signal(b.get(common[1])!, timesB);
  const signals = common
    ? {
        first: { role: common[0], header: a.get(common[0])!.header },
        second: { role: common[1], header: b.get(common[1])!.header },
      }
    : null;
  if (lag.mode === "stated") {
    const value = uncertain(lag.seconds, 0);
    const alignment = {
      ...{ mode: lag.mode, lag: value, clockRate: null, clockRateApplied: false, isWholeRun: false, signals },
      ...{ correlation: null, runnerUp: null, overlap: overlapOf(timesA, timesB, lag.seconds) },
      sentence: `The clock of ${second.table.fileName} was set ${seconds(lag.seconds)} forward, as you stated.`,
    };
    const nothing = { times: new Float64Array(0), values: new Float64Array(0) };
    return { alignment, first: x ?? nothing, second: y ?? nothing };
  }
  if (!x || !y || !signals) throw noCommonSignal(first, second);
  const upright = signedBest(x, y, common);
  if (!upright) throw notFound(second, signals);
  const found = upright.found;
  refuseIndistinct(found, second, signals);
  const rate = clockRateOf(upright.x, y, found);
  const isApplied = rate !== null && Math.abs(rate.value) > SIGNIFICANT * rate.standardUncertainty;
  const final = isApplied ? (findLag(upright.x, stretched(y, rate.value), { near: nearby(found, y) }) ?? found) : found;
  const alignment: Alignment = {
    mode: "automatic",
    lag: uncertain(final.lag, final.uncertainty),
    clockRate: rate,
    clockRateApplied: isApplied,
    isWholeRun: found.distinct === "whole",
    signals,
    correlation: final.correlation,
    runnerUp: found.runnerUp,
    overlap: overlapOf(timesA, timesB, final.lag),
    sentence: "",
  };
  return { alignment: { ...alignment, sentence: sentenceOf(alignment, second.table) }, first: upright.x, second: y };
}

/** Time on the first clock of times on the second, s. */
export function onFirstClock({ lag, clockRate, clockRateApplied }: Alignment, times: Float64Array): Float64Array {
  const rate = clockRateApplied ? (clockRate?.value ?? 0) : 0;
  const middle = middleOf(times);
  return times.map((time) => time + lag.value + rate * (time - middle));
}

function middleOf(times: Float64Array): number {
  return ((times[0] ?? 0) + (times.at(-1) ?? 0)) / 2;
}

function stretched(signal: Signal, rate: number): Signal {
  const middle = middleOf(signal.times);
  return { ...signal, times: signal.times.map((time) => time + rate * (time - middle)) };
}

function timesOf(table: LogTable, channels: ReadonlyMap<ColumnRole, Channel>): Float64Array {
  const time = channels.get("time");
  if (time) return timelineOf(table, time).times;
  throw new InputProblem({
    code: "bench.align-no-time",
    where: table.fileName,
    found: "the log has no time column",
    needed: "a clock in both logs, to lay them over each other",
    mend: "Mark the column that holds the time, or record both sides in one log",
  });
}

/** Single wild readings would drown the rest. */
function clipped(channel: Channel): Float64Array {
  const values = samplesOf(channel, 0, channel.raw.length);
  const sorted = values.filter((value) => !Number.isNaN(value)).sort();
  const at = (part: number) => sorted[Math.round(part * (sorted.length - 1))] ?? 0;
  const [low, high] = [at(0.005), at(0.995)];
  return values.map((value) => (Number.isNaN(value) ? value : Math.max(low, Math.min(high, value))));
}

/** A load cell mounted the other way falls where the current rises. */
function signedBest(x: Signal, y: Signal, [ofX, ofY]: readonly ColumnRole[]): { x: Signal; found: FoundLag } | null {
  const reversed = { ...x, values: x.values.map((value) => -value) };
  const tried = (ofX === "thrust" ? [x, reversed] : [x]).flatMap((signal) => {
    const found = findLag(signal, y, { alike: ofX === ofY });
    return found ? [{ x: signal, found }] : [];
  });
  return tried.sort((p, q) => q.found.correlation - p.found.correlation)[0] ?? null;
}

/** Where the lag of a part of the log may lie, given the lag of all of it. */
function nearby({ lag }: FoundLag, { times }: Signal): { lag: number; within: number } {
  const length = times.at(-1)! - times[0]!;
  return { lag, within: Math.min(0.02 * length, LARGEST_RATE * length + 1) };
}

/** Difference of the clocks from the lags of the two halves of the second log; null where a half shows nothing. */
function clockRateOf(x: Signal, y: Signal, whole: FoundLag): Uncertain | null {
  const middle = middleOf(y.times);
  const row = y.times.findIndex((time) => time >= middle);
  const halves = [
    { times: y.times.subarray(0, row), values: y.values.subarray(0, row) },
    { times: y.times.subarray(row), values: y.values.subarray(row) },
  ];
  const found = halves.map((half) => findLag(x, half, { near: nearby(whole, y) }));
  const [early, late] = [found[0], found[1]];
  if (!early || !late || Math.min(early.correlation, late.correlation) < LEAST_CORRELATION) return null;
  const apart = late.centre - early.centre;
  const rate = (late.lag - early.lag) / apart;
  if (!(apart > 0) || Math.abs(rate) > LARGEST_RATE) return null;
  return uncertain(rate, Math.hypot(early.scatter, late.scatter) / apart);
}

function overlapOf(a: Float64Array, b: Float64Array, lag: number): number {
  return Math.max(0, Math.min(a.at(-1)!, b.at(-1)! + lag) - Math.max(a[0]!, b[0]! + lag));
}

function refuseIndistinct(found: FoundLag, { table }: LogPart, signals: NonNullable<Alignment["signals"]>): void {
  const { correlation, runnerUp, distinct } = found;
  if (correlation < LEAST_CORRELATION) throw notFound({ table }, signals, correlation);
  if (distinct !== "none") return;
  throw new InputProblem({
    code: "bench.lag-not-distinct",
    where: table.fileName,
    found: `${signals.first.header} and ${signals.second.header} match about as well at another lag: correlation ${formatNumber(correlation)} against ${formatNumber(runnerUp)}`,
    needed: "a run whose steps do not repeat themselves, so that only one lag fits",
    mend: "State the lag, or start the next run with a short burst that both logs show",
  });
}

function notFound({ table }: Pick<LogPart, "table">, signals: NonNullable<Alignment["signals"]>, correlation = 0) {
  return new InputProblem({
    code: "bench.lag-not-found",
    where: table.fileName,
    found: `${signals.first.header} and ${signals.second.header} do not rise and fall together at any lag; the best correlation is ${formatNumber(correlation, 2)}`,
    needed: `logs of the same run, with a correlation of at least ${LEAST_CORRELATION}`,
    mend: "Check that both files belong to the same run and their columns are right, or state the lag",
  });
}

function noCommonSignal(first: LogPart, second: LogPart): InputProblem {
  return new InputProblem({
    code: "bench.no-common-signal",
    where: `${first.table.fileName} and ${second.table.fileName}`,
    found: "the two logs have nothing that can be compared",
    needed: "rotation rate or command in both, or thrust in one and current or power in the other",
    mend: "Mark the columns that hold them, or state the lag",
  });
}

const WHOLE_RUN =
  " Another lag matches as well where it lets the logs overlap; this one was taken because it leaves no step of either log unmatched. Look at the picture if one log started late or stopped early.";

const seconds = (value: number) => `${formatNumber(value, 4)} s`;

function sentenceOf(
  { lag, clockRate, clockRateApplied, isWholeRun, signals, correlation }: Alignment,
  table: LogTable,
): string {
  const rate = clockRate === null ? "" : `${formatNumber(clockRate.value * 1e6, 3)} ppm`;
  const clocks = clockRateApplied ? ` Its clock is ${rate} off in rate, which was allowed for.` : "";
  return `${table.fileName} was laid over the log by ${signals!.first.header} and ${signals!.second.header}: ${seconds(lag.value)} ± ${formatNumber(NORMAL_975 * lag.standardUncertainty, 2)} s were added to its clock, correlation ${formatNumber(correlation!, 3)}.${clocks}${isWholeRun ? WHOLE_RUN : ""}`;
}

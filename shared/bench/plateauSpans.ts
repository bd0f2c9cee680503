import type { Recipe } from "../model/recipe.ts";
import { median } from "../numeric/median.ts";
import { InputProblem } from "../quantity/problem.ts";
import type { Blocks } from "./blocks.ts";
import { type Channels, samplesOf, valueAt } from "./channels.ts";
import { type Level, levelsOf } from "./levels.ts";
import { isRamp } from "./ramp.ts";
import { type Rest, type RowSpan, SAME_COMMAND_PART } from "./rest.ts";
import { creeps, everyNth, settledFrom } from "./settling.ts";
import { segmentOf, type TareLine } from "./tareLine.ts";
import { rowAt, type Timeline } from "./timeline.ts";

/** Why a stretch did not become a plateau. */
export type Rejection = "at rest" | "too short" | "still settling" | "ramp" | "without readings";

export interface PlateauSpans {
  readonly spans: readonly RowSpan[];
  readonly rejected: readonly { readonly span: RowSpan; readonly because: Rejection }[];
  /** What the stretches were found by. */
  readonly foundBy: "command" | "rotation rate" | "rows" | "recipe";
}

/** Everything the search looks at. */
export interface PlateauSearch {
  readonly channels: Channels;
  readonly timeline: Timeline;
  readonly blocks: Blocks;
  readonly rest: Rest;
  readonly tare: TareLine;
  readonly recipe: Recipe;
}

/** Shortest settled stretch taken as a plateau where the recipe does not say, s. Common practice, no source. */
const SHORTEST_PLATEAU = 1;
/** The same where there is no clock, rows. */
const SHORTEST_ROWS = 10;
/** Fewest rows in a plateau of a logger. */
const FEWEST_ROWS = 5;
/** Part of a step that adding up times may be off by. */
const ROUNDING = 1e-3;
/** Part of the range of the rotation rate within which two stretches are one level. */
const SAME_RATE_PART = 0.01;

/** Steady stretches of the run: one a row in a hand-written table, the recipe's spans, or those found in the log. */
export function plateauSpansOf(search: PlateauSearch): PlateauSpans {
  const { recipe, timeline } = search;
  if (recipe.plateaus.mode === "spans") return givenSpans(recipe.plateaus.spans, timeline);
  return timeline.kind === "readings" ? readingRows(search) : searchedSpans(search);
}

function givenSpans(spans: readonly { start: number; end: number }[], timeline: Timeline): PlateauSpans {
  const rows = spans.map(({ start, end }, i) => {
    const from = rowAt(timeline, start);
    let to = from;
    while (to < timeline.times.length && timeline.times[to]! <= end) to++;
    if (to <= from) throw emptySpan(start, end, i, timeline);
    return { from, to };
  });
  return { spans: rows, rejected: [], foundBy: "recipe" };
}

function emptySpan(start: number, end: number, index: number, { times }: Timeline): InputProblem {
  return new InputProblem({
    code: "bench.empty-span",
    where: `recipe.plateaus.spans[${index}]`,
    found: `no row of the log lies between ${start} s and ${end} s`,
    needed: `a span inside the log, ${times[0]!.toPrecision(4)} s to ${times.at(-1)!.toPrecision(4)} s`,
    mend: "Set the span again, or go back to automatic plateaus",
  });
}

function readingRows({ channels, timeline, rest }: PlateauSearch): PlateauSpans {
  const spans: RowSpan[] = [];
  const rejected: PlateauSpans["rejected"][number][] = [];
  for (let row = 0; row < timeline.times.length; row++) {
    const rate = Math.abs(valueAt(channels.rotationRate, row));
    const span = { from: row, to: row + 1 };
    if (rate <= rest.rateLimit) rejected.push({ span, because: "at rest" });
    else if (Number.isFinite(rate) && Number.isFinite(valueAt(channels.thrust, row))) spans.push(span);
    else rejected.push({ span, because: "without readings" });
  }
  return { spans, rejected, foundBy: "rows" };
}

function searchedSpans(search: PlateauSearch): PlateauSpans {
  const { blocks, rest } = search;
  const byCommand = blocks.command ? commandLevels(blocks.command, search) : [];
  const useCommand = byCommand.filter((level) => turns(level, blocks, rest)).length >= 2;
  const signal = useCommand ? blocks.command! : blocks.rotationRate;
  const levels = useCommand ? byCommand : rateLevels(search);
  const outcomes = withoutRampRests(
    levels.map((_, index) => settledSpan(search, levels, index, signal)),
    search,
  );
  const spans: RowSpan[] = [];
  const rejected: PlateauSpans["rejected"][number][] = [];
  for (const { span, outcome } of outcomes) {
    if (typeof outcome === "string") rejected.push({ span, because: outcome });
    else spans.push(outcome);
  }
  return { spans, rejected: passagesJoined(rejected, search), foundBy: useCommand ? "command" : "rotation rate" };
}

/**
 * A flat looking piece with ramp on both sides is part of the ramp; so is any short one in a log that is more ramp than
 * plateau.
 */
function withoutRampRests(outcomes: readonly Outcome[], search: PlateauSearch): Outcome[] {
  const rows = (spans: readonly RowSpan[]) => spans.reduce((sum, { from, to }) => sum + to - from, 0);
  const ramps = outcomes.filter(({ outcome }) => outcome === "ramp").map(({ span }) => span);
  const steady = outcomes.map(({ outcome }) => outcome).filter((outcome) => typeof outcome !== "string");
  const mostlyRamp = rows(ramps) > rows(steady);
  return outcomes.map(({ span, outcome }, i) => {
    if (typeof outcome === "string") return { span, outcome };
    const enclosed = outcomes[i - 1]?.outcome === "ramp" && outcomes[i + 1]?.outcome === "ramp";
    return enclosed || (mostlyRamp && !longEnough(outcome, search, 2)) ? { span, outcome: "ramp" } : { span, outcome };
  });
}

/** What follows one another on the move is one passage; one of slivers with time for two plateaus is a ramp. */
function passagesJoined(rejected: PlateauSpans["rejected"], search: PlateauSearch): PlateauSpans["rejected"] {
  const joined: { span: RowSpan; because: Rejection; slivers: number }[] = [];
  const onTheMove = (because: Rejection | undefined) => because === "too short" || because === "ramp";
  for (const { span, because } of rejected) {
    const last = joined.at(-1);
    if (last && onTheMove(because) && onTheMove(last.because) && span.from - last.span.to <= longestGap(search)) {
      last.span = { from: last.span.from, to: span.to };
      last.slivers++;
      if (because === "ramp") last.because = because;
    } else joined.push({ span, because, slivers: 1 });
  }
  return joined.map(({ span, because, slivers }) => ({
    span,
    because: because === "too short" && slivers > 2 && longEnough(span, search, 2) ? "ramp" : because,
  }));
}

/** Levels end one block early, so that much lies between neighbours. */
function longestGap({ blocks }: PlateauSearch): number {
  return 2 * ((blocks.starts[1] ?? 1) - blocks.starts[0]!);
}

function commandLevels(command: Float64Array, { blocks, channels }: PlateauSearch): Level[] {
  const resolution = channels.command?.resolution ?? 0;
  return levelsOf(command, blocks, { sameLevelPart: SAME_COMMAND_PART / 2, resolution });
}

function rateLevels({ blocks, channels }: PlateauSearch): Level[] {
  const { resolution } = channels.rotationRate;
  return levelsOf(blocks.rotationRate, blocks, { sameLevelPart: SAME_RATE_PART, resolution });
}

function turns({ first, end }: Level, { rotationRate }: Blocks, { rateLimit }: Rest): boolean {
  return rotationRate[(first + end) >> 1]! > rateLimit && rotationRate[end - 1]! > rateLimit;
}

interface Outcome {
  readonly span: RowSpan;
  readonly outcome: RowSpan | Rejection;
}

/** The settled part of one level, or why there is none. */
function settledSpan(search: PlateauSearch, levels: readonly Level[], index: number, signal: Float64Array): Outcome {
  const { blocks, rest, timeline } = search;
  const level = levels[index]!;
  // The last block may already hold rows of the next level.
  const end = level.end - level.first > 3 ? level.end - 1 : level.end;
  const span = { from: blocks.starts[level.first]!, to: blocks.starts[end]! };
  if (!turns({ ...level, end }, blocks, rest)) return { span, outcome: "at rest" };
  if (!longEnough(span, search)) return { span, outcome: "too short" };
  const from = settledRow(search, span);
  if (from === null) return { span, outcome: isRamp(levels, index, signal, level.first) ? "ramp" : "still settling" };
  const settled = { from, to: span.to };
  const firstBlock = level.first + Math.ceil(((from - span.from) / (span.to - span.from)) * (end - level.first));
  if (isRamp(levels, index, signal, Math.min(firstBlock, end - 1))) return { span, outcome: "ramp" };
  return { span, outcome: longEnough(settled, { ...search, timeline }) ? settled : "too short" };
}

/** Whether a span has the rows and the time for `times` shortest plateaus. */
function longEnough({ from, to }: RowSpan, { timeline, recipe }: PlateauSearch, times = 1): boolean {
  if (to - from < times * FEWEST_ROWS) return false;
  if (timeline.kind !== "clock") return to - from >= times * SHORTEST_ROWS;
  const shortest = (recipe.plateaus.mode === "automatic" && recipe.plateaus.minimumDuration) || SHORTEST_PLATEAU;
  return timeline.times[to - 1]! - timeline.times[from]! + (1 + ROUNDING) * timeline.step >= times * shortest;
}

/** Part by which the rotation rate may still move on a plateau: thrust moves with its square, and the ratio is what counts. */
const RATE_TOLERANCE = 0.01;
/** Part by which thrust over rotation rate squared may still move. */
const RATIO_TOLERANCE = 0.002;

/** Part by which it may creep over the whole of a plateau. */
const CREEP_TOLERANCE = 0.02;
/** The same as part of the thrust at the top rotation rate: what does not matter there need not throw a slow plateau out. */
const CREEP_OF_GREATEST = 0.005;

/** First row from which rotation rate and thrust per rotation rate squared stay settled; null where they do not. */
function settledRow({ channels, timeline, tare, rest }: PlateauSearch, { from, to }: RowSpan): number | null {
  const rates = samplesOf(channels.rotationRate, from, to);
  const thrusts = samplesOf(channels.thrust, from, to);
  const segment = segmentOf(timeline, from);
  const zero = tare.at(timeline.times[from]!, segment).value;
  // The zero moves on during the step; holding it still would make a slow propeller look as if it crept.
  const drift = (tare.at(timeline.times[to - 1]!, segment).value - zero) / Math.max(1, to - from - 1);
  const typicalRate = Math.abs(lateMedian(rates));
  if (!(typicalRate > 0)) return null;
  const byRate = settledFrom(rates, {
    tolerance: Math.max(RATE_TOLERANCE * typicalRate, channels.rotationRate.resolution),
  });
  const ratios = new Float64Array(rates.length);
  for (let i = 0; i < ratios.length; i++) {
    const square = rates[i]! * rates[i]!;
    ratios[i] = square > 0 ? (thrusts[i]! - zero - drift * i) / square : Number.NaN;
  }
  const step = channels.thrust.resolution / typicalRate ** 2;
  const byRatio = settledFrom(ratios, { tolerance: Math.max(RATIO_TOLERANCE * Math.abs(lateMedian(ratios)), step) });
  if (byRate === null || byRatio === null) return null;
  const settled = Math.max(byRate, byRatio);
  const part = Math.max(CREEP_TOLERANCE, CREEP_OF_GREATEST * (rest.topRate / typicalRate) ** 2);
  const creeping = creeps(ratios.subarray(settled), part * Math.abs(lateMedian(ratios)));
  return creeping ? null : from + settled;
}

/** Typical value of the second half, undisturbed by glitches. */
function lateMedian(values: Float64Array): number {
  const late = everyNth(values.subarray(values.length >> 1), 512);
  return late.length > 0 ? median(late) : 0;
}

import { cutBySpeed, speedRamps, speedSettledRow } from "./advance/speedLevels.ts";
import type { Blocks } from "./blocks.ts";
import { type Level, levelsOf } from "./levels.ts";
import type { FoundSpan, PlateauSearch, Rejected, Rejection } from "./plateauSpans.ts";
import { isRamp } from "./ramp.ts";
import { type Rest, type RowSpan, SAME_COMMAND_PART } from "./rest.ts";
import { settledRow } from "./settledRow.ts";
import { SETTLING_MARGIN } from "./settling.ts";

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

/** What the search made of the log: every level that it saw, in order, and what became of it. */
export interface SearchOutcome {
  readonly spans: readonly FoundSpan[];
  readonly rejected: readonly Rejected[];
  readonly foundBy: "command" | "rotationRate";
  /** Each step of the signal with the time it took to settle, s; null where it did not, or no step led to it. */
  readonly steps: readonly { readonly span: RowSpan; readonly settlingTime: number | null }[];
}

/**
 * Looks for held steps by change points of the command where there is one, else of the rotation rate. What looks like a
 * ramp of the command may be the log of a command that was rounded or came late: the rotation rate then has its say.
 */
export function searchedSpans(search: PlateauSearch): SearchOutcome {
  const { blocks, rest } = search;
  const byCommand = blocks.command ? commandLevels(blocks.command, search) : [];
  const useCommand = byCommand.filter((level) => turns(level, blocks, rest)).length >= 2;
  if (!useCommand) return spansByRate(search);
  const found = spansOf(search, { signal: blocks.command!, levels: byCommand, foundBy: "command" });
  if (found.spans.length >= 2 && found.rejected.every(({ because }) => because !== "ramp")) return found;
  const other = spansByRate(search);
  return other.spans.length > found.spans.length ? other : found;
}

function spansByRate(search: PlateauSearch): SearchOutcome {
  return spansOf(search, {
    signal: search.blocks.rotationRate,
    levels: rateLevels(search),
    foundBy: "rotationRate",
  });
}

interface Stepped {
  readonly signal: Float64Array;
  readonly levels: readonly Level[];
  readonly foundBy: SearchOutcome["foundBy"];
}

/** What becomes of the levels of one signal. */
function spansOf(search: PlateauSearch, { signal, levels: uncut, foundBy }: Stepped): SearchOutcome {
  const levels = cutBySpeed(uncut, search.blocks, search.channels.advanceSpeed);
  const outcomes = withoutRampRests(
    levels.map((_, index) => settledSpan(search, levels, index, signal)),
    search,
  );
  const spans: FoundSpan[] = [];
  const rejected: Rejected[] = [];
  const steps = outcomes.map((found) => ({ span: found.span, settlingTime: settlingTimeOf(found, search) }));
  outcomes.forEach(({ span, outcome }, i) => {
    if (typeof outcome === "string") rejected.push({ span, because: outcome });
    else spans.push({ ...outcome, foundBy, settlingTime: steps[i]!.settlingTime });
  });
  return { spans, rejected: passagesJoined(rejected, search), foundBy, steps };
}

/** The wait that was found necessary, without the margin it was drawn out by. */
function settlingTimeOf({ span, outcome }: Outcome, { timeline }: PlateauSearch): number | null {
  // Where the logger starts in the middle of a step, no one knows when it began.
  const stepSeen = !timeline.segmentStarts.includes(span.from);
  if (typeof outcome === "string" || timeline.kind !== "clock" || !stepSeen) return null;
  return (timeline.times[outcome.from]! - timeline.times[span.from]!) / SETTLING_MARGIN;
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
function passagesJoined(rejected: readonly Rejected[], search: PlateauSearch): Rejected[] {
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
  const { blocks, rest } = search;
  const level = levels[index]!;
  // The last block may already hold rows of the next level.
  const end = level.end - level.first > 3 ? level.end - 1 : level.end;
  const span = { from: blocks.starts[level.first]!, to: blocks.starts[end]! };
  if (!turns({ ...level, end }, blocks, rest)) return { span, outcome: "at rest" };
  if (!longEnough(span, search)) return { span, outcome: "too short" };
  const thrustFrom = settledRow(search, span);
  const speedFrom = speedSettledRow(search.channels.advanceSpeed, span);
  const from = thrustFrom === null || speedFrom === null ? null : Math.max(thrustFrom, speedFrom);
  if (from === null) return { span, outcome: isRamp(levels, index, signal, level.first) ? "ramp" : "still settling" };
  const settled = { from, to: span.to };
  const firstBlock = level.first + Math.ceil(((from - span.from) / (span.to - span.from)) * (end - level.first));
  const settledBlock = Math.min(firstBlock, end - 1);
  const climbs = isRamp(levels, index, signal, settledBlock) || speedRamps(levels, index, blocks, settledBlock);
  if (climbs) return { span, outcome: "ramp" };
  const kept = longEnough(settled, search) ? settled : withLessMargin(settled, span, search);
  // Slivers between two rates are no step that anyone held; a command that stood still is.
  return { span, outcome: kept ?? (signal === blocks.command ? "settled too late" : "too short") };
}

/** Part of the margin of the wait that may be given up where the step is too short for all of it. */
const SPARED_MARGIN = 0.6;

/** The settled part with as much of the margin as leaves a shortest plateau; null where even the least margin does not. */
function withLessMargin({ from, to }: RowSpan, step: RowSpan, search: PlateauSearch): RowSpan | null {
  const margin = (1 - 1 / SETTLING_MARGIN) * (from - step.from);
  const earliest = Math.ceil(from - SPARED_MARGIN * margin);
  for (let row = from - 1; row >= earliest; row--) if (longEnough({ from: row, to }, search)) return { from: row, to };
  return null;
}

/** Whether a span has the rows and the time for `times` shortest plateaus. */
function longEnough({ from, to }: RowSpan, { timeline, recipe }: PlateauSearch, times = 1): boolean {
  if (to - from < times * FEWEST_ROWS) return false;
  if (timeline.kind !== "clock") return to - from >= times * SHORTEST_ROWS;
  const shortest = (recipe.plateaus.mode === "automatic" && recipe.plateaus.minimumDuration) || SHORTEST_PLATEAU;
  return timeline.times[to - 1]! - timeline.times[from]! + (1 + ROUNDING) * timeline.step >= times * shortest;
}

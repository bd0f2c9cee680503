import { DELIMITERS } from "../model/reading.ts";
import { type CellReading, type Marks, readCell } from "./cellText.ts";
import { affixedNumber } from "./columnKinds.ts";
import { commentMarkOf, type HeadLine, isRuleOrBlank } from "./headLines.ts";
import { readCells } from "./otherDecimals.ts";
import { BLANKS, splitLines } from "./splitCells.ts";

/** The head of a log cut into cells in one way. */
export interface Cut {
  readonly marks: Marks;
  /** Cells of each line that is neither blank, a rule nor a comment. */
  readonly rows: readonly CutRow[];
  /** How many cells most rows of numbers have. */
  readonly width: number;
  readonly score: number;
}

export interface CutRow extends HeadLine {
  readonly cells: readonly string[];
  readonly readings: readonly CellReading[];
  /** Whether all of it, or some of its cells, have the other decimal mark than the log. */
  readonly otherDecimals: "none" | "line" | "cells";
}

const DECIMAL_MARKS = [".", ","] as const;

/** What a row that needs the other decimal mark counts, against 1, so that the mark of most rows is taken. */
const OTHERS_WORTH = 0.8;

/** What a line without numbers counts, against 1 for a row of numbers. */
const WORDS_WORTH = 1e-6;

/**
 * The way of cutting that makes most of the lines rows of numbers of one width; null where none gives any. Where two
 * read equally much, the earlier one is taken. Marks that are `stated` are not searched for.
 */
export function chooseCut(lines: readonly HeadLine[], stated: Partial<Marks> = {}): Cut | null {
  let best: Cut | null = null;
  const thousands = stated.thousands === undefined ? {} : { thousands: stated.thousands };
  const others = stated.decimalMark === undefined ? {} : ({ otherDecimals: "never" } as const);
  for (const delimiter of stated.delimiter === undefined ? DELIMITERS : [stated.delimiter]) {
    if (delimiter !== BLANKS && !lines.some(({ text }) => text.includes(delimiter))) continue;
    for (const decimalMark of stated.decimalMark === undefined ? DECIMAL_MARKS : [stated.decimalMark]) {
      const cut = cutLines(lines, { delimiter, decimalMark, ...thousands, ...others });
      if (cut.score > (best?.score ?? 0)) best = cut;
    }
  }
  return best;
}

/** Cuts `lines` with the given marks and says how well that went. */
export function cutLines(lines: readonly HeadLine[], marks: Marks): Cut {
  const kept = lines.filter(({ text }) => !isRuleOrBlank(text) && commentMarkOf(text, marks.delimiter) === undefined);
  const split = splitLines(
    kept.map(({ text }) => text),
    marks.delimiter,
  );
  const rows = kept.map((line, i) => {
    const { cells } = split[i]!;
    const { readings, otherDecimal, isMixed } = readCells(cells, marks);
    const otherDecimals: CutRow["otherDecimals"] = otherDecimal === null ? "none" : isMixed ? "cells" : "line";
    return { ...line, cells, readings, otherDecimals };
  });
  return { marks, rows, ...widthAndScore(rows, marks) };
}

function widthAndScore(rows: readonly CutRow[], marks: Marks): { width: number; score: number } {
  const scores = new Map<number, number>();
  for (const row of rows) {
    const { share, numbers } = readableShare(row, marks);
    const isWorded = marks.delimiter === BLANKS && numbers >= WORDED.numbers && share >= WORDED.share;
    // A line of words adds next to nothing, but where widths tie the one with a header is right.
    const worth = share >= 0.5 || isWorded ? share * share : WORDS_WORTH;
    const counted = row.otherDecimals === "line" ? OTHERS_WORTH * worth : worth;
    scores.set(row.cells.length, (scores.get(row.cells.length) ?? 0) + counted);
  }
  let [width, score] = [0, 0];
  for (const [cells, sum] of scores) {
    // A single column is what the wrong delimiter makes of anything.
    const worth = cells === 1 ? sum / 2 : sum;
    if (worth > score || (worth === score && cells > width)) [width, score] = [cells, worth];
  }
  return { width, score: score > 1.01 * WORDS_WORTH * rows.length ? score : 0 };
}

/** Names and units between the numbers of a line ("T 0.5 PWM 1500 thrust 30 g"): so many numbers, and so much of it. */
const WORDED = { numbers: 3, share: 0.3 };

/** How much of the filled cells of a row is numbers: 1 for all of them; 0 where there is none. And how many are. */
function readableShare(row: CutRow, marks: Marks): { share: number; numbers: number } {
  const { cells, otherDecimals } = row;
  // Cells with the other mark on a line that has this one speak for neither.
  const readings = otherDecimals === "cells" ? cells.map((cell) => readCell(cell, marks)) : row.readings;
  let [worth, filled, numbers] = [0, 0, 0];
  readings.forEach((reading, i) => {
    if (reading.kind === "empty") return;
    filled++;
    const cellWorth = readingWorth(reading, cells[i]!, marks);
    if (cellWorth > 0.5) numbers++;
    worth += cellWorth;
  });
  return { share: numbers === 0 ? 0 : worth / filled, numbers };
}

function readingWorth(reading: CellReading, cell: string, marks: Marks): number {
  if (reading.kind === "number") return reading.grouped ? 0.9 : 1;
  if (reading.kind === "clock") return 1;
  if (reading.kind === "missing") return 0.5;
  return affixedNumber(cell, marks) ? 0.7 : 0;
}

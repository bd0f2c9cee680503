import { readClock } from "./clockTime.ts";
import type { CutRow } from "./delimiterChoice.ts";
import { isUnit, unitCell } from "./headerText.ts";
import { rolesNamed } from "./headerWords.ts";
import { commentMarkOf, type HeadLine, isRuleOrBlank } from "./headLines.ts";
import { BLANKS, splitLines } from "./splitCells.ts";

/** The lines that name the columns. */
export interface FoundHeader {
  /** Name cell of each column, exactly as many as there are columns. */
  readonly names: readonly string[];
  readonly line: number;
  readonly units: { readonly cells: readonly (string | null)[]; readonly line: number } | null;
  /** A row of group names above, joined into the names. */
  readonly groupLine: number | null;
  /** Names were fewer than columns. */
  readonly short: boolean;
}

interface Candidate {
  readonly line: number;
  readonly cells: readonly string[];
  readonly short: boolean;
}

interface Above {
  readonly lines: readonly HeadLine[];
  readonly firstDataLine: number;
  readonly width: number;
  readonly delimiter: string;
}

/** How far above the first row of numbers a header is looked for, in lines that hold anything. */
const REACH = 6;

/**
 * The header above the first row of numbers, or null. A plain line of as many words as there are columns is one; a
 * comment line only if the trade knows half of its words, because a sentence has commas too.
 */
export function findHeader(above: Above): FoundHeader | null {
  const near = above.lines
    .filter(({ line, text }) => line < above.firstDataLine && !isRuleOrBlank(text))
    .slice(-REACH)
    .reverse();
  const isComment = (line: HeadLine) => commentMarkOf(line.text, above.delimiter) !== undefined;
  const plain = near.filter((line) => !isComment(line)).map((line) => namesFrom(line.text, line.line, above));
  const remarks = near.filter(isComment).map((line) => {
    const mark = commentMarkOf(line.text, above.delimiter)!;
    const candidate = namesFrom(line.text.trimStart().slice(mark.length).trim(), line.line, above);
    return candidate && (spoken(candidate) || isUnitsRow(candidate)) ? candidate : null;
  });
  return fromCandidates(plain) ?? fromCandidates(remarks);
}

/** The header on the line that a person named; null where that line can not hold a name for each column. */
export function statedHeader(above: Above, line: number): FoundHeader | null {
  const stated = above.lines.find((one) => one.line === line);
  if (!stated) return null;
  const mark = commentMarkOf(stated.text, above.delimiter) ?? "";
  const named = namesFrom(stated.text.trimStart().slice(mark.length).trim(), line, above);
  if (!named) return null;
  const next = above.lines.find((one) => one.line > line && one.line < above.firstDataLine);
  const units = next ? namesFrom(next.text, next.line, above) : null;
  const hasUnits = units !== null && isUnitsRow(units);
  return {
    names: named.cells,
    line,
    units: hasUnits ? { cells: units.cells.map((cell) => unitCell(cell) ?? null), line: units.line } : null,
    groupLine: null,
    short: named.short,
  };
}

function fromCandidates(candidates: readonly (Candidate | null)[]): FoundHeader | null {
  const at = candidates.findIndex((candidate) => candidate !== null);
  if (at < 0) return null;
  const [first, above] = [candidates[at]!, candidates[at + 1] ?? null];
  if (isUnitsRow(first) && above) {
    const units = { cells: first.cells.map((cell) => unitCell(cell) ?? null), line: first.line };
    return { names: above.cells, line: above.line, units, groupLine: null, short: above.short };
  }
  const group = above && !above.short && isGroupRow(above, first) ? above : null;
  const names = group ? joinNames(group.cells, first.cells) : first.cells;
  return { names, line: first.line, units: null, groupLine: group?.line ?? null, short: first.short };
}

/** The cells of a line as names of `width` columns, or null where they can not be. */
function namesFrom(text: string, line: number, above: Above): Candidate | null {
  const { width } = above;
  // The time at which a header arrived is no name.
  const cells = headerCells(text, above).map((cell) => (readClock(cell) ? "" : cell.trim()));
  while (cells.length > width && cells.at(-1) === "") cells.pop();
  const filled = cells.filter((cell) => cell !== "");
  const numbers = filled.filter((cell) => /^[+-]?[\d.,]+$/.test(cell)).length;
  if (filled.length === 0 || numbers > filled.length / 2) return null;
  if (cells.length === width) return { line, cells, short: false };
  const short = width >= 3 && cells.length === width - 1 && filled.length === cells.length;
  return short && spoken({ cells }) ? { line, cells: [...cells, ""], short } : null;
}

/** Names with blanks in them stand between wide gaps or have their unit in brackets. */
function headerCells(text: string, { delimiter, width, lines, firstDataLine }: Above): readonly string[] {
  const cells = splitLines([text], delimiter)[0]!.cells;
  if (delimiter !== BLANKS || cells.length === width) return cells;
  const bracketed = text
    .trim()
    .replace(/\s+(?=[([{])/g, "\u00a0")
    .split(/[ \t]+/);
  if (bracketed.length === width) return bracketed.map((cell) => cell.replaceAll("\u00a0", " "));
  const gaps = text.trim().split(/\t+| {2,}/);
  if (gaps.length === width) return gaps;
  const isUnits = cells.length < width && cells.every((cell) => unitCell(cell) !== undefined);
  const numbers = lines.find(({ line }) => line === firstDataLine)?.text ?? "";
  return isUnits ? (alignedCells(text, numbers) ?? cells) : cells;
}

/** Words of `text` by the number that each stands nearest to, so that units may leave a column out; null where two share one. */
function alignedCells(text: string, numbers: string): string[] | null {
  const spans = [...numbers.matchAll(/\S+/g)].map(({ 0: cell, index }) => ({ start: index, end: index + cell.length }));
  const cells = spans.map(() => "");
  for (const { 0: word, index } of text.matchAll(/\S+/g)) {
    const distances = spans.map(({ start, end }) =>
      Math.min(Math.abs(index - start), Math.abs(index + word.length - end)),
    );
    const nearest = distances.indexOf(Math.min(...distances));
    if (cells[nearest] !== "") return null;
    cells[nearest] = word;
  }
  return cells;
}

/** At least half of the filled cells are words or units of the trade. */
function spoken({ cells }: { readonly cells: readonly string[] }): boolean {
  const filled = cells.filter((cell) => cell !== "");
  return filled.filter((cell) => rolesNamed(cell).length > 0 || isUnit(cell)).length * 2 >= filled.length;
}

/** Every cell is a unit, a dash or empty, and two or more are units. */
function isUnitsRow({ cells }: Candidate): boolean {
  const units = cells.map(unitCell);
  return (
    units.every((unit) => unit !== undefined) &&
    units.filter((unit) => unit !== null).length >= Math.min(2, cells.length)
  );
}

/** Group names repeat or leave gaps, or plainly name nothing the lower row does not. */
function isGroupRow({ cells }: Candidate, lower: Candidate): boolean {
  const filled = cells.filter((cell) => cell !== "");
  return filled.length < cells.length || new Set(filled).size < filled.length || (spoken({ cells }) && !spoken(lower));
}

/** A gap in the group row goes on with the group before it. */
function joinNames(groups: readonly string[], names: readonly string[]): string[] {
  let group = "";
  return names.map((name, column) => {
    group = groups[column] || group;
    return `${group} ${name}`.trim();
  });
}

/** Names that stand before the numbers in the cells themselves. */
export function namesInCells(row: CutRow): string[] {
  return row.cells.map((cell) => /^\s*([A-Za-z_][\w .]*?)\s*[:=]/.exec(cell)?.[1] ?? "");
}

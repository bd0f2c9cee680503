import { type CellReading, type Marks, readCell } from "./cellText.ts";
import { readClock } from "./clockTime.ts";
import type { CutRow } from "./delimiterChoice.ts";

/** Text that stands around the number in every cell of a column: "T:", " A". */
export interface Affix {
  readonly prefix: string;
  readonly suffix: string;
}

/** What the cells of a column are. */
export type ColumnKind = "number" | "clock" | "text";

export interface ColumnNature {
  readonly kind: ColumnKind;
  /** Text around each number, or null. */
  readonly affix: Affix | null;
  /** The first filled cell that made it so. */
  readonly example: string;
}

/** Status words that a weighing indicator sends before each reading ("ST,GS,+00123.4g"); they change from row to row. */
const STATUS = /^(?:(?:ST|US|GS|NT)[\s,]+){1,2}(?=[+\u2212-]?\s*[\d.])/;

const AFFIXED =
  /^([A-Za-z_][\w .]{0,23}[:=]\s*|\[)?([+\u2212-]?\s*[\d.,]+(?:[eE][+-]?\d+)?)(\s*(?!x[\dA-Fa-f])[A-Za-z%°µΩ][\w%°µΩ/·]{0,7}|\])?$/;
const NAMED_CLOCK = /^([A-Za-z_][\w .]{0,23}[:=]\s*)(\d.*:.*)$/;

/** The number or time in a cell that also holds its name ("T:12.3") or its unit ("12.3 A"); undefined for other text. */
export function affixedNumber(cell: string, marks: Marks): { number: CellReading; affix: Affix } | undefined {
  const bare = cell.trim().replace(STATUS, "");
  const match = AFFIXED.exec(bare);
  if (!match) return namedClock(bare);
  if (match[1] === undefined && match[3] === undefined && bare === cell.trim()) return undefined;
  const [prefix, suffix] = [(match[1] ?? "").trim(), (match[3] ?? "").trim()];
  const number = readCell(match[2]!, marks);
  if (number.kind !== "number" || (prefix === "[") !== (suffix === "]")) return undefined;
  return { number, affix: { prefix, suffix: suffix === "]" ? "" : suffix } };
}

function namedClock(cell: string): { number: CellReading; affix: Affix } | undefined {
  const match = NAMED_CLOCK.exec(cell);
  const clock = match ? readClock(match[2]!) : undefined;
  return clock && { number: { kind: "clock", clock }, affix: { prefix: match![1]!.trim(), suffix: "" } };
}

/** The nature of column `column`, by the majority of its filled cells. */
export function natureOf(column: number, rows: readonly CutRow[], marks: Marks): ColumnNature {
  const counts = { number: 0, clock: 0, text: 0, affixed: 0 };
  const examples: Partial<Record<keyof typeof counts, string>> = {};
  const affixes = new Map<string, { affix: Affix; count: number }>();
  let isClock = false;
  const tally = (kind: keyof typeof counts, cell: string) => {
    counts[kind]++;
    examples[kind] ??= cell.trim();
  };
  for (const { cells, readings } of rows) {
    const [cell, reading] = [cells[column] ?? "", readings[column]];
    if (reading?.kind === "number" || reading?.kind === "clock") tally(reading.kind, cell);
    else if (reading?.kind === "text") {
      const affixed = affixedNumber(cell, marks);
      isClock ||= affixed?.number.kind === "clock";
      tally(affixed ? "affixed" : "text", cell);
      if (affixed) addAffix(affixes, affixed.affix);
    }
  }
  const most = Math.max(counts.number, counts.clock, counts.affixed);
  if (counts.text > most) return { kind: "text", affix: null, example: examples.text! };
  if (counts.affixed > counts.number && counts.affixed >= counts.clock) {
    const common = [...affixes.values()].sort((a, b) => b.count - a.count)[0]!;
    return { kind: isClock ? "clock" : "number", affix: common.affix, example: examples.affixed! };
  }
  if (counts.clock > counts.number) return { kind: "clock", affix: null, example: examples.clock! };
  return { kind: "number", affix: null, example: examples.number ?? "" };
}

function addAffix(affixes: Map<string, { affix: Affix; count: number }>, affix: Affix): void {
  const key = `${affix.prefix}\n${affix.suffix}`;
  const known = affixes.get(key);
  if (known) known.count++;
  else affixes.set(key, { affix, count: 1 });
}

import type { Repair } from "../model/log.ts";
import { REFUSABLE_REPAIRS, type RefusableRepair } from "../model/reading.ts";

interface Entry {
  count: number;
  firstLine: number;
  readonly column: number | null;
  readonly examples: string[];
}

/** What one kind of repair says: given how often, where first, and a few of the texts it met. */
type Telling = (told: { readonly count: number; readonly column: string; readonly examples: string }) => string;

/** Every repair that reading a log can make, and its sentence; the line of the first one is added to each. */
const TELLINGS = {
  "log.comment": ({ count }) => `${lines(count)} of comment left out`,
  "log.preamble": ({ count }) => `${lines(count)} above the table left out`,
  "log.text-line": ({ count, examples }) => `${lines(count)} without a row of numbers left out (${examples})`,
  "log.repeated-header": ({ count }) =>
    `header repeated ${times(count)}: taken for a new start of the logger, unless its clock goes on`,
  "log.json": ({ count }) =>
    `the file is one JSON text; its ${count === 1 ? "record was" : `${count} records were`} read as rows, and line numbers count the records after a line of names`,
  "log.no-header": () => "no header found: columns are known by number",
  "log.header-short": ({ examples }) =>
    `header has fewer names than there are columns (${examples}); they are counted from the left`,
  "log.header-rows": () => "two header rows joined into one name a column",
  "log.trailing-delimiter": ({ count }) => `${lines(count)} ended in a delimiter; the empty last cell is left out`,
  "log.short-row": ({ count }) =>
    `${rows(count)} had fewer cells than the table has columns; the cells at the end are missing`,
  "log.long-row": ({ count }) => `${rows(count)} had more cells than the table has columns; the surplus is left out`,
  "log.cut-line": () =>
    "the file stops in the middle of this line; its last number may be cut off and is taken as missing",
  "log.open-quote": ({ count }) => `${lines(count)} had a quote that is never closed; read without quotes`,
  "log.padding": ({ count }) => `${count} padding byte${count === 1 ? "" : "s"} (zero or erased memory) left out`,
  "log.empty-cell": ({ count, column }) => `${cells(count)} of ${column} empty, taken as missing`,
  "log.missing-cell": ({ count, column, examples }) =>
    `${cells(count)} of ${column} held ${examples}, taken as missing`,
  "log.text-cell": ({ count, column, examples }) =>
    `${cells(count)} of ${column} held text (${examples}), taken as missing`,
  "log.unclear-mark": ({ count, column, examples }) =>
    `${cells(count)} of ${column} held numbers like ${examples}, which may be thousands or decimals, taken as missing`,
  "log.other-decimals": ({ count, examples }) =>
    `${rows(count)} had numbers with the other decimal mark (${examples}); read as decimals all the same`,
  "log.text-column": ({ column, examples }) => `${column} holds text (${examples}); no numbers were read from it`,
  "log.thousands": ({ count, column, examples }) =>
    `${cells(count)} of ${column} read with a thousands mark (${examples})`,
  "log.affix": ({ column, examples }) => `${column} has text around each number (${examples}); the number was read`,
  "log.names-in-rows": ({ examples }) =>
    `names and units stand in cells of their own in every row (${examples}); taken as the header`,
  "log.cells-by-name": ({ count }) =>
    `${rows(count)} had the cells in another order or left some out; put in place by their names`,
  "log.interleaved-rows": ({ count, column }) =>
    `the instruments wrote on rows of their own; the rows with ${column} were kept, each with the mean of the readings of the others around it, and ${rows(count)} joined into them`,
  "log.clock-rollover": ({ count, column, examples }) =>
    `the counter in ${column} ran over ${times(count)} (${examples}); its times were carried on`,
  "log.hours-and-minutes": ({ column, examples }) =>
    `${column} holds times like ${examples} on few rows: taken as hours and minutes, not as minutes and seconds`,
  "log.unit-in-cell": ({ count, column, examples }) =>
    `${cells(count)} of ${column} in another unit than most (${examples}); converted`,
  "log.unit-disagrees": ({ column, examples }) =>
    `${column} has another unit behind its numbers (${examples}) than in its header; the one behind the numbers was taken`,
  "log.clock": ({ column, examples }) =>
    `${column} holds clock times (${examples}), read as seconds since the first of them`,
} satisfies Record<string, Telling>;

export type RepairCode = keyof typeof TELLINGS;

/** What was done instead, where a person refused the repair. */
const REFUSED: { readonly [C in RefusableRepair]: Telling } = {
  "log.comment": ({ count }) => `${lines(count)} with a comment mark read like any other, as you chose`,
  "log.repeated-header": ({ count }) =>
    `header repeated ${times(count)}, left out without taking it for a new start, as you chose`,
  "log.short-row": ({ count }) => `${rows(count)} with too few cells left out whole, as you chose`,
  "log.long-row": ({ count }) => `${rows(count)} with too many cells left out whole, as you chose`,
  "log.text-cell": ({ count, column, examples }) =>
    `${rows(count)} with text in ${column} (${examples}) left out whole, as you chose`,
  "log.other-decimals": ({ count, examples }) =>
    `${lines(count)} with numbers with the other decimal mark (${examples}) not read as decimals, as you chose`,
  "log.cut-line": () => "the file stops in the middle of this line; its last number was kept, as you chose",
  "log.interleaved-rows": ({ count, column }) =>
    `${rows(count)} without ${column} left as they are beside those with it, as you chose`,
  "log.clock-rollover": ({ count, column, examples }) =>
    `the counter in ${column} falls back ${times(count)} (${examples}); its times were left as they are, as you chose`,
};

const isRefusable = (code: RepairCode): code is RefusableRepair =>
  (REFUSABLE_REPAIRS as readonly string[]).includes(code);

const EXAMPLES = 3;
const EXAMPLE_LENGTH = 24;

interface Occurrence {
  readonly column?: number;
  readonly example?: string;
  readonly times?: number;
}

/** Collects repairs while a log is read; one entry a kind and column. */
export class RepairLedger {
  private readonly entries = new Map<string, Entry & { code: RepairCode }>();
  private readonly refused: ReadonlySet<RepairCode>;

  /** `refused`: repairs that a person does not want; they are still noted, with what was done instead. */
  constructor(refused: readonly RefusableRepair[] = []) {
    this.refused = new Set(refused);
  }

  refuses(code: RefusableRepair): boolean {
    return this.refused.has(code);
  }

  note(code: RepairCode, line: number, { column, example, times = 1 }: Occurrence = {}): void {
    const key = `${code} ${column ?? ""}`;
    let entry = this.entries.get(key);
    if (!entry) {
      entry = { code, count: 0, firstLine: line, column: column ?? null, examples: [] };
      this.entries.set(key, entry);
    }
    entry.count += times;
    entry.firstLine = Math.min(entry.firstLine, line);
    if (example !== undefined && entry.examples.length < EXAMPLES) addExample(entry.examples, example);
  }

  /** All repairs in the order of their first lines, told with the names that `columnName` gives. */
  repairs(columnName: (column: number) => string): Repair[] {
    return [...this.entries.values()]
      .sort((a, b) => a.firstLine - b.firstLine || (a.column ?? -1) - (b.column ?? -1))
      .map(({ code, count, firstLine, column, examples }) => {
        const refusable = isRefusable(code);
        const refused = refusable && this.refuses(code);
        const tell: Telling = refused ? REFUSED[code] : TELLINGS[code];
        const told = tell({ count, column: column === null ? "" : columnName(column), examples: examples.join(", ") });
        const first = count > 1 ? `first on line ${firstLine}` : `line ${firstLine}`;
        const message = `${told.charAt(0).toUpperCase()}${told.slice(1)}; ${first}.`;
        return { code, count, firstLine, message, ...(refusable && { refusable }), ...(refused && { refused }) };
      });
  }
}

function addExample(examples: string[], text: string): void {
  const trimmed = text.trim();
  const shown = `"${trimmed.length > EXAMPLE_LENGTH ? `${trimmed.slice(0, EXAMPLE_LENGTH)}…` : trimmed}"`;
  if (!examples.includes(shown)) examples.push(shown);
}

const counted = (count: number, noun: string) => `${count} ${noun}${count === 1 ? "" : "s"}`;
const lines = (count: number) => counted(count, "line");
const rows = (count: number) => counted(count, "row");
const cells = (count: number) => counted(count, "cell");
const times = (count: number) => (count === 1 ? "once" : `${count} times`);

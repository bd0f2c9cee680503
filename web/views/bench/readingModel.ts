import type { LogShape, Repair } from "../../../shared/model/log.ts";
import type { LogReading, RefusableRepair } from "../../../shared/model/reading.ts";
import type { Option } from "../../forms/SelectField.tsx";

/** Whatever keeps how its text is read: the recipe of a run, or its electrical log. */
export interface ReadAs {
  readonly reading?: LogReading;
}

/** What a switch beside a repair says while the repair is made, and while it is refused. */
const SWITCHES: { readonly [C in RefusableRepair]: readonly [string, string] } = {
  "log.comment": ["Read these lines as rows", "Leave comment lines out"],
  "log.repeated-header": ["No new start", "Take it as a new start"],
  "log.short-row": ["Leave these rows out whole", "Keep what is there"],
  "log.long-row": ["Leave these rows out whole", "Keep them without the surplus"],
  "log.text-cell": ["Leave these rows out whole", "Keep the other cells"],
  "log.other-decimals": ["Do not read them", "Read them as decimals"],
  "log.cut-line": ["Keep the last number", "Take it as missing"],
  "log.interleaved-rows": ["Leave the rows as they are", "Join the rows"],
  "log.clock-rollover": ["Leave the times as they are", "Carry the clock on"],
};

export interface RepairRow {
  readonly key: string;
  readonly message: string;
  readonly count: number;
  readonly firstLine: number;
  /** The switch, or null where nothing else could be done. */
  readonly change: { readonly text: string; readonly apply: <T extends ReadAs>(kept: T) => T } | null;
}

/** Each repair with its count, its first line and, where it can be undone, its switch. */
export function repairRows(repairs: readonly Repair[], reading: LogReading = {}): RepairRow[] {
  return repairs.map((repair, index) => {
    const { code, count, firstLine, message } = repair;
    return { key: `${code} ${index}`, message, count, firstLine, change: changeOf(repair, reading) };
  });
}

function changeOf({ code, refusable, refused }: Repair, { thousands }: LogReading): RepairRow["change"] {
  if (code === "log.unclear-mark") return thousandsChange("Read them as thousands", "always");
  if (code === "log.thousands") {
    return thousands === undefined
      ? thousandsChange("Do not read thousands", "never")
      : thousandsChange("Only where nothing else can be meant", undefined);
  }
  if (!refusable) return null;
  const one = code as RefusableRepair;
  return { text: SWITCHES[one][refused ? 1 : 0], apply: (kept) => withRepair(kept, one, !refused) };
}

function thousandsChange(text: string, thousands: LogReading["thousands"] | undefined): RepairRow["change"] {
  return { text, apply: (kept) => withReading(kept, { thousands }) };
}

/** `kept` with one repair refused, or made again. */
export function withRepair<T extends ReadAs>(kept: T, code: RefusableRepair, refuse: boolean): T {
  const others = (kept.reading?.refusedRepairs ?? []).filter((one) => one !== code);
  return withReading(kept, { refusedRepairs: refuse ? [...others, code] : others });
}

/** What may be stated about the text; undefined goes back to what the reader finds. */
export type ReadingChange = { readonly [K in keyof LogReading]?: LogReading[K] | undefined };

/** `kept` with a part of the reading stated or, where it is undefined, left to the reader again. */
export function withReading<T extends ReadAs>(kept: T, change: ReadingChange): T {
  const stated = Object.entries({ ...kept.reading, ...change }).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  return stated.length === 0 ? withoutReading(kept) : { ...kept, reading: Object.fromEntries(stated) as LogReading };
}

/** `kept` with all of the reading left to the reader. */
export function withoutReading<T extends ReadAs>(kept: T): T {
  const { reading: _former, ...others } = kept;
  return others as T;
}

export const AUTOMATIC = "";

const DELIMITER_NAMES: Record<string, string> = {
  "\t": "tab",
  ";": "semicolon ;",
  ",": "comma ,",
  "|": "bar |",
  " ": "blanks",
};

/** The choices of one mark, with what the reader found named beside the automatic one. */
export function delimiterOptions(shape: LogShape | null): Option<string>[] {
  return options(shape && (DELIMITER_NAMES[shape.delimiter] ?? shape.delimiter), Object.entries(DELIMITER_NAMES));
}

function decimalOptions(shape: LogShape | null): Option<string>[] {
  return options(shape?.decimalMark ?? null, [
    [".", "point: 12.5"],
    [",", "comma: 12,5"],
  ]);
}

function encodingOptions(shape: LogShape | null): Option<string>[] {
  const names = ["utf-8", "windows-1252", "utf-16le", "utf-16be"];
  return options(
    shape?.encoding ?? null,
    names.map((name) => [name, name] as const),
  );
}

const THOUSANDS_OPTIONS: Option<string>[] = [
  { value: AUTOMATIC, label: "Only where nothing else can be meant" },
  { value: "always", label: "Always: 1.234 or 1,234 is 1234" },
  { value: "never", label: "Never" },
];

function options(found: string | null, all: readonly (readonly [string, string])[]): Option<string>[] {
  const label = found === null ? "As found" : `As found (${found})`;
  return [{ value: AUTOMATIC, label }, ...all.map(([value, text]) => ({ value, label: text }))];
}

/** What may be stated of the marks in a text. */
export const MARKS: readonly {
  readonly key: "delimiter" | "decimalMark" | "thousands" | "encoding";
  readonly label: string;
  /** The act, for its undo. */
  readonly said: string;
  readonly options: (shape: LogShape | null) => Option<string>[];
}[] = [
  {
    key: "delimiter",
    label: "Between two cells",
    said: "Set what stands between cells",
    options: delimiterOptions,
  },
  { key: "decimalMark", label: "Decimal mark", said: "Set the decimal mark", options: decimalOptions },
  {
    key: "thousands",
    label: "Groups of three digits are thousands",
    said: "Set the thousands mark",
    options: () => THOUSANDS_OPTIONS,
  },
  { key: "encoding", label: "Encoding", said: "Set the encoding", options: encodingOptions },
];

type LineKey = "headerLine" | "firstDataLine";

/** What may be stated of where things stand in a text. */
export const LINES: readonly {
  readonly key: LineKey;
  readonly label: string;
  readonly said: string;
  readonly help: (shape: LogShape | null) => string;
}[] = [
  {
    key: "headerLine",
    label: "Header on line",
    said: "Set the line of the header",
    help: (shape) => `A line number, or “none”. Empty: as found (${shape?.headerLine ?? "none"}).`,
  },
  {
    key: "firstDataLine",
    label: "First line of numbers",
    said: "Set the first line of numbers",
    help: (shape) => `A line number. Empty: as found${shape === null ? "" : ` (${shape.firstDataLine})`}.`,
  },
];

const NO_HEADER = "none";

export function lineText(line: number | null | undefined): string {
  return line === undefined ? "" : line === null ? NO_HEADER : String(line);
}

/** Why a typed line can not be taken, or null where it can. */
export function lineProblem(key: LineKey, text: string): string | null {
  if (lineOf(text) !== null || isNoHeader(key, text)) return null;
  return `“${text.trim()}” is no line of a file. Needed: a whole number from 1${key === "headerLine" ? ", or “none”" : ""}.`;
}

/** `kept` with a line as it was typed. */
export function withLine<T extends ReadAs>(kept: T, key: LineKey, text: string): T {
  return withReading(kept, { [key]: isNoHeader(key, text) ? null : (lineOf(text) ?? undefined) });
}

const isNoHeader = (key: LineKey, text: string) => key === "headerLine" && text.trim().toLowerCase() === NO_HEADER;

/** A line number as typed: undefined for an empty field, null for what is no line of a file. */
export function lineOf(text: string): number | undefined | null {
  if (text.trim() === "") return undefined;
  const line = Number(text);
  return Number.isInteger(line) && line >= 1 ? line : null;
}

import type { LogShape, Repair } from "../../../shared/model/log.ts";
import type { LogReading, RefusableRepair } from "../../../shared/model/reading.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Option } from "../../forms/SelectField.tsx";

/** What a switch beside a repair says while the repair is made, and while it is refused. */
const SWITCHES: { readonly [C in RefusableRepair]: readonly [string, string] } = {
  "log.comment": ["Read these lines as rows", "Leave comment lines out"],
  "log.repeated-header": ["No new start", "Take it as a new start"],
  "log.short-row": ["Leave these rows out whole", "Keep what is there"],
  "log.long-row": ["Leave these rows out whole", "Keep them without the surplus"],
  "log.text-cell": ["Leave these rows out whole", "Keep the other cells"],
  "log.cut-line": ["Keep the last number", "Take it as missing"],
  "log.clock-rollover": ["Leave the times as they are", "Carry the clock on"],
};

export interface RepairRow {
  readonly key: string;
  readonly message: string;
  readonly count: number;
  readonly firstLine: number;
  /** The switch, or null where nothing else could be done. */
  readonly change: { readonly text: string; readonly apply: (recipe: Recipe) => Recipe } | null;
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
  return { text: SWITCHES[one][refused ? 1 : 0], apply: (recipe) => withRepair(recipe, one, !refused) };
}

function thousandsChange(text: string, thousands: LogReading["thousands"] | undefined): RepairRow["change"] {
  return { text, apply: (recipe) => withReading(recipe, { thousands }) };
}

/** The recipe with one repair refused, or made again. */
export function withRepair(recipe: Recipe, code: RefusableRepair, refuse: boolean): Recipe {
  const others = (recipe.reading?.refusedRepairs ?? []).filter((one) => one !== code);
  return withReading(recipe, { refusedRepairs: refuse ? [...others, code] : others });
}

/** What may be stated about the text; undefined goes back to what the reader finds. */
export type ReadingChange = { readonly [K in keyof LogReading]?: LogReading[K] | undefined };

/** The recipe with a part of the reading stated or, where it is undefined, left to the reader again. */
export function withReading(recipe: Recipe, change: ReadingChange): Recipe {
  const stated = Object.entries({ ...recipe.reading, ...change }).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  const { reading: _former, ...others } = recipe;
  return stated.length === 0 ? others : { ...others, reading: Object.fromEntries(stated) as LogReading };
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

export function decimalOptions(shape: LogShape | null): Option<string>[] {
  return options(shape?.decimalMark ?? null, [
    [".", "point: 12.5"],
    [",", "comma: 12,5"],
  ]);
}

export function encodingOptions(shape: LogShape | null): Option<string>[] {
  const names = ["utf-8", "windows-1252", "utf-16le", "utf-16be"];
  return options(
    shape?.encoding ?? null,
    names.map((name) => [name, name] as const),
  );
}

export const THOUSANDS_OPTIONS: Option<string>[] = [
  { value: AUTOMATIC, label: "Only where nothing else can be meant" },
  { value: "always", label: "Always: 1.234 or 1,234 is 1234" },
  { value: "never", label: "Never" },
];

function options(found: string | null, all: readonly (readonly [string, string])[]): Option<string>[] {
  const label = found === null ? "As found" : `As found (${found})`;
  return [{ value: AUTOMATIC, label }, ...all.map(([value, text]) => ({ value, label: text }))];
}

/** A line number as typed: undefined for an empty field, null for what is no line of a file. */
export function lineOf(text: string): number | undefined | null {
  if (text.trim() === "") return undefined;
  const line = Number(text);
  return Number.isInteger(line) && line >= 1 ? line : null;
}

import Papa from "papaparse";

/** Stands for any run of blanks and tabs between two cells. */
export const BLANKS = " ";

/** Cells of one line, and whether a quote was opened and never closed. */
export interface SplitLine {
  readonly cells: string[];
  readonly openQuote: boolean;
}

/**
 * Cells of each line. A line of a log ends where its text ends: an unclosed quote never reaches into the next line.
 * With "|" the outer bars of a drawn table are no cells; with `BLANKS` a run of blanks counts once.
 */
export function splitLines(lines: readonly string[], delimiter: string): SplitLine[] {
  const bare = lines.map((line) => bareLine(line, delimiter));
  if (!bare.some(hasOpenQuote)) {
    const rows = parse(bare.join("\n"), delimiter);
    if (rows.length === bare.length) return rows.map((cells) => ({ cells, openQuote: false }));
  }
  return bare.map((line) => splitOne(line, delimiter));
}

function hasOpenQuote(line: string): boolean {
  return line.includes('"') && line.split('"').length % 2 === 0;
}

function splitOne(line: string, delimiter: string): SplitLine {
  if (hasOpenQuote(line)) return { cells: line.replaceAll('"', "").split(delimiter), openQuote: true };
  return { cells: parse(line, delimiter)[0] ?? [""], openQuote: false };
}

function parse(text: string, delimiter: string): string[][] {
  // A single empty line comes back as no row at all.
  if (text === "") return [[""]];
  return Papa.parse<string[]>(text, { delimiter, newline: "\n", skipEmptyLines: false }).data;
}

/** A time of day and an arrow, as a serial terminal sets before each line that it shows. */
const ARRIVAL = /^(\d{1,2}:\d{2}:\d{2}(?:\.\d+)?)\s*->\s*/;

/** The same in brackets, with or without its day. */
const STAMPED = /^\[(?:(\d{4}-\d{2}-\d{2})[T ])?(\d{1,2}:\d{2}:\d{2}(?:[.,]\d+)?)\]\s*/;

/** A letter for the level, milliseconds and the part of the program that speaks: "I (1520) stand: ". */
const LEVELLED = /^[A-Z]{1,5}\s*\((\d+)\)\s+[\w-]+:\s*/;

/** "thrust: 2.5" is one cell, not two. */
const NAME_BEFORE_NUMBER = /([A-Za-z_]\w*[:=])[ \t]+(?=[+-]?[.\d])/g;

/** "345 g" is one cell too, where a name or a number follows. */
const UNIT_BEHIND_NUMBER =
  /([:=][+-]?[.\d][\d.,eE+-]*)[ \t]+([A-Za-z%°µΩ][\w%°µΩ/·]{0,7})(?=\s*$|\s+[A-Za-z_]\w*[:=])/g;

/** "ST,GS,+00123.4g" of a weighing indicator is one reading, though commas stand within it. */
const STATUS_BEFORE_NUMBER = /(^|[,;|\s])(ST|US|OL|UL),(GS|NT|TR),(?=\s*[+-]\s*\d)/g;

/** Weighing indicators set the sign apart: "- 12.3 g". A lone "-" before a bare number stands for a missing cell. */
const SIGN_APART = /(^|[\s:=])([+-])\s+(?=[\d.,]+\s*[A-Za-z])/g;

/** Colours of a terminal. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the escape character is what begins them
const COLOUR = /\u001b\[[\d;]*m/g;

/** Spreadsheets are kept from changing a text by ="12.3". */
const FORMULA_TEXT = /(^|[,;\t])=("[^"]*")/g;

/** An object a line: its names stand before its numbers; braces and quotes mean nothing more to a table. */
function withoutBraces(line: string): string {
  const object = line.trim();
  if (!/^\[?\s*\{.*\}\s*[\],]*$/.test(object)) return line;
  return object.replace(/[{}[\]"]|,\s*$/g, "").replace(/[A-Za-z_]\w*:\s*(?=[A-Za-z_]\w*:)/g, "");
}

/** What a terminal or a program sets before each line of its own, as a cell. */
function stampApart(text: string, delimiter: string): string {
  return text
    .replace(ARRIVAL, `$1${delimiter}`)
    .replace(STAMPED, (_, day: string | undefined, time: string) => `${day ? `${day}T` : ""}${time}${delimiter}`)
    .replace(LEVELLED, `ms=$1${delimiter}`);
}

function bareLine(text: string, delimiter: string): string {
  const arrived = withoutBraces(stampApart(text.replace(COLOUR, ""), delimiter).replace(FORMULA_TEXT, "$1$2"));
  const line = delimiter === "," ? arrived.replace(STATUS_BEFORE_NUMBER, "$1$2 $3 ") : arrived;
  if (delimiter === BLANKS)
    return line
      .replace(SIGN_APART, "$1$2")
      .replace(NAME_BEFORE_NUMBER, "$1")
      .replace(UNIT_BEHIND_NUMBER, "$1$2")
      .trim()
      .replace(/[\s\u00a0]+/g, BLANKS);
  if (delimiter !== "|") return line;
  const trimmed = line.trim();
  if (!trimmed.startsWith("|")) return trimmed;
  return trimmed.slice(1, trimmed.length > 1 && trimmed.endsWith("|") ? -1 : undefined);
}

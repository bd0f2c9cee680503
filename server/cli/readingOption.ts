import type { LogTable } from "../../shared/log/logTable.ts";
import { LogReading, REFUSABLE_REPAIRS } from "../../shared/model/reading.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Warning } from "../../shared/quantity/warning.ts";
import { checked } from "./checked.ts";
import type { Option, Words } from "./options.ts";

/** How the text of a log is read, where the reader does not settle it as it was meant. */
export const READING_OPTION = {
  read: {
    value: "HOW=WHAT",
    text: 'how the text is read, where what the program found is wrong: decimal-mark=",", between=tab (comma, semicolon, bar, blank), header=3 (or none), first-row=5, thousands=never (or always), encoding=windows-1252; without=CODE leaves a repair undone',
    many: true,
  },
} as const satisfies Record<string, Option>;

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  tab: "\t",
  comma: ",",
  semicolon: ";",
  bar: "|",
  blank: " ",
};

/** What each HOW sets. */
const FIELDS: Readonly<Record<string, (what: string) => Record<string, unknown>>> = {
  "decimal-mark": (what) => ({ decimalMark: what.replace("point", ".").replace("comma", ",") }),
  between: (what) => ({ delimiter: DELIMITER_WORDS[what] ?? what }),
  header: (what) => ({ headerLine: what === "none" ? null : numberIn(what) }),
  "first-row": (what) => ({ firstDataLine: numberIn(what) }),
  thousands: (what) => ({ thousands: what }),
  encoding: (what) => ({ encoding: what }),
};

/** What --read states about the text of a log. */
export function statedReading(words: Words): LogReading {
  const pairs = words.pairs("read");
  const stated = pairs.filter(([how]) => how !== "without").map(([how, what]) => fieldOf(how)(unquoted(what)));
  const refusedRepairs = pairs.filter(([how]) => how === "without").map(([, code]) => code);
  const document = Object.assign({}, ...stated, refusedRepairs.length > 0 ? { refusedRepairs } : {});
  return checked(LogReading, document, () => "read");
}

function fieldOf(how: string) {
  const field = Object.hasOwn(FIELDS, how) ? FIELDS[how] : undefined;
  if (field) return field;
  throw new InputProblem({
    code: "cli.not-one-of",
    where: "--read",
    found: `"${how}" is no way of reading`,
    needed: [...Object.keys(FIELDS), "without"].join(", "),
    mend: 'For example --read decimal-mark=","',
  });
}

/** Other text stays what it is, for the sentence that refuses it. */
const numberIn = (text: string) => (/^\d+$/.test(text) ? Number(text) : text);

const unquoted = (text: string) => text.replaceAll('"', "");

/** What was repaired while reading, told beside the result, with the way to have it otherwise. */
export function repairsOf({ fileName, repairs }: LogTable): Warning[] {
  return repairs.map(({ code, message, refused }) => {
    const isRefusable = !refused && (REFUSABLE_REPAIRS as readonly string[]).includes(code);
    const otherwise = isRefusable ? ` To leave that undone: --read without=${code}` : "";
    return { code, where: fileName, message: `${fileName}: ${message}${otherwise}` };
  });
}

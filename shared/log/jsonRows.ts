/** The records of one JSON text as lines with tabs between the cells. */
export interface JsonRows {
  readonly text: string;
  readonly records: number;
}

type Entries = ReadonlyMap<string, string>;

/**
 * Whether a text that begins like `head` is one JSON text over several lines, or all on one: an array of objects or of
 * arrays, or an object that holds them. A whole object on each line is a log of its own kind, read line by line.
 */
export function looksLikeJson(head: string): boolean {
  const text = head.trimStart();
  if (!/^(?:\[\s*[[{]|\{\s*(?:"|$))/.test(text)) return false;
  const end = text.search(/[\r\n]/);
  if (end < 0) return true;
  return text.slice(end).trim() === "" || parsed(text.slice(0, end)) === undefined;
}

/**
 * The rows of a JSON text: an array of objects or of arrays, wherever it stands in it, or arrays of one length under names.
 * Null where the text is no JSON or holds no table. Entries within entries are named by both names.
 *
 * Source   RFC 8259, The JavaScript Object Notation (JSON) Data Interchange Format, 2017.
 */
export function jsonRows(text: string): JsonRows | null {
  const records = recordsIn(parsed(text), DEEPEST);
  if (records.length === 0) return null;
  const isNamed = !records.some(Array.isArray);
  const rows = records.map(entriesOf);
  const names = [...new Set(rows.flatMap((row) => [...row.keys()]))];
  const header = isNamed ? [names.map(cellText).join("\t")] : [];
  const lines = rows.map((row) => names.map((name) => row.get(name) ?? "").join("\t"));
  return { text: `${[...header, ...lines].join("\n")}\n`, records: records.length };
}

/** Undefined for a text that is no JSON: that is no fault here, it is read line by line. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Objects within objects in which a table is looked for. */
const DEEPEST = 3;

const isHolder = (value: unknown): value is object => typeof value === "object" && value !== null;

/** The longest list of records in `value`. */
function recordsIn(value: unknown, depth: number): readonly object[] {
  if (Array.isArray(value)) return value.every(isHolder) ? value : [];
  if (!isHolder(value)) return [];
  const within = depth > 0 ? Object.values(value).map((entry) => recordsIn(entry, depth - 1)) : [];
  return [recordsOfColumns(value), ...within].reduce((longest, one) => (one.length > longest.length ? one : longest));
}

/** {"time": [0, 1], "thrust": [2, 3]}: two or more columns of one length. */
function recordsOfColumns(value: object): readonly object[] {
  const lists = Object.entries(value).filter(
    (entry): entry is [string, unknown[]] => Array.isArray(entry[1]) && !entry[1].some(isHolder),
  );
  const length = Math.max(0, ...lists.map(([, list]) => list.length));
  const columns = lists.filter(([, list]) => list.length === length);
  if (columns.length < 2) return [];
  return Array.from({ length }, (_, row) => Object.fromEntries(columns.map(([name, list]) => [name, list[row]])));
}

function entriesOf(record: object): Entries {
  const entries = new Map<string, string>();
  const add = (holder: object, before: string) => {
    for (const [key, value] of Object.entries(holder)) {
      const name = before === "" ? key : `${before} ${key}`;
      if (isHolder(value)) add(value, name);
      else entries.set(name, value === null ? "" : cellText(String(value)));
    }
  };
  add(record, "");
  return entries;
}

/** Nothing in it may pass for a mark between cells or lines. */
const cellText = (text: string) => text.replaceAll(/[\t\r\n"]/g, " ");

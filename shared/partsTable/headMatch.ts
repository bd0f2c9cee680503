import { unitNamed } from "./cellValue.ts";
import { headOf, type TableField, unitOfHead } from "./tableFields.ts";

/** What speaks for a head naming a value of the part. */
export interface HeadMatch {
  readonly field: TableField;
  readonly score: number;
  /** Unit that the head gives; null where it gives none. */
  readonly unit: string | null;
  /** Text in unit brackets that is no unit of the value; empty where there is none. */
  readonly strangeUnit: string;
  readonly reason: string;
}

/** Ways in which a unit stands behind a name; the first brackets first, for "rad/(V·s)" holds brackets of its own. */
const SPLITS = [
  /^(.*?\S)\s*[[({<](.+)[\])}>]\s*$/,
  /^(.*\S)\s*[[({<](.+)[\])}>]\s*$/,
  /^(.*\S)\s*[,/]\s*(\S.*)$/,
  /^(.*\S)\s+in\s+(\S+)$/,
  /^(.*\S)[\s_-]+(\S+)$/,
  /^(.*[a-z])([A-Z]\w*)$/,
];

/** All values of the part that a head may name, best first. */
export function headMatches(header: string, fields: readonly TableField[]): HeadMatch[] {
  return fields
    .flatMap((field) => matchOf(header, field) ?? [])
    .concat(unitAlone(header, fields))
    .sort((a, b) => b.score - a.score);
}

function matchOf(header: string, field: TableField): HeadMatch | null {
  if (header === headOf(field))
    return {
      field,
      score: 10,
      unit: unitOfHead(field),
      strangeUnit: "",
      reason: "The head is the one this program writes.",
    };
  const names = namesOf(field);
  const says = (name: string) => `The head says "${name.trim()}".`;
  for (const [at, pattern] of SPLITS.entries()) {
    const [, name = "", unitText = ""] = pattern.exec(header) ?? [];
    if (!names.has(plainWords(name))) continue;
    const unit = unitNamed(field, unitText);
    const score = 3 + nearness(names, name);
    if (unit !== null) return { field, score: score + 2, unit, strangeUnit: "", reason: says(name) };
    // Only brackets always hold a unit or a remark; behind other marks the words may go on.
    if (at === 0) return { field, score: score - 1, unit: null, strangeUnit: unitText, reason: says(name) };
  }
  if (!names.has(plainWords(header))) return null;
  return { field, score: 3 + nearness(names, header), unit: null, strangeUnit: "", reason: says(header) };
}

/** The words of the head itself are nearer than other words for the same. */
function nearness(names: ReadonlyMap<string, number>, name: string): number {
  return names.get(plainWords(name)) ?? 0;
}

function namesOf({ head, words, text, key }: TableField): ReadonlyMap<string, number> {
  const own = [head, text, key.split(".").at(-1)!].map((name) => [plainWords(name), 1] as const);
  return new Map([...words.map((word) => [plainWords(word), 0] as const), ...own].filter(([name]) => name !== ""));
}

/** A head that is nothing but a unit names the one value that has it. */
function unitAlone(header: string, fields: readonly TableField[]): HeadMatch[] {
  const having = fields.filter((field) => {
    const dimension = field.written?.dimension;
    const isCounted = dimension !== undefined && dimension !== "number" && dimension !== "fraction";
    return isCounted && !field.key.includes("ncertaint") && unitNamed(field, header) !== null;
  });
  const [field] = having;
  if (having.length !== 1 || !field) return [];
  const reason = `The head is a unit of ${field.head} and of nothing else here.`;
  return [{ field, score: 2, unit: unitNamed(field, header), strangeUnit: "", reason }];
}

/** Lower case, single blanks, "noLoadCurrent" and "no_load_current" alike. */
function plainWords(text: string): string {
  return text
    .normalize("NFKC")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replace(/[_\s]+/g, " ")
    .replace(/[.:]+$/, "")
    .replace(/(\w)-(?=\w)/g, "$1 ")
    .trim();
}

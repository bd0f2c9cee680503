import type { z } from "zod";
import { formatNumber } from "../../shared/quantity/format.ts";
import type { Problem } from "../../shared/quantity/problem.ts";
import { type FieldLabel, fieldOf } from "./fieldOf.ts";

type Issue = z.core.$ZodIssue;

/** What stands in a request at some place, and what the schema says of that place. */
interface Field extends FieldLabel {
  readonly where: string;
  readonly came: unknown;
}

type Words = Pick<Problem, "code" | "found" | "needed" | "mend">;

/**
 * The library's issue retold as a problem: with the value that came, its unit, and what to do.
 * `data` is what was checked against `schema`.
 */
export function fieldProblem(issue: Issue, schema: z.ZodType, data: unknown): Problem {
  const field = { where: placeOf(issue.path), came: valueAt(data, issue.path), ...fieldOf(schema, issue.path) };
  return { where: field.where, ...wordsFor(issue, field) };
}

function wordsFor(issue: Issue, field: Field): Words {
  switch (issue.code) {
    case "too_big":
      return limitWords("request.too-large", "is too large", "at most", issue.inclusive, issue.maximum, issue.origin, field);
    case "too_small":
      return limitWords("request.too-small", "is too small", "at least", issue.inclusive, issue.minimum, issue.origin, field);
    case "invalid_type":
      return typeWords(issue.expected, field);
    case "unrecognized_keys":
      return {
        code: "request.unknown-field",
        found: `There is no field called ${issue.keys.map((key) => `"${key}"`).join(", ")} here`,
        needed: "only the fields that /api/docs lists",
        mend: "Check the spelling or leave it out",
      };
    case "invalid_value":
      return choiceWords(issue.values.map(String), field);
    case "invalid_union":
      return choiceWords(((issue as { options?: readonly unknown[] }).options ?? []).map(String), field);
    case "invalid_format":
      return { code: "request.wrong-form", found: `${shown(field.came)} has another form`, needed: formOf(issue.format), mend: "" };
    default:
      return { code: "request.unusable", found: `${shown(field.came)} can not be used`, needed: field.description ?? "", mend: "" };
  }
}

function limitWords(
  code: string,
  isWhat: string,
  bound: string,
  inclusive: boolean | undefined,
  limit: number | bigint,
  origin: string,
  field: Field,
): Words {
  const above = bound === "at least" ? "more than" : "less than";
  const limitText = `${inclusive === false ? above : bound} ${formatLimit(Number(limit), origin, field.unit)}`;
  if (origin !== "number" && origin !== "int") {
    return { code, found: `${sizeOf(field.came, origin)} ${isWhat.replace("is too", "is too")}`, needed: limitText, mend: "" };
  }
  return { code, found: `${shown(field.came, field.unit)} ${isWhat}`, needed: limitText, mend: unitHint(field, Number(limit), code) };
}

function formatLimit(limit: number, origin: string, unit?: string): string {
  if (origin === "string") return `${limit} character${limit === 1 ? "" : "s"}`;
  if (origin === "array" || origin === "set") return `${limit} ${limit === 1 ? "entry" : "entries"}`;
  return withUnit(String(limit), unit);
}

function sizeOf(came: unknown, origin: string): string {
  const length = typeof came === "string" || Array.isArray(came) ? came.length : 0;
  return origin === "string" ? `A text of ${length} characters` : `A list of ${length} entries`;
}

/** A value a thousand (or a hundred) times too large is most likely a unit. */
function unitHint({ came, unit }: Field, limit: number, code: string): string {
  if (typeof came !== "number" || code !== "request.too-large") return "";
  if (unit === "m" && came / 1000 <= limit) return `If you meant millimetres, send ${Number((came / 1000).toPrecision(12))}`;
  if (unit === "1" && limit === 1 && came <= 100) return `If you meant per cent, send ${Number((came / 100).toPrecision(12))}`;
  return "";
}

const TYPE_NAMES: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "a text",
  boolean: "true or false",
  array: "a list",
  object: "an object",
  record: "an object",
  null: "null",
};

function typeWords(expected: string, { came, unit, description }: Field): Words {
  const kind = TYPE_NAMES[expected] ?? expected;
  const unitText = unit !== undefined && unit !== "1" ? ` in ${unit}` : "";
  const needed = `${kind}${unitText}${description === undefined ? "" : ` (${description})`}`;
  if (came === undefined) return { code: "request.missing", found: "This field is missing", needed, mend: "" };
  const mend = expected === "number" && typeof came === "string" ? "Numbers are sent in SI, without quotes or unit" : "";
  return { code: "request.wrong-type", found: `${shown(came)} is not ${kind}`, needed, mend };
}

function choiceWords(choices: readonly string[], { came }: Field): Words {
  const found = came === undefined ? "This field is missing" : `${shown(came)} is not one of the choices`;
  return { code: came === undefined ? "request.missing" : "request.unknown-choice", found, needed: choices.join(", "), mend: "" };
}

const FORMS: Readonly<Record<string, string>> = {
  uuid: "an id as the store gave it, like 123e4567-e89b-42d3-a456-426614174000",
  datetime: "a time like 2026-01-31T12:00:00Z",
};

const formOf = (format: string) => FORMS[format] ?? format;

const withUnit = (number: string, unit?: string) => (unit === undefined || unit === "1" ? number : `${number} ${unit}`);

function shown(came: unknown, unit?: string): string {
  if (typeof came === "number") return withUnit(plainNumber(came), unit);
  if (Array.isArray(came)) return `A list of ${came.length} entries`;
  if (typeof came === "object" && came !== null) return "An object";
  const text = JSON.stringify(came) ?? "Nothing";
  return text.length > 80 ? `${text.slice(0, 77)}..."` : text;
}

const plainNumber = (value: number) => (Math.abs(value) >= 1e12 ? formatNumber(value, 6) : String(value));

/** `document.recipe.tare.windows[1].start` */
function placeOf(path: readonly PropertyKey[]): string {
  const steps = path.map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`));
  return steps.join("").replace(/^\./, "");
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, step) => (value as Record<PropertyKey, unknown> | null | undefined)?.[step], data);
}

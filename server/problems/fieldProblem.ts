import type { z } from "zod";
import type { Problem } from "../../shared/quantity/problem.ts";
import { type FieldLabel, fieldOf } from "./fieldOf.ts";
import { limitWords } from "./limitWords.ts";
import { shownValue } from "./shownValue.ts";

type Issue = z.core.$ZodIssue;
type Words = Omit<Problem, "where">;

/** What came at some place of a request, and what the schema says of that place. */
export interface Field extends FieldLabel {
  readonly came: unknown;
}

/**
 * The library's issue retold as a problem: with the value that came, its unit, and what to do.
 * `data` is what was checked against `schema`.
 */
export function fieldProblem(issue: Issue, schema: z.ZodType, data: unknown): Problem {
  const field = { came: valueAt(data, issue.path), ...fieldOf(schema, issue.path) };
  return { where: placeOf(issue.path), ...wordsFor(issue, field) };
}

function wordsFor(issue: Issue, field: Field): Words {
  switch (issue.code) {
    case "too_big":
    case "too_small":
      return limitWords(issue, field);
    case "invalid_type":
      return typeWords(issue.expected, field);
    case "unrecognized_keys":
      return unknownFieldWords(issue.keys);
    case "invalid_value":
      return choiceWords(issue.values.map(String), field);
    case "invalid_union":
      return unionWords(issue, field);
    case "invalid_format":
      return formWords(issue.format, field);
    default:
      return otherWords(field);
  }
}

const TYPE_NAMES: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "a text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

function typeWords(expected: string, { came, unit, description }: Field): Words {
  const kind = TYPE_NAMES[expected] ?? expected;
  const unitText = unit !== undefined && unit !== "1" ? ` in ${unit}` : "";
  const needed = `${kind}${unitText}${description === undefined ? "" : ` (${description})`}`;
  if (came === undefined) return { code: "request.missing", found: "This field is missing", needed, mend: "" };
  const quoted = expected === "number" && typeof came === "string";
  const mend = quoted ? "Numbers are sent in SI, without quotes or unit" : "";
  return { code: "request.wrong-type", found: `${shownValue(came)} is not ${kind}`, needed, mend };
}

function unknownFieldWords(keys: readonly string[]): Words {
  return {
    code: "request.unknown-field",
    found: `There is no field called ${keys.map((key) => `"${key}"`).join(", ")} here`,
    needed: "only the fields that /api/docs lists",
    mend: "Check the spelling or leave it out",
  };
}

function choiceWords(choices: readonly string[], { came }: Field): Words {
  const needed = choices.join(", ");
  if (came === undefined) return { code: "request.missing", found: "This field is missing", needed, mend: "" };
  return { code: "request.unknown-choice", found: `${shownValue(came)} is not one of the choices`, needed, mend: "" };
}

/** A union with a discriminator lists what it may be; one without fits none of its forms. */
function unionWords(issue: z.core.$ZodIssueInvalidUnion, field: Field): Words {
  const { options } = issue as { options?: readonly unknown[] };
  if (options !== undefined) return choiceWords(options.map(String), field);
  const missing = issue.errors.flatMap((branch) =>
    branch.filter(({ code, path }) => code === "invalid_type" && path.length === 1).map(({ path }) => String(path[0])),
  );
  const needed = missing.length === 0 ? (field.description ?? "") : `one of ${[...new Set(missing)].join(", ")}`;
  return { code: "request.no-form-fits", found: `${shownValue(field.came)} fits none of the forms`, needed, mend: "" };
}

const FORMS: Readonly<Record<string, string>> = {
  uuid: "an id as the store gave it, like 123e4567-e89b-42d3-a456-426614174000",
  datetime: "a time like 2026-01-31T12:00:00Z",
};

function formWords(format: string, { came }: Field): Words {
  const found = `${shownValue(came)} has another form`;
  return { code: "request.wrong-form", found, needed: FORMS[format] ?? format, mend: "" };
}

function otherWords({ came, description = "" }: Field): Words {
  return { code: "request.unusable", found: `${shownValue(came)} can not be used`, needed: description, mend: "" };
}

/** `document.recipe.tare.windows[1].start` */
function placeOf(path: readonly PropertyKey[]): string {
  const steps = path.map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`));
  return steps.join("").replace(/^\./, "");
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  const step = (value: unknown, key: PropertyKey) => (value as Record<PropertyKey, unknown> | null | undefined)?.[key];
  return path.reduce<unknown>(step, data);
}

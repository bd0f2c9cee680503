import type { PartKind } from "../../../shared/model/parts/partKinds.ts";
import { documentWith, valueAt } from "../../../shared/model/parts/partValues.ts";
import { listOfText, textOfList } from "../../../shared/partsTable/listText.ts";
import { formatNumber } from "../../../shared/quantity/format.ts";
import { InputProblem } from "../../../shared/quantity/problem.ts";
import type { PartInput } from "../../api/client.ts";
import { KEPT_ASIDE, type PartField } from "./partFields.ts";

/** What stands in the fields of a form: SI numbers, texts, yes or no; null for an empty field. */
export type Draft = Readonly<Record<string, number | string | boolean | null>>;

type Plain = Readonly<Record<string, unknown>>;

/** Stands in a field for "there is none", which is another thing than an empty field. */
export const NONE = "none";

/** A draft of a stored part, or an empty one. */
export function draftOf(fields: readonly PartField[], part: Plain | null): Draft {
  return Object.fromEntries(fields.map((field) => [field.key, draftValue(field, valueAt(part, field.key))]));
}

function draftValue({ kind, key, leaf }: PartField, value: unknown): Draft[string] {
  if (value === null && leaf.nullable) return NONE;
  if (value === undefined || value === null)
    return kind === "words" || kind === "list" ? "" : kind === "yesNo" ? false : null;
  return kind === "list" ? textOfList(key, value) : (value as Draft[string]);
}

/** Whether a field holds nothing. */
const isEmpty = (value: Draft[string] | undefined) => value === null || value === undefined || value === "";

/** The document inside the part that a field belongs to; null for the part itself. */
const outerOf = (key: string) => (key.includes(".") ? key.split(".")[0]! : null);

/** What is missing or not allowed, by field; empty when the draft can be stored. */
export function draftProblems(fields: readonly PartField[], draft: Draft): Readonly<Record<string, string>> {
  const begun = new Set(fields.filter(({ key }) => !isEmpty(draft[key])).map(({ key }) => outerOf(key)));
  const found = fields.flatMap((field) => {
    const problem = problemOf(field, draft[field.key] ?? null, begun);
    return problem === null ? [] : [[field.key, problem]];
  });
  return { ...wayProblems(fields, draft, begun), ...(Object.fromEntries(found) as Record<string, string>) };
}

function problemOf(field: PartField, value: Draft[string], begun: ReadonlySet<string | null>): string | null {
  const outer = outerOf(field.key);
  if (isEmpty(value)) {
    if (field.leaf.optional) return null;
    if (outer === null) return field.kind === "words" ? field.check("") : "Needed: a value with its unit.";
    return begun.has(outer) ? "Needed: it goes with the other values here." : null;
  }
  if (value === NONE && field.leaf.nullable) return null;
  if (field.kind !== "list") return field.check(value);
  try {
    return field.check(listOfText(field.key, String(value)));
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown.message;
    throw thrown;
  }
}

/** Where the same can be stated in several ways, one of them is needed and no second one. */
function wayProblems(
  fields: readonly PartField[],
  draft: Draft,
  begun: ReadonlySet<string | null>,
): Record<string, string> {
  const ways = fields.filter(({ key, leaf }) => leaf.way !== null && begun.has(outerOf(key)));
  const filled = ways.filter(({ key }) => !isEmpty(draft[key]));
  if (ways.length === 0 || filled.length === 1) return {};
  const told =
    filled.length === 0
      ? "Needed: one of section, AWG number or resistance."
      : "Only one of section, AWG number and resistance.";
  return { [(filled[1] ?? ways[0]!).key]: told };
}

/**
 * The document to store. Empty optional fields are left away, so that the schema's own defaults hold. `part`: the one
 * that was changed; correlations of its constants are kept while constants and uncertainties are as they were.
 */
export function documentOf<K extends PartKind>(
  fields: readonly PartField[],
  draft: Draft,
  part: Plain | null = null,
): PartInput<K> {
  const kept = fields
    .filter(({ key, leaf }) => !isEmpty(draft[key]) || (draft[key] === "" && !leaf.optional))
    .map((field) => [field.leaf, storedValue(field, draft[field.key]!)] as const);
  const aside = KEPT_ASIDE.flatMap((key) => (part?.[key] === undefined ? [] : [[key, part[key]] as const]));
  return withCorrelations({ ...documentWith(kept), ...Object.fromEntries(aside) }, part) as PartInput<K>;
}

function storedValue({ kind, key, leaf }: PartField, value: NonNullable<Draft[string]>): unknown {
  if (leaf.nullable && value === NONE) return null;
  if (kind === "list") return listOfText(key, String(value));
  return typeof value === "string" ? value.trim() : value;
}

const CONSTANTS = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const;

/** Correlations belong to one identification: a constant typed anew ends them. */
function withCorrelations(document: Record<string, unknown>, part: Plain | null): Record<string, unknown> {
  const correlations = valueAt(part, "uncertainties.correlations");
  const same = (key: string) => (valueAt(document, key) ?? 0) === (valueAt(part, key) ?? 0);
  const kept = CONSTANTS.every((name) => same(name) && same(`uncertainties.${name}`));
  if (correlations === undefined || !kept) return document;
  return { ...document, uncertainties: { ...(document["uncertainties"] as Plain), correlations } };
}

/** A number in a unit of its own, as typed; null while it can not be read. */
export function numberFrom(text: string, factor = 1): number | null {
  const number = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(number) ? null : number * factor;
}

/** The number a field shows. */
export function numberText(value: number | null, factor = 1): string {
  if (value === null) return "";
  return value === 0 ? "0" : String(Number((value / factor).toPrecision(6)));
}

/** How a stored value is shown in a table. */
export function shownNumber(
  value: number,
  { unit, factor }: { readonly unit: string; readonly factor: number },
): string {
  return `${formatNumber(value / factor, 3)} ${unit}`;
}

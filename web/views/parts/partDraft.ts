import type { PartKind } from "../../../shared/model/parts/partKinds.ts";
import { formatNumber } from "../../../shared/quantity/format.ts";
import type { PartInput } from "../../api/client.ts";
import { KEPT_ASIDE, type PartField } from "./partFields.ts";

/** What stands in the fields of a form: SI numbers, texts, yes or no; null for an empty field. */
export type Draft = Readonly<Record<string, number | string | boolean | null>>;

/** A draft of a stored part, or an empty one. */
export function draftOf(fields: readonly PartField[], part: Readonly<Record<string, unknown>> | null): Draft {
  return Object.fromEntries(
    fields.map((field) => [field.key, (valueIn(part, field.key) as Draft[string] | undefined) ?? emptyOf(field)]),
  );
}

type Plain = Readonly<Record<string, unknown>>;

/** The value of "key", or of "outer.inner". */
export function valueIn(part: Plain | null | undefined, key: string): unknown {
  const [outer, inner] = key.split(".");
  const value = part?.[outer!];
  return inner === undefined ? value : (value as Plain | undefined)?.[inner];
}

function emptyOf({ kind }: PartField): Draft[string] {
  if (kind === "words") return "";
  return kind === "yesNo" ? false : null;
}

/** What is missing or not allowed, by field; empty when the draft can be stored. */
export function draftProblems(fields: readonly PartField[], draft: Draft): Readonly<Record<string, string>> {
  const found = fields.flatMap((field) => {
    const value = draft[field.key] ?? null;
    if (value === null || (value === "" && field.optional))
      return field.optional ? [] : [[field.key, "Needed: a value with its unit."]];
    const problem = field.check(value);
    return problem === null ? [] : [[field.key, problem]];
  });
  return Object.fromEntries(found) as Record<string, string>;
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
    .map(({ key, optional }) => [key, draft[key] ?? null, optional] as const)
    .filter(([, value, optional]) => value !== null && !(value === "" && optional))
    .map(([key, value]) => [key, typeof value === "string" ? value.trim() : value]);
  const aside = KEPT_ASIDE.flatMap((key) => (part?.[key] === undefined ? [] : [[key, part[key]] as const]));
  const typed = { ...nested(kept as [string, unknown][]), ...Object.fromEntries(aside) };
  return withCorrelations(typed, part) as PartInput<K>;
}

function nested(entries: readonly (readonly [string, unknown])[]): Record<string, unknown> {
  const whole: Record<string, unknown> = {};
  for (const [key, value] of entries) {
    const [outer, inner] = key.split(".");
    whole[outer!] = inner === undefined ? value : { ...(whole[outer!] as Plain | undefined), [inner]: value };
  }
  return whole;
}

const CONSTANTS = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const;

/** Correlations belong to one identification: a constant typed anew ends them. */
function withCorrelations(document: Record<string, unknown>, part: Plain | null): Record<string, unknown> {
  const correlations = valueIn(part, "uncertainties.correlations");
  const same = (key: string) => (valueIn(document, key) ?? 0) === (valueIn(part, key) ?? 0);
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

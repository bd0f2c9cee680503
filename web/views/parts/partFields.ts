import type { z } from "zod";
import { PART_SCHEMAS, type PartKind } from "../../../shared/model/parts/partKinds.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";

interface Shared {
  readonly key: string;
  readonly label: string;
  readonly optional: boolean;
  /** How to come by the value. */
  readonly help: string | undefined;
  /** What the schema says is wrong with a value, or null. */
  readonly check: (value: unknown) => string | null;
}

/** One field of a form, as the schema of the part describes it. */
export type PartField = Shared &
  (
    | { readonly kind: "quantity"; readonly symbol: string; readonly dimension: Dimension; readonly unit: string }
    | { readonly kind: "scaled"; readonly symbol: string; readonly unit: string; readonly factor: number }
    | { readonly kind: "count" }
    | { readonly kind: "yesNo" }
    | { readonly kind: "words"; readonly lines: number; readonly maxLength: number }
  );

/** How builders write each SI unit: dimension to read it in, and the unit it is first shown in. */
const WRITTEN: Readonly<Record<string, { readonly dimension: Dimension; readonly unit: string }>> = {
  m: { dimension: "length", unit: "mm" },
  "rad/(V·s)": { dimension: "speedConstant", unit: "rpm/V" },
  Ω: { dimension: "resistance", unit: "mΩ" },
  A: { dimension: "current", unit: "A" },
  V: { dimension: "voltage", unit: "V" },
  W: { dimension: "power", unit: "W" },
  C: { dimension: "charge", unit: "Ah" },
  "1": { dimension: "number", unit: "1" },
};

/** Units that no one types: the number is given for a step people think in. */
const SCALED: Readonly<Record<string, { readonly unit: string; readonly factor: number }>> = {
  "A·s/rad": { unit: "A per 1000 rpm", factor: 60 / (1000 * 2 * Math.PI) },
};

/** Texts that the schema has no words for. */
const LABELS: Readonly<Record<string, string>> = {
  name: "Name",
  note: "Note",
  finish: "Surface finish",
  material: "Material",
  nozzle: "Runs in a nozzle",
};
/** How a builder comes by a value. The figures are common practice, no source. */
const HELP: Readonly<Record<string, string>> = {
  diameterUncertainty: "How sure the diameter is, as a standard uncertainty: about 0.1 mm with callipers.",
  chordAt07: "Width of the blade there; gives the blade Reynolds number.",
  pitchRatio: "Pitch over diameter, as drawn.",
  noLoadCurrent: "Current of the motor turning free in air, without propeller.",
  noLoadCurrentSlope: "From free runs at two voltages or more. Empty: the no-load current is taken as constant.",
  polePairs: "Magnets on the rotor divided by two; needed where a log counts electrical turns.",
  openCircuitVoltage: "Without load, as full as the vehicle will use it.",
};
const NOTE_LENGTH = 4000;

/** Parts of a document that have a panel of their own and are kept as they are by the form. */
export const KEPT_ASIDE: readonly string[] = ["geometry"];

/** The fields of a kind of part, in the order of its schema; those of a document inside it are "outer.inner". */
export function fieldsOf(kind: PartKind): PartField[] {
  return Object.entries(PART_SCHEMAS[kind].shape).flatMap(([key, schema]) => {
    if (KEPT_ASIDE.includes(key)) return [];
    const { inner } = unwrapped(schema as z.ZodType);
    if (inner.type !== "object") return [fieldOf(key, schema as z.ZodType)];
    const { shape } = inner as z.ZodObject;
    // Lists inside come from a computation and are not typed.
    const typed = Object.entries(shape).filter(([, one]) => unwrapped(one as z.ZodType).inner.type !== "array");
    return typed.map(([name, one]) => fieldOf(`${key}.${name}`, one as z.ZodType));
  });
}

function fieldOf(key: string, schema: z.ZodType): PartField {
  const { inner, optional } = unwrapped(schema);
  const { description = "", symbol = "", unit } = (inner.meta() ?? {}) as Record<string, string | undefined>;
  const label =
    LABELS[key] ?? (unit && description.endsWith(`, ${unit}`) ? description.slice(0, -unit.length - 2) : description);
  const shared = { key, label, optional, help: HELP[key], check: (value: unknown) => refusal(inner, value) };
  const type = inner.type;
  if (type === "boolean") return { ...shared, kind: "yesNo" };
  if (type === "string") {
    const long = key === "note";
    return { ...shared, kind: "words", lines: long ? 3 : 1, maxLength: long ? NOTE_LENGTH : 120 };
  }
  if (unit === undefined) return { ...shared, kind: "count" };
  const scaled = SCALED[unit];
  if (scaled) return { ...shared, kind: "scaled", symbol, ...scaled };
  return { ...shared, kind: "quantity", symbol, ...WRITTEN[unit]! };
}

/** The schema inside "optional" and "default". */
function unwrapped(schema: z.ZodType): { readonly inner: z.ZodType; readonly optional: boolean } {
  const wrapped = (schema as { unwrap?: () => z.ZodType }).unwrap;
  if (schema.type !== "optional" && schema.type !== "default") return { inner: schema, optional: false };
  return { inner: unwrapped(wrapped!.call(schema)).inner, optional: true };
}

/** The schema's refusal in the words of this page; the library's own sentences name neither value nor mend. */
function refusal(schema: z.ZodType, value: unknown): string | null {
  const result = schema.safeParse(value);
  const issue = result.error?.issues[0];
  if (!issue) return null;
  if (issue.code === "too_small" && issue.origin === "string") return "Needed: a name.";
  if (issue.code === "too_small")
    return `Needed: ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}${siOf(schema)}.`;
  if (issue.code === "too_big" && issue.origin === "string")
    return `Too long. Needed: at most ${issue.maximum} characters.`;
  if (issue.code === "too_big") return `Needed: at most ${issue.maximum}${siOf(schema)}. Is the unit right?`;
  if (issue.code === "invalid_type" && issue.expected === "int") return "Needed: a whole number.";
  return "Needed: a number.";
}

function siOf(schema: z.ZodType): string {
  const unit = schema.meta()?.["unit"];
  return typeof unit === "string" && unit !== "1" ? ` ${unit}` : "";
}

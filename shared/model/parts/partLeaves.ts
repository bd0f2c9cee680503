import { z } from "zod";
import type { Dimension } from "../../quantity/units.data.ts";
import { PART_SCHEMAS, type PartKind } from "./partKinds.ts";
import { writtenUnit } from "./partUnits.ts";

/** One value that a kind of part can hold, however deep it stands in the document. */
export interface PartLeaf {
  /** Path in the document: "resistance", "command.stop", "lead.size.area". */
  readonly key: string;
  /** The part may be without it. Inside a document that is optional as a whole, it may be asked for once that is begun. */
  readonly optional: boolean;
  /** Null is a value of its own: "there is none". */
  readonly nullable: boolean;
  readonly type: "number" | "whole" | "text" | "yesNo" | "list" | "document";
  /** Schema of the value, without optional, default and null around it. */
  readonly schema: z.ZodType;
  /** What it is, without its unit. */
  readonly text: string;
  readonly symbol: string;
  /** Unit of the stored number as printed; empty for texts and counts. */
  readonly unit: string;
  /** The name that is kept beside the value where it is one of several ways to state the same; null elsewhere. */
  readonly way: { readonly key: string; readonly given: string } | null;
  /** How people write it; null where it has no unit or only one. */
  readonly written: { readonly dimension: Dimension; readonly unit: string } | null;
}

/** Documents inside a part that are taken as one value: no row of a table or form holds them. */
const WHOLE = new Set(["geometry"]);

/** Every value a kind of part can hold, in the order of its schema. */
export function leavesOf(kind: PartKind): PartLeaf[] {
  return leavesIn(PART_SCHEMAS[kind].shape, "");
}

type Shape = Readonly<Record<string, z.ZodType>>;

function leavesIn(shape: Shape, path: string): PartLeaf[] {
  return Object.entries(shape).flatMap(([name, schema]) => leavesAt(`${path}${name}`, schema));
}

function leavesAt(key: string, schema: z.ZodType): PartLeaf[] {
  const { inner } = unwrapped(schema);
  if (inner instanceof z.ZodObject && !WHOLE.has(key)) return leavesIn(inner.shape, `${key}.`);
  // One of several ways to state the same: each with its own value, beside the name of the way.
  if (inner instanceof z.ZodUnion)
    return inner.options.flatMap((option) => (option instanceof z.ZodObject ? leavesOfWay(option.shape, key) : []));
  return [leafOf(key, schema)];
}

function leavesOfWay({ given, ...values }: Shape, key: string): PartLeaf[] {
  const way = { key: `${key}.given`, given: given instanceof z.ZodLiteral ? String(given.value) : "" };
  return leavesIn(values, `${key}.`).map((leaf) => ({ ...leaf, optional: true, way }));
}

function leafOf(key: string, schema: z.ZodType): PartLeaf {
  const { inner, optional, nullable, description } = unwrapped(schema);
  const meta = inner.meta() ?? {};
  const symbol = String(meta["symbol"] ?? "");
  const unit = String(meta["unit"] ?? pulseUnit(description));
  const text = unit !== "" && description.endsWith(`, ${unit}`) ? description.slice(0, -unit.length - 2) : description;
  const written = writtenUnit(key, unit);
  return { key, optional, nullable, type: typeOf(inner), schema: inner, text, symbol, unit, way: null, written };
}

/** Pulses are kept in µs, which is no SI unit and so stands in their description alone. */
const pulseUnit = (description: string) => (/, µs\b/.test(description) ? "µs" : "");

function typeOf(schema: z.ZodType): PartLeaf["type"] {
  if (schema.type === "boolean") return "yesNo";
  if (schema.type === "string") return "text";
  if (schema.type === "array") return "list";
  if (schema.type === "object") return "document";
  return schema instanceof z.ZodNumber && schema.format === "safeint" ? "whole" : "number";
}

interface Unwrapped {
  readonly inner: z.ZodType;
  readonly optional: boolean;
  readonly nullable: boolean;
  readonly description: string;
}

const isWrapped = (schema: z.ZodType): schema is z.ZodType & { readonly unwrap: () => z.ZodType } =>
  schema.type === "optional" || schema.type === "default" || schema.type === "nullable";

/** The schema inside "optional", "default" and "or null", with the words that stand outermost. */
function unwrapped(schema: z.ZodType): Unwrapped {
  const description = schema.description ?? "";
  if (!isWrapped(schema)) return { inner: schema, optional: false, nullable: false, description };
  const inside = unwrapped(schema.unwrap());
  return {
    inner: inside.inner,
    optional: inside.optional || schema.type !== "nullable",
    nullable: inside.nullable || schema.type === "nullable",
    description: description || inside.description,
  };
}

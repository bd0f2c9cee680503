import { z } from "zod";

/** What the schema says of a field: its unit, and what it was called in words. */
export interface FieldLabel {
  readonly unit?: string;
  readonly description?: string;
}

/** The label of the field that `path` leads to; empty where the schema says nothing. */
export function fieldOf(schema: z.ZodType, path: readonly PropertyKey[]): FieldLabel {
  const [step, ...rest] = path;
  if (step === undefined) return labelOf(schema);
  for (const inner of membersAt(bare(schema), step)) {
    const label = fieldOf(inner, rest);
    if (label.unit !== undefined || label.description !== undefined) return label;
  }
  return {};
}

/** The label nearest to the outside: an optional or defaulted field may carry it, or the number within. */
function labelOf(schema: z.ZodType): FieldLabel {
  const { unit, description } = (schema.meta() ?? {}) as FieldLabel;
  if (unit !== undefined || description !== undefined) {
    return { ...(unit !== undefined && { unit }), ...(description !== undefined && { description }) };
  }
  const inner = innerOf(schema);
  return inner === undefined ? {} : labelOf(inner);
}

function innerOf(schema: z.ZodType): z.ZodType | undefined {
  return (schema.def as { innerType?: z.ZodType }).innerType;
}

function bare(schema: z.ZodType): z.ZodType {
  const inner = innerOf(schema);
  return inner === undefined ? schema : bare(inner);
}

function membersAt(schema: z.ZodType, step: PropertyKey): readonly z.ZodType[] {
  if (schema instanceof z.ZodObject) return step in schema.shape ? [schema.shape[String(step)] as z.ZodType] : [];
  if (schema instanceof z.ZodArray) return [schema.element as z.ZodType];
  if (schema instanceof z.ZodRecord) return [schema.valueType as z.ZodType];
  if (schema instanceof z.ZodTuple) return schema.def.items.slice(Number(step), Number(step) + 1) as z.ZodType[];
  // Which branch was meant is not known here; the first that has such a member and says something of it will do.
  if (schema instanceof z.ZodUnion)
    return schema.options.flatMap((option) => membersAt(bare(option as z.ZodType), step));
  return [];
}

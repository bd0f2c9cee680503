import type { z } from "zod";

/** The schema's refusal of a value in plain words, or null; the library's own sentences name neither value nor mend. */
export function leafRefusal(schema: z.ZodType, value: unknown): string | null {
  const issue = schema.safeParse(value).error?.issues[0];
  if (!issue) return null;
  if (issue.code === "too_small" && issue.origin === "string") return "Needed: a name.";
  if (issue.code === "too_small" && issue.origin === "array") return `Needed: ${issue.minimum} pairs or more.`;
  if (issue.code === "too_small")
    return `Needed: ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}${siOf(schema)}.`;
  if (issue.code === "too_big" && issue.origin === "string")
    return `Too long. Needed: at most ${issue.maximum} characters.`;
  if (issue.code === "too_big") return `Needed: at most ${issue.maximum}${siOf(schema)}. Is the unit right?`;
  if (issue.code === "invalid_type" && issue.expected === "int") return "Needed: a whole number.";
  return schema.type === "array" || schema.type === "object"
    ? "Needed: the pairs as in the help."
    : "Needed: a number.";
}

function siOf(schema: z.ZodType): string {
  const unit = schema.meta()?.["unit"];
  return typeof unit === "string" && unit !== "1" ? ` ${unit}` : "";
}

import type { z } from "zod";
import { sentence } from "../../shared/quantity/problem.ts";
import { fieldProblem } from "../problems/fieldProblem.ts";
import { unfitDocument } from "./bundleProblems.ts";

/** `value` as a document of `schema`. Throws InputProblem `bundle.unfit-document` that tells the first field that does not fit. */
export function fitted<S extends z.ZodType>(schema: S, value: unknown, name: string): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw unfitDocument(name, issue ? sentence(fieldProblem(issue, schema, value)) : "It can not be used");
}

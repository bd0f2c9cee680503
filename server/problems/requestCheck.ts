import type { FastifySchemaCompiler } from "fastify";
import type { z } from "zod";
import { type Problem, sentence } from "../../shared/quantity/problem.ts";
import { fieldProblem } from "./fieldProblem.ts";

/** A request whose body, address or query does not fit the schema of its route. */
export class UnfitRequest extends Error {
  constructor(readonly problems: readonly [Problem, ...Problem[]]) {
    super(problems.map(sentence).join(" "));
  }
}

/** Checks a part of a request and tells what does not fit in our own words. */
export const checkRequest: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data) => {
    const parsed = schema.safeParse(data);
    if (parsed.success) return { value: parsed.data };
    const [first, ...rest] = parsed.error.issues.map((issue) => from(httpPart, fieldProblem(issue, schema, data)));
    return { error: new UnfitRequest([first as Problem, ...rest]) };
  };

const PARTS: Readonly<Record<string, string>> = {
  body: "body",
  params: "address",
  querystring: "query",
  headers: "headers",
};

/** A problem with a field is told from the field; one with the whole part needs a name for it. */
function from(httpPart: string | undefined, problem: Problem): Problem {
  const part = PARTS[httpPart ?? ""] ?? "request";
  if (problem.where === "") return { ...problem, where: part };
  return httpPart === "body" ? problem : { ...problem, where: `${part}: ${problem.where}` };
}

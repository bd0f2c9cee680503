import type { z } from "zod";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { fieldProblem } from "../problems/fieldProblem.ts";

/**
 * `data` as a document of `schema`; `optionOf` names the option that a field came from.
 * Throws InputProblem for the first field that does not fit, told from its option.
 */
export function checked<S extends z.ZodType>(
  schema: S,
  data: unknown,
  optionOf: (field: string) => string | undefined,
): z.output<S> {
  const parsed = schema.safeParse(data);
  if (parsed.success) return parsed.data;
  const problem = fieldProblem(parsed.error.issues[0]!, schema, data);
  const option = optionOf(problem.where);
  throw new InputProblem({ ...problem, where: option === undefined ? problem.where : `--${option}` });
}

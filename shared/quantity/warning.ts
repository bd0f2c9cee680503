import { type Problem, sentence } from "./problem.ts";

/** Something a reader must know next to a result that exists all the same. */
export interface Warning {
  readonly code: string;
  /** The whole sentence, ready to show. */
  readonly message: string;
  /** File, row, column, plateau or field it is about. */
  readonly where: string;
}

/** A warning with the same words that the problem would have as a refusal. */
export function warning(problem: Problem): Warning {
  return { code: problem.code, message: sentence(problem), where: problem.where };
}

/**
 * A failure as data: what was found, where, what would be right and what to do about it.
 * The sentence is made in one place (`sentence`), so screen, API and command line say the same words.
 */
export interface Problem {
  /** `room.kebab-case`, never reused for another meaning. */
  readonly code: string;
  /** The place: an option, a file with row and column, a field path. */
  readonly where: string;
  /** What came, with its value. */
  readonly found: string;
  /** What would be right. */
  readonly needed: string;
  /** What to do now. */
  readonly mend: string;
}

/** One readable line: `where: found. Needed: needed. mend.` */
export function sentence(problem: Problem): string {
  const parts = [problem.found, problem.needed && `Needed: ${problem.needed}`, problem.mend]
    .filter((part) => part !== "")
    .map((part) => (/[.!?]$/.test(part) ? part : `${part}.`));
  return `${problem.where === "" ? "" : `${problem.where}: `}${parts.join(" ")}`;
}

/** Someone's text, file or form can not be used as it stands. */
export class InputProblem extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(sentence(problem));
    this.name = "InputProblem";
    this.problem = problem;
  }

  /** The same problem, told from the place where the reader of the message is looking. */
  at(where: string): InputProblem {
    return new InputProblem({ ...this.problem, where });
  }
}

/** A physical quantity lies outside what a formula is defined for. */
export class OutOfDomain extends Error {
  readonly problem: Problem;

  constructor(problem: Omit<Problem, "code" | "where"> & Partial<Pick<Problem, "code" | "where">>) {
    const whole = { code: "quantity.out-of-domain", where: "", ...problem };
    super(sentence(whole));
    this.name = "OutOfDomain";
    this.problem = whole;
  }
}

/** Runs `action`; an input problem that comes out of it is told from `where`. */
export function tellingFrom<T>(where: string, action: () => T): T {
  try {
    return action();
  } catch (error) {
    if (error instanceof InputProblem) throw error.at(where);
    throw error;
  }
}

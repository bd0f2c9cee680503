import type { Problem } from "../../shared/quantity/problem.ts";
import { sentence } from "../../shared/quantity/problem.ts";

/** The thing that was asked for is not kept here, or was deleted. */
export class NothingThere extends Error {
  readonly problem: Problem;

  constructor(kind: string, id: string) {
    const problem: Problem = {
      code: "store.nothing-there",
      where: `${kind} ${id}`,
      found: "There is no such thing in the store, or it was deleted",
      needed: "",
      mend: "Read the list again; a deleted one can be restored",
    };
    super(sentence(problem));
    this.problem = problem;
  }
}

/** Someone else changed the document since it was read; nothing was written. */
export class StaleVersion extends Error {
  readonly problem: Problem;
  readonly currentVersion: number;

  constructor(kind: string, id: string, named: number, current: number) {
    const problem: Problem = {
      code: "store.stale-version",
      where: `${kind} ${id}`,
      found: `It was changed meanwhile: version ${current} is stored, the change was made to version ${named}`,
      needed: "",
      mend: "Read it again and make the change to what is stored now. Nothing was overwritten",
    };
    super(sentence(problem));
    this.problem = problem;
    this.currentVersion = current;
  }
}

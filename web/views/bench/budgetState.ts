import { signal } from "@preact/signals";
import type { MonteCarlo, RunBudget } from "../../../shared/model/budget.ts";
import { watchMonteCarlo } from "../../api/client.ts";
import { openProjectId } from "../../app/session.ts";

/** A check of the intervals of one reduction: running, done, or refused. */
export interface Check {
  /** The budget that was checked: a check of an older one is not shown beside a newer. */
  readonly of: RunBudget;
  readonly fraction: number;
  readonly result: MonteCarlo | null;
  readonly problem: string;
}

export const check = signal<Check | null>(null);
let stop: (() => void) | null = null;

/** Starts the check; one that runs is given up. */
export function startCheck(runId: string, of: RunBudget): void {
  stopCheck();
  check.value = { of, fraction: 0, result: null, problem: "" };
  stop = watchMonteCarlo(openProjectId(), runId, {
    progress: (fraction) => change(of, { fraction }),
    outcome: (result) => change(of, { result }),
    problem: ({ message }) => change(of, { problem: message }),
  });
}

/** Gives up what runs; a result that is there stays. */
export function stopCheck(): void {
  stop?.();
  stop = null;
  if (check.peek()?.result === null) check.value = null;
}

function change(of: RunBudget, more: Partial<Check>): void {
  const now = check.peek();
  if (now?.of === of) check.value = { ...now, ...more };
}

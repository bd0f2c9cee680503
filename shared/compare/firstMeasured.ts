/** A run in the order of entry. */
export interface EnteredRun {
  readonly id: string;
  /** Day it was made, ISO 8601, where stated. */
  readonly day?: string | undefined;
}

export interface GroupOfRuns {
  readonly name: string;
  readonly ids: readonly string[];
}

export interface FirstMeasured {
  readonly name: string;
  /** Earliest day, where every run states its day and they are not all the same; null: the first that was entered. */
  readonly day: string | null;
}

/**
 * The group that a builder measured first, which the others are held against until somebody says otherwise: by the days of
 * its runs where all of them state one, else by the order in which they were entered. Null without runs.
 */
export function firstMeasured(groups: readonly GroupOfRuns[], entered: readonly EnteredRun[]): FirstMeasured | null {
  const groupOf = new Map(groups.flatMap(({ name, ids }) => ids.map((id) => [id, name] as const)));
  const runs = entered.filter(({ id }) => groupOf.has(id));
  const days = runs.flatMap(({ day }) => (day === undefined ? [] : [day]));
  const told = days.length === runs.length && new Set(days).size > 1;
  // ISO days sort as text. Of several runs of one day the first that was entered leads.
  const day = told ? [...days].sort()[0]! : null;
  const first = runs.find((run) => day === null || run.day === day);
  return first === undefined ? null : { name: groupOf.get(first.id)!, day };
}

/** Why it is this one, a sentence: what is taken unasked is told. */
export function firstInWords({ day }: FirstMeasured): string {
  return day === null ? "Its first run was entered first." : `It was measured first, on ${day}.`;
}

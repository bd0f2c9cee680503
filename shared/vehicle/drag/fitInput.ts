import { median } from "../../numeric/median.ts";
import { InputProblem } from "../../quantity/problem.ts";

/** Steps of a log longer than this many usual ones are gaps. */
const GAP = 1.5;

/** Throws InputProblem `vehicle.fit-lengths` or `vehicle.fit-not-a-number` where columns can not be laid beside each other. */
export function requireColumns(columns: Readonly<Record<string, readonly number[] | undefined>>): void {
  const given = Object.entries(columns).filter((entry): entry is [string, readonly number[]] => entry[1] !== undefined);
  const [first] = given;
  for (const [name, values] of given) {
    const row = values.findIndex((value) => !Number.isFinite(value));
    if (row >= 0) {
      throw new InputProblem({
        code: "vehicle.fit-not-a-number",
        where: `${name}, row ${row + 1}`,
        found: "the cell holds no number",
        needed: "a number in every row",
        mend: "Leave the row out",
      });
    }
    if (values.length !== first![1].length) {
      throw new InputProblem({
        code: "vehicle.fit-lengths",
        where: name,
        found: `${values.length} rows of ${name}, but ${first![1].length} rows of ${first![0]}`,
        needed: "as many of each",
        mend: "Look for a missing cell",
      });
    }
  }
}

/** Throws InputProblem `vehicle.fit-too-few` below `needed` rows. */
export function requireRows(count: number, needed: number, what: string): void {
  if (count >= needed) return;
  throw new InputProblem({
    code: "vehicle.fit-too-few",
    where: what,
    found: `${count} ${count === 1 ? "row" : "rows"}`,
    needed: `at least ${needed}`,
    mend: "Measure more points",
  });
}

/** Which rows of a log come one usual step after the one before. Throws InputProblem `vehicle.fit-time-order`. */
export function followingRows(time: readonly number[]): boolean[] {
  const steps = time.slice(1).map((t, i) => t - time[i]!);
  const back = steps.findIndex((step) => !(step > 0));
  if (back >= 0) {
    throw new InputProblem({
      code: "vehicle.fit-time-order",
      where: `time, row ${back + 2}`,
      found: `the time goes from ${time[back]} s to ${time[back + 1]} s`,
      needed: "times that rise from row to row",
      mend: "Sort the rows, or cut the log where the logger started again",
    });
  }
  if (steps.length === 0) return time.map(() => false);
  const usual = median(steps);
  return time.map((_, i) => i > 0 && steps[i - 1]! <= GAP * usual);
}

import type { LogInspection, RoleGuess } from "../model/log.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { columnName } from "./columnName.ts";
import { guessRoles } from "./guessRoles.ts";
import type { LogTable } from "./logTable.ts";
import { LONGEST_NOTEBOOK } from "./notebook.ts";
import { ROLE_NAMES } from "./roleUnits.ts";

/** First look at a log: its shape, what each column seems to be, a few rows, and what a person should look at. */
export function inspectLog(table: LogTable): LogInspection {
  const guesses = guessRoles(table);
  const { shape, preview, rows, repairs } = table;
  return {
    shape,
    guesses,
    preview: preview.map((row) => [...row]),
    rows,
    repairs: [...repairs],
    warnings: [...timeWarnings(table, guesses), ...missingRoles(table, guesses), ...unsureRoles(table, guesses)],
  };
}

function timeWarnings(table: LogTable, guesses: readonly RoleGuess[]): Warning[] {
  const guess = guesses.find(({ role }) => role === "time");
  if (!guess) {
    // Readings written down row by row need no clock: each row is a plateau of its own.
    if (table.rows <= LONGEST_NOTEBOOK) return [];
    return [
      warning({
        code: "log.no-time",
        where: table.fileName,
        found: "no column looks like time",
        needed: "a time column to find steady stretches by their length",
        mend: "Say which column it is",
      }),
    ];
  }
  const { backwards, repeated } = timeFaults(table.columns[guess.column]!);
  const name = columnName(table.shape, guess.column);
  const time = table.columns[guess.column]!;
  const at = (row: number) => `${table.fileName}, line ${table.lineNumbers[row]}`;
  const warnings: Warning[] = [];
  if (backwards.count > 0) {
    const { row, before } = backwards;
    warnings.push(
      warning({
        code: "log.time-jumps-back",
        where: at(row),
        found: `time in ${name} jumps back ${times(backwards.count)}, first in row ${row + 1} from ${formatNumber(time[before]!, 6)} to ${formatNumber(time[row]!, 6)} ${guess.unit}`,
        needed: "time that goes on",
        mend: table.restarts.includes(row)
          ? "The logger started again there: the header stands above that row once more"
          : "The logger may have started again, or two logs stand in one file",
      }),
    );
  }
  if (repeated.count > 0) {
    warnings.push(
      warning({
        code: "log.time-repeats",
        where: at(repeated.row),
        found: `${repeated.count} row${repeated.count === 1 ? " has" : "s have"} the same time in ${name} as the row before, first row ${repeated.row + 1}`,
        needed: "",
        mend: "The clock of the logger is coarser than its rows, or rows were written twice",
      }),
    );
  }
  return warnings;
}

interface Fault {
  count: number;
  /** The first row it shows in, from 0. */
  row: number;
  /** The row with a time before it. */
  before: number;
}

function timeFaults(time: Float64Array): { backwards: Fault; repeated: Fault } {
  const backwards: Fault = { count: 0, row: 0, before: 0 };
  const repeated: Fault = { count: 0, row: 0, before: 0 };
  let last = -1;
  for (let row = 0; row < time.length; row++) {
    if (Number.isNaN(time[row]!)) continue;
    const step = last < 0 ? 1 : time[row]! - time[last]!;
    const fault = step < 0 ? backwards : step === 0 ? repeated : null;
    if (fault && fault.count++ === 0) Object.assign(fault, { row, before: last });
    last = row;
  }
  return { backwards, repeated };
}

function missingRoles(table: LogTable, guesses: readonly RoleGuess[]): Warning[] {
  const needed = ["thrust", "rotationRate"] as const;
  return needed
    .filter((role) => guesses.every((guess) => guess.role !== role))
    .map((role) =>
      warning({
        code: role === "thrust" ? "log.no-thrust" : "log.no-rotation-rate",
        where: table.fileName,
        found: `no column looks like ${ROLE_NAMES[role]}`,
        needed: `${ROLE_NAMES[role]} for the coefficients of the propeller`,
        mend: "Say which column it is",
      }),
    );
}

function unsureRoles(table: LogTable, guesses: readonly RoleGuess[]): Warning[] {
  return guesses
    .filter(({ sure }) => !sure)
    .map(({ column, role, unit, reason, alternatives }) =>
      warning({
        code: "log.unsure-role",
        where: `${table.fileName}, ${columnName(table.shape, column)}`,
        found: role === "ignore" ? "not used for now" : `taken as ${ROLE_NAMES[role]} in ${unit} for now`,
        needed: "",
        mend: [reason, ...alternatives.map((other) => alternativeIn(other, role)), "Please look"].join(" "),
      }),
    );
}

/** "In kg, the largest thrust would be 12.3 N.": which of the readings it would be, where only the unit differs. */
function alternativeIn({ role, unit, implies }: RoleGuess["alternatives"][number], taken: RoleGuess["role"]): string {
  const sameRole = role === taken && unit !== "" && unit !== "1";
  return sameRole ? `In ${unit}, ${implies[0]!.toLowerCase()}${implies.slice(1)}` : implies;
}

function times(count: number): string {
  return count === 1 ? "once" : `${count} times`;
}

import type { RoleGuess } from "../model/log.ts";
import type { ColumnRole } from "../model/recipe.ts";
import { columnName } from "./columnName.ts";
import { type ColumnStatistics, columnStatistics } from "./columnStatistics.ts";
import type { LogTable } from "./logTable.ts";
import { powerLawEvidence } from "./powerLaw.ts";
import { type Evidence, evidenceSentence, roleEvidence } from "./roleEvidence.ts";
import { ROLE_NAMES } from "./roleUnits.ts";
import { guessUnit } from "./unitGuess.ts";

/** Scores this close leave both readings open. */
const CLOSE = 1;

/**
 * What each column of `table` stands for and in which unit, with the reason, how sure that is, and the other readings
 * that make sense. No role is given twice; the second best column for a role is left out and says so.
 */
export function guessRoles(table: LogTable): RoleGuess[] {
  const statistics = columnStatistics(table);
  const ofColumns = roleEvidence(table.shape, statistics);
  const evidence = [...ofColumns, ...powerLawEvidence(table, statistics, ofColumns)].sort((a, b) => b.score - a.score);
  const given = assign(evidence);
  return table.shape.columns.map((_, column) => {
    const best = [...given.values()].find((taken) => taken.column === column);
    return best
      ? guessFor(table, best, evidence, statistics[column]!)
      : leftOut(table, column, evidence, given, statistics[column]!);
  });
}

/** The strongest evidence is served first. */
function assign(evidence: readonly Evidence[]): Map<ColumnRole, Evidence> {
  const given = new Map<ColumnRole, Evidence>();
  const taken = new Set<number>();
  for (const one of evidence) {
    if (given.has(one.role) || taken.has(one.column)) continue;
    given.set(one.role, one);
    taken.add(one.column);
  }
  return given;
}

function guessFor(
  table: LogTable,
  best: Evidence,
  evidence: readonly Evidence[],
  numbers: ColumnStatistics,
): RoleGuess {
  const { column, role } = best;
  const described = table.shape.columns[column]!;
  const units = guessUnit({ role, column: described, numbers });
  const rivals = evidence.filter(
    (other) => other.column === column && other.role !== role && best.score - other.score <= CLOSE,
  );
  const twin = evidence.find(
    (other) => other.column !== column && other.role === role && best.score - other.score < CLOSE,
  );
  const isDisputed = twin !== undefined && role !== "temperature";
  const asides = [
    units.reason === "" ? "" : `${units.reason.charAt(0).toUpperCase()}${units.reason.slice(1)}.`,
    isDisputed ? `As much speaks for ${columnName(table.shape, twin.column)}.` : "",
  ];
  return {
    column,
    role,
    unit: units.unit,
    reason: [evidenceSentence(best), ...asides].filter((part) => part !== "").join(" "),
    sure: units.sure && rivals.length === 0 && !isDisputed && (best.isNamed || role === "time"),
    alternatives: [...units.alternatives, ...rivals.map((rival) => readingAs(table, rival, numbers))],
  };
}

/** Another role that the column could have. */
function readingAs(table: LogTable, rival: Evidence, numbers: ColumnStatistics): RoleGuess["alternatives"][number] {
  const { unit } = guessUnit({ role: rival.role, column: table.shape.columns[rival.column]!, numbers });
  return {
    role: rival.role,
    unit,
    implies: `The column would be the ${ROLE_NAMES[rival.role]}: ${rival.reasons.join(" and ")}.`,
  };
}

function leftOut(
  table: LogTable,
  column: number,
  evidence: readonly Evidence[],
  given: ReadonlyMap<ColumnRole, Evidence>,
  numbers: ColumnStatistics,
): RoleGuess {
  const ignored = { column, role: "ignore", unit: "1" } as const;
  if (numbers.count === 0) {
    return { ...ignored, reason: "Not used: the column holds no numbers.", sure: true, alternatives: [] };
  }
  const wanted = evidence.filter((other) => other.column === column);
  const first = wanted[0];
  if (!first) {
    const header = table.shape.columns[column]!.header;
    const why = header === "" ? "nothing in its numbers says what it is" : `nothing says that "${header}" is needed`;
    return { ...ignored, reason: `Not used: ${why}.`, sure: header !== "", alternatives: [] };
  }
  const winner = given.get(first.role)!;
  return {
    ...ignored,
    reason: `Not used: it looks like the ${ROLE_NAMES[first.role]} too, which is taken from ${columnName(table.shape, winner.column)}.`,
    sure: winner.score - first.score >= CLOSE || first.role === "temperature",
    alternatives: wanted.map((other) => readingAs(table, other, numbers)),
  };
}

import type { LogShape } from "../model/log.ts";
import { ColumnRole } from "../model/recipe.ts";
import { formatNumber } from "../quantity/format.ts";
import type { ColumnStatistics } from "./columnStatistics.ts";
import { isUnit } from "./headerText.ts";
import { rolesNamed, saysOther, secondChoiceWord } from "./headerWords.ts";
import { ROLE_NAMES, roleUnit } from "./roleUnits.ts";
import type { NamedRole } from "./roleWords.data.ts";

/** How much speaks for one column having one role, and what. */
export interface Evidence {
  readonly column: number;
  readonly role: NamedRole;
  readonly score: number;
  /** Parts of a sentence. */
  readonly reasons: readonly string[];
  /** The header or the unit says so, not the numbers alone. */
  readonly isNamed: boolean;
}

const ROLES: readonly NamedRole[] = ColumnRole.exclude(["ignore"]).options;

/** Evidence below this is too little to give a column a role. */
const ENOUGH = 2;

/** All readings of the columns that have enough speaking for them, best first. */
export function roleEvidence(shape: LogShape, statistics: readonly ColumnStatistics[]): Evidence[] {
  const all = shape.columns.flatMap((column, index) => {
    const numbers = statistics[index]!;
    if (numbers.count === 0) return [];
    return ROLES.map((role) => weigh(column, index, role, numbers)).filter(({ score }) => score >= ENOUGH);
  });
  return all.sort((a, b) => b.score - a.score || a.column - b.column);
}

type Column = LogShape["columns"][number];

function weigh(column: Column, index: number, role: NamedRole, numbers: ColumnStatistics): Evidence {
  const reasons: string[] = [];
  let score = 0;
  const named = rolesNamed(column.header).find((match) => match.role === role);
  if (named) {
    score += named.strength === 2 ? 4 : 2;
    reasons.push(`the header says "${named.words}"`);
  }
  const fits = unitWorth(column, role);
  score += fits;
  if (fits > 0) reasons.push(`its unit is "${column.unit}"`);
  const isNamed = score > 0;
  if (saysOther(column.header)) score -= 6;
  const second = secondChoiceWord(column.header);
  if (second !== undefined) score -= 1.5;
  const pattern = patternWorth(role, numbers, index);
  // A header that says something else outweighs what its numbers happen to look like.
  if (isNamed || column.header === "") score += pattern.worth;
  if (pattern.worth > 0 && (isNamed || column.header === "")) reasons.push(pattern.says);
  return { column: index, role, score, reasons, isNamed };
}

/** A unit speaks for the roles that can have it and against all others. */
function unitWorth({ unit }: Column, role: NamedRole): number {
  if (unit === null) return 0;
  if (roleUnit(role, unit) !== undefined) return role === "command" || role === "time" ? 2 : 3;
  return isUnit(unit) ? -4 : 0;
}

interface Pattern {
  readonly worth: number;
  readonly says: string;
}

const NO_PATTERN: Pattern = { worth: 0, says: "" };

/** What the numbers alone say for a role. The limits are those of small electric thrusters; common practice, no source. */
function patternWorth(role: NamedRole, numbers: ColumnStatistics, index: number): Pattern {
  const { low, high, median, rising, falling, resting, allWhole } = numbers;
  switch (role) {
    case "time": {
      const isRising = rising > 0.7 && falling < 0.01;
      if (isRising) return { worth: index === 0 ? 2.5 : 2, says: "its numbers only rise" };
      return { worth: falling > 0.2 ? -3 : 0, says: "" };
    }
    case "command": {
      const isPulse = low >= 500 && high <= 2500 && median >= 900 && high - low >= 20;
      if (isPulse && resting + rising > 0.5)
        return { worth: 2, says: "its numbers stay between 1000 and 2000 in steps" };
      return NO_PATTERN;
    }
    case "voltage": {
      const isSteady = low > 3 && high < 70 && (high - low) / median < 0.4 && high > low;
      return isSteady && !allWhole
        ? { worth: 2, says: "its numbers hardly change, like a battery voltage" }
        : NO_PATTERN;
    }
    case "rotationRate":
      return low >= 0 && low < high / 2 && high > 500 && allWhole && rising < 0.9
        ? { worth: 2, says: "its numbers are the size of rpm" }
        : NO_PATTERN;
    case "current":
      return low > -1 && high < 200 && high > 0.2 && low < high / 5
        ? { worth: 1, says: `its numbers go from nearly 0 to ${formatNumber(high)}` }
        : NO_PATTERN;
    default:
      return NO_PATTERN;
  }
}

/** "the header says "rpm" and its numbers are the size of rpm", as one sentence about `role`. */
export function evidenceSentence({ role, reasons }: Evidence): string {
  return `Taken as ${ROLE_NAMES[role]}: ${reasons.join(" and ")}.`;
}

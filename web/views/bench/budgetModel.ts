import { inWords } from "../../../shared/bench/whatHalves.ts";
import type { Budget, BudgetRow, MonteCarlo, MonteCarloResult, RunBudget } from "../../../shared/model/budget.ts";
import { formatInterval, formatNumber, formatUncertain } from "../../../shared/quantity/format.ts";
import { counts } from "../../app/words.ts";

export interface BudgetBar {
  readonly name: string;
  /** A or B, as the Guide calls the two ways to know a doubt. */
  readonly kind: string;
  readonly input: string;
  readonly effect: string;
  /** Share of the variance, 0 to 1. */
  readonly share: number;
  readonly shareText: string;
  readonly degreesOfFreedom: string;
}

export interface BudgetTable {
  readonly quantity: Budget["quantity"];
  readonly title: string;
  readonly symbol: string;
  readonly bars: readonly BudgetBar[];
  /** Causes that bring so little that they are folded away, and what they bring together; null where none. */
  readonly small: { readonly bars: readonly BudgetBar[]; readonly text: string } | null;
  /** Combined: standard uncertainty, coverage factor, degrees of freedom, interval. */
  readonly combined: string;
  readonly halving: string;
}

const QUANTITIES = {
  thrustCoefficient: { title: "Thrust coefficient", symbol: "K_T" },
  powerCoefficient: { title: "Power coefficient", symbol: "C_P" },
  staticMerit: { title: "Static merit", symbol: "FM" },
} as const;

/** The budgets of a run as they are shown. */
export function budgetTables(budget: RunBudget): BudgetTable[] {
  return (Object.keys(QUANTITIES) as Budget["quantity"][]).flatMap((quantity) => {
    const one = budget[quantity];
    return one === null ? [] : [tableOf(one)];
  });
}

/** The greatest causes in one line: "calibration of the thrust 61 %, diameter 22 %". */
export function leadingCauses({ rows }: Budget, most = 3): string {
  return rows
    .slice(0, most)
    .map((row) => `${row.name} ${shareText(row.share)}`)
    .join(", ");
}

function tableOf(budget: Budget): BudgetTable {
  const { quantity, rows, result, coverageFactor, degreesOfFreedom, halving } = budget;
  const relative = (100 * result.standardUncertainty) / Math.abs(result.value);
  return {
    ...QUANTITIES[quantity],
    quantity,
    bars: rows.filter(isGreat).map((row) => barOf(row, result.value)),
    small: smallCauses(
      rows.filter((row) => !isGreat(row)),
      result.value,
    ),
    combined: `${formatUncertain(result)} at 95 %: standard uncertainty ${formatNumber(relative, 2)}\u202f% times ${formatNumber(coverageFactor, 3)} for ${degreesText(degreesOfFreedom)} effective degrees of freedom.`,
    halving: halving.sentence,
  };
}

/** Share of the variance from which on a cause is shown at first. */
const GREAT_SHARE = 0.01;
const isGreat = ({ share }: BudgetRow) => share >= GREAT_SHARE;

function smallCauses(rows: readonly BudgetRow[], value: number): BudgetTable["small"] {
  if (rows.length === 0) return null;
  const share = rows.reduce((sum, row) => sum + row.share, 0);
  const text = `${counts(rows.length, "smaller cause")}, together ${shareText(share)}`;
  return { bars: rows.map((row) => barOf(row, value)), text };
}

function barOf(row: BudgetRow, value: number): BudgetBar {
  const effect = (100 * row.standardUncertainty) / Math.abs(value);
  return {
    name: row.name,
    kind: row.kind,
    input: inWords(row, 1) ?? "",
    effect: `${formatNumber(effect, 2)}\u202f%`,
    share: row.share,
    shareText: shareText(row.share),
    degreesOfFreedom: degreesText(row.degreesOfFreedom),
  };
}

function shareText(share: number): string {
  return share < 0.005 ? "under 1\u202f%" : `${Math.round(100 * share)}\u202f%`;
}

/** Beyond this many the Student factor differs from that of infinitely many by under 0.3 %. */
const MANY = 1000;

function degreesText(degrees: number | null): string {
  return degrees === null || degrees > MANY ? "many" : formatNumber(degrees, degrees < 10 ? 2 : 3);
}

export interface CheckedInterval {
  readonly symbol: string;
  readonly drawn: string;
  readonly firstOrder: string;
  readonly verdict: string;
}

export interface CheckText {
  readonly answer: string;
  readonly rows: readonly CheckedInterval[];
}

/** What the draws say of the published intervals. */
export function checkText({ draws, seed, results }: MonteCarlo): CheckText {
  const apart = results.filter(({ agrees }) => !agrees).map(({ quantity }) => QUANTITIES[quantity].symbol);
  const many = `${draws.toLocaleString("en").replaceAll(",", "\u202f")} draws (seed ${seed})`;
  return {
    answer: answerOf(results, apart, many),
    rows: results.map((result) => ({
      symbol: QUANTITIES[result.quantity].symbol,
      drawn: formatInterval(result.interval95),
      firstOrder: formatInterval(result.firstOrder95),
      verdict: verdictOf(result),
    })),
  };
}

function answerOf(results: readonly MonteCarloResult[], apart: readonly string[], many: string): string {
  if (results.length === 0) return `${many} can not tell: some input is so uncertain that a draw has no coefficient.`;
  if (apart.length === 0) return `${many} confirm the intervals.`;
  return `${many} give other intervals for ${apart.join(" and ")} than the budget: trust the drawn ones there.`;
}

function verdictOf({ agrees, settled, difference, tolerance, mean }: MonteCarloResult): string {
  const part = (size: number) => `${formatNumber((100 * size) / Math.abs(mean), 1)}\u202f%`;
  const ends = `ends differ by ${part(difference)} of the coefficient, allowed ${part(tolerance)}`;
  const verdict = `${agrees ? "Agrees" : "Does not agree"}: ${ends}.`;
  return settled ? verdict : `${verdict} More draws would still move them.`;
}

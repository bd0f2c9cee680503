import type { CoefficientFit, Reduction } from "../../../shared/model/reduction.ts";
import { formatNumber, formatUncertain } from "../../../shared/quantity/format.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { counts } from "../../app/words.ts";
import { NEWTON } from "./shownUnits.ts";

export interface Fact {
  readonly symbol: string;
  readonly name: string;
  readonly value: string;
  readonly meaning: string;
}

/** Every coefficient of a run with what it means in a phrase. */
export function coefficientFacts(reduction: Reduction): Fact[] {
  const { thrustCoefficient, powerCoefficient, torqueCoefficient, staticMerit, exponent, intercept } = reduction;
  const source = powerSourceText(reduction);
  return [
    fact(
      "K_T",
      "Thrust coefficient",
      thrustCoefficient,
      "Thrust over ρ n² D⁴: how hard it pushes at a given rotation rate.",
    ),
    fact("C_P", "Power coefficient", powerCoefficient, `Shaft power over ρ n³ D⁵. ${source}`),
    fact("K_Q", "Torque coefficient", torqueCoefficient, "Shaft torque over ρ n² D⁵: the power coefficient over 2π."),
    fact(
      "FM",
      "Static merit",
      staticMerit,
      "Ideal shaft power over real shaft power for the same thrust. An open propeller stays below 1.",
    ),
    fact(
      "e",
      "Exponent",
      exponent,
      exponent === null ? "" : departure(exponent, 2, "thrust grows with the square of the rotation rate"),
    ),
    {
      symbol: "T_i",
      name: "Intercept",
      value: formatUncertain(intercept, NEWTON),
      meaning: departure(intercept, 0, "no thrust is left at zero rotation rate"),
    },
  ].filter((one) => one !== null);
}

export interface ComponentBar {
  readonly name: string;
  readonly value: string;
  /** Share of the variance, 0 to 1. */
  readonly share: number;
  readonly shareText: string;
}

/** The causes of doubt of a coefficient, the greatest first, each with its share of the variance. */
export function componentBars({ components, independentUncertainty, coefficient }: CoefficientFit): ComponentBar[] {
  const own = { name: "scatter and readings of the single plateaus", standardUncertainty: independentUncertainty };
  const all = [own, ...components];
  const total = all.reduce((sum, one) => sum + one.standardUncertainty ** 2, 0);
  return all
    .sort((a, b) => b.standardUncertainty - a.standardUncertainty)
    .map(({ name, standardUncertainty }) => {
      const share = total > 0 ? standardUncertainty ** 2 / total : 0;
      const relative = (100 * standardUncertainty) / Math.abs(coefficient.value);
      return {
        name,
        value: `${formatNumber(relative, 2)}\u202f% of the coefficient`,
        share,
        shareText: share > 0 && share < 0.005 ? "under 1\u202f%" : `${Math.round(100 * share)}\u202f%`,
      };
    });
}

/** How well the points agree with their own doubts. */
export function scatterText({ scatterRatio, points, degreesOfFreedom }: CoefficientFit): string {
  const known = degreesOfFreedom > 100 ? "more than 100" : formatNumber(degreesOfFreedom, 2);
  const base = `${counts(points, "point")}, ${known} effective degrees of freedom.`;
  if (scatterRatio < 1.05) return `${base} The points agree with the line within their own doubts.`;
  return `${base} The points scatter ${formatNumber(scatterRatio, 2)} times as much as their own doubts explain; the uncertainty was widened by that factor.`;
}

/** File, hash, rows and program that a result rests on. */
export function provenance({ source }: Reduction): string {
  const rows = source.rows.toLocaleString("en").replaceAll(",", "\u202f");
  return `From ${source.fileName}, SHA-256 ${source.sha256.slice(0, 12)}…, ${rows} rows, computed by ${source.program}.`;
}

export function powerSourceText({ powerSource }: Pick<Reduction, "powerSource">): string {
  if (powerSource === "torque") return "Shaft power from the measured torque.";
  if (powerSource === "motorConstants") return "Shaft power from voltage, current and the motor's constants.";
  return "";
}

function fact(symbol: string, name: string, quantity: Uncertain | null, meaning: string): Fact | null {
  return quantity === null ? null : { symbol, name, value: formatUncertain(quantity), meaning };
}

function departure({ interval95: [low, high] }: Uncertain, theory: number, claim: string): string {
  const agrees = low <= theory && theory <= high;
  return agrees
    ? `Theory says ${theory}: ${claim}. The interval holds it.`
    : `Theory says ${theory}: ${claim}. The interval does not hold it: look for friction, a wrong tare or a dead band.`;
}

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
    intercept && {
      symbol: "T_i",
      name: "Intercept",
      value: formatUncertain(intercept, NEWTON),
      meaning: departure(intercept, 0, "no thrust is left at zero rotation rate"),
    },
    ...asternFacts(reduction),
  ].filter((one) => one !== null);
}

/** The same of the plateaus that turn astern. */
function asternFacts({ reverse }: Reduction): (Fact | null)[] {
  if (reverse === null) return [];
  const told = {
    rotationRate: "the sign of the rotation rate",
    command: "the command below idle",
    thrust: "the sign of the thrust",
  };
  const plateaus = `${counts(reverse.plateaus.length, "plateau")}, told by ${told[reverse.foundBy]}`;
  return [
    fact(
      "K_T",
      "Thrust coefficient astern",
      reverse.thrustCoefficient,
      `Thrust astern counts as positive; ${plateaus}.`,
    ),
    fact("C_P", "Power coefficient astern", reverse.powerCoefficient, ""),
    fact("FM", "Static merit astern", reverse.staticMerit, ""),
    fact("r", "Thrust astern over ahead", reverse.toForward, "At equal rotation rate. What both share has cancelled."),
  ];
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

function powerSourceText({ powerSource }: Pick<Reduction, "powerSource">): string {
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

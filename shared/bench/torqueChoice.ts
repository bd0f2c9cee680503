import type { LogTable } from "../log/logTable.ts";
import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { ReadingChoice, ReadingOption } from "../model/readingChoice.ts";
import type { ColumnUse } from "../model/recipe.ts";
import { formatNumber } from "../quantity/format.ts";
import { findUnit } from "../quantity/unit.ts";
import { headerOf } from "./channels.ts";
import type { StrongestRows } from "./strongestRows.ts";

/** Units that a torque is written in, and what to call each. */
const UNITS = [
  { unit: "N·m", words: "newton metre" },
  { unit: "N·cm", words: "newton centimetre" },
  { unit: "mN·m", words: "millinewton metre" },
  { unit: "kgf·cm", words: "kilogram-force centimetre" },
  { unit: "gf·cm", words: "gram-force centimetre" },
  { unit: "lbf·in", words: "pound-force inch" },
  { unit: "ozf·in", words: "ounce-force inch" },
] as const;

/** Readings of simple stands may lie this much beyond a limit of physics. */
const BEYOND = 1.05;
/** Part of the electrical power that reaches the shaft of a motor that works. Common practice, no source. */
const LEAST_EFFICIENCY = 0.15;
/** Less thrust than this part of the momentum limit is a very poor thruster: a merit below 0.06. Common practice, no source. */
const POOREST = 0.15;

export interface TorqueQuestion {
  readonly table: LogTable;
  readonly use: ColumnUse;
  readonly strongest: StrongestRows;
  /** Thrusts at the strongest rows in every reading of the thrust column that is open, N; empty without one. */
  readonly thrusts: readonly number[];
  /** Greatest thrust of the propeller on the stand for a shaft power, N. */
  readonly limitOf: (shaftPower: number) => number;
  /** Nothing in the file settles the unit. */
  readonly isUnsure: boolean;
}

interface Judged {
  readonly verdict: ReadingOption["verdict"];
  readonly because: string;
}

/**
 * What each unit of a torque column would mean: shaft power P = 2 π n Q at the strongest rows, against the electrical
 * power it comes from and against the power that the thrust needs at least by momentum theory. Null where nothing is to
 * be asked: the unit is settled and can be, or no unit can be.
 *
 * Assumes  the rotation rate is read rightly; the propeller stands still in the fluid.
 */
export function torqueChoice(question: TorqueQuestion): ReadingChoice | null {
  const { table, use, strongest, isUnsure, limitOf } = question;
  const { torque, rotationRate, electricalPower, thrust } = strongest;
  if (!torque || !rotationRate || (electricalPower === null && question.thrusts.length === 0)) return null;
  const factorOf = (unit: string) => findUnit(unit, ROLE_DIMENSIONS.torque)?.factor ?? Number.NaN;
  const size = factorOf(use.unit);
  const isSame = (unit: string) => Math.abs(factorOf(unit) / size - 1) < 1e-9;
  const chosen = { unit: use.unit, words: UNITS.find(({ unit }) => isSame(unit))?.words ?? use.unit };
  const options = [chosen, ...UNITS.filter(({ unit }) => !isSame(unit))].map(({ unit, words }, i): ReadingOption => {
    const Q = (torque * factorOf(unit)) / size;
    const shaftPower = 2 * Math.PI * rotationRate * Q;
    const { verdict, because } = judged(shaftPower, question);
    return {
      ...{ unit, chosen: i === 0, verdict, greatestThrust: thrust, rotationRate, thrustCoefficient: null, shaftPower },
      sentence: `In ${words} the shaft would take ${formatNumber(shaftPower)} W at ${formatNumber(Q)} N·m${because === "" ? "" : `, ${because}`}: ${verdict}.`,
    };
  });
  const possible = options.filter(({ verdict }) => verdict === "possible");
  const isDoubtful = isUnsure || options[0]!.verdict === "impossible";
  if (!isDoubtful || possible.length === 0) return null;
  const only = possible.length === 1 ? possible[0]! : null;
  const told = options.filter((option) => option.chosen || option.verdict === "possible");
  const shown = told.length > 1 ? told : options.slice(0, 2);
  const header = headerOf(table, use.column);
  const advice = only
    ? `Only ${only.unit} is possible${only.chosen ? ", and it is what the recipe reads." : "; it was not changed for you."}`
    : "Say which it is.";
  return {
    ...{ column: use.column, header, role: use.role, electricalPower, options, recommended: only?.unit ?? null },
    momentumLimit: electricalPower === null ? null : limitOf(electricalPower),
    sentence: `${header} can be read in more than one way. ${shown.map(({ sentence }) => sentence).join(" ")} ${advice}`,
  };
}

function judged(shaftPower: number, { strongest, thrusts, limitOf }: TorqueQuestion): Judged {
  const { electricalPower } = strongest;
  const limit = limitOf(shaftPower);
  if (electricalPower !== null && shaftPower > BEYOND * electricalPower) {
    return { verdict: "impossible", because: `more than the ${formatNumber(electricalPower)} W that the motor draws` };
  }
  if (thrusts.length > 0 && thrusts.every((thrust) => thrust > BEYOND * limit)) {
    const because = `with which the propeller makes ${formatNumber(limit)} N at most and not the ${formatNumber(Math.min(...thrusts))} N measured`;
    return { verdict: "impossible", because };
  }
  if (electricalPower !== null && shaftPower < LEAST_EFFICIENCY * electricalPower) {
    const because = `only ${formatNumber((100 * shaftPower) / electricalPower, 2)} % of the ${formatNumber(electricalPower)} W that the motor draws`;
    return { verdict: "unlikely", because };
  }
  if (thrusts.length > 0 && thrusts.every((thrust) => thrust < POOREST * limit)) {
    const because = `with which ${formatNumber(Math.max(...thrusts))} N is only ${formatNumber((100 * Math.max(...thrusts)) / limit, 2)} % of the momentum limit`;
    return { verdict: "unlikely", because };
  }
  return { verdict: "possible", because: "" };
}

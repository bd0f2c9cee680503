import type { ColumnRole } from "../model/recipe.ts";
import { InputProblem } from "../quantity/problem.ts";
import { findUnit, foldUnit, requireUnit } from "../quantity/unit.ts";
import type { Dimension } from "../quantity/units.data.ts";
import { headerWords, rolesNamed } from "./headerWords.ts";

/**
 * Dimension in which the unit of a column is looked up. A load cell in grams means the weight of them. A command has
 * no dimension of its own: it is a pulse in "us", a share in "%", or plain steps "1".
 */
export const ROLE_DIMENSIONS: { readonly [R in ColumnRole]: Dimension } = {
  time: "time",
  command: "fraction",
  thrust: "massAsForce",
  torque: "torque",
  rotationRate: "rotationRate",
  voltage: "voltage",
  current: "current",
  electricalPower: "power",
  temperature: "temperature",
  advanceSpeed: "speed",
  ignore: "number",
};

/** What a person calls each role. */
export const ROLE_NAMES: { readonly [R in ColumnRole]: string } = {
  time: "time",
  command: "throttle command",
  thrust: "thrust",
  torque: "torque",
  rotationRate: "rotation rate",
  voltage: "voltage",
  current: "current",
  electricalPower: "electrical power",
  temperature: "temperature",
  advanceSpeed: "advance speed",
  ignore: "not used",
};

/** The printed symbol of the unit that `text` names for `role`, or undefined. */
export function roleUnit(role: ColumnRole, text: string): string | undefined {
  if (role === "command") return commandUnit(text);
  return findUnit(text, ROLE_DIMENSIONS[role])?.symbol;
}

/** Like `roleUnit`; throws InputProblem `log.command-unit` or those of requireUnit for a unit that will not do. */
export function requireRoleUnit(role: ColumnRole, text: string, where = ""): string {
  if (role !== "command") return requireUnit(text, ROLE_DIMENSIONS[role], where).symbol;
  const unit = commandUnit(text);
  if (unit !== undefined) return unit;
  throw new InputProblem({
    code: "log.command-unit",
    where,
    found: `"${text}" is not a unit of a throttle command`,
    needed: "us (pulse width), % or 1 (plain steps)",
    mend: "Give one of these",
  });
}

function commandUnit(text: string): string | undefined {
  const folded = foldUnit(text);
  if (folded === "") return "1";
  if (findUnit(folded, "pulseWidth")?.symbol === "µs") return "us";
  const share = findUnit(folded, "fraction")?.symbol;
  return share === "%" || share === "1" ? share : undefined;
}

/** Symbols of a textbook, which differ by case: T is the thrust, t the time. */
const ROLE_SYMBOLS: Readonly<Record<string, ColumnRole>> = {
  ...{ t: "time", T: "thrust", Q: "torque", n: "rotationRate", U: "voltage", I: "current", P: "electricalPower" },
};

/**
 * The role that a person means by `text` ("rpm", "load", "volts", "rotation rate", "kg", "ignore"); undefined where
 * the text names none or several.
 */
export function roleOfText(text: string): ColumnRole | undefined {
  const words = headerWords(text);
  if (["ignore", "skip", "none", "not used", "unused"].includes(words)) return "ignore";
  const byName = (Object.keys(ROLE_NAMES) as ColumnRole[]).find((role) => words === headerWords(role));
  if (byName) return byName;
  const bySymbol = ROLE_SYMBOLS[text.trim()];
  if (bySymbol) return bySymbol;
  const [best, second] = text.trim().length > 1 ? rolesNamed(text) : [];
  if (best) return best.strength === second?.strength ? undefined : best.role;
  const byUnit = (Object.keys(ROLE_DIMENSIONS) as ColumnRole[]).filter((role) => {
    return role !== "ignore" && role !== "command" && text.trim() !== "" && roleUnit(role, text) !== undefined;
  });
  return byUnit.length === 1 ? byUnit[0] : undefined;
}

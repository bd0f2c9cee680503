import type { ColumnRole, Recipe } from "../../../shared/model/recipe.ts";
import { correctionOf, withCorrection } from "./recipeEdits.ts";

/** Channels that a stand can log the other way round: a load cell pulled instead of pushed, a clamp put on backwards. */
const SIGNED: readonly ColumnRole[] = [
  "thrust",
  "torque",
  "rotationRate",
  "voltage",
  "current",
  "electricalPower",
  "advanceSpeed",
];

/** Who says which way a channel counts: its column, the calibration of its instrument, or nobody. */
export type SignOwner = "column" | "instrument" | "none";

export function signOwner({ instrumentIds = {} }: Pick<Recipe, "instrumentIds">, role: ColumnRole): SignOwner {
  if (!SIGNED.includes(role)) return "none";
  return role in instrumentIds ? "instrument" : "column";
}

/** The channels whose readings are turned round. */
export function turnedRoles(recipe: Recipe): ReadonlySet<ColumnRole> {
  return new Set(SIGNED.filter((role) => correctionOf(recipe, role).factor < 0));
}

/** The recipe with these channels turned round, and the others as they were logged; factors keep their size. */
export function withTurned(recipe: Recipe, turned: ReadonlySet<ColumnRole>): Recipe {
  return SIGNED.reduce((now, role) => {
    const { factor } = correctionOf(now, role);
    return factor < 0 === turned.has(role) ? now : withCorrection(now, role, { factor: -factor });
  }, recipe);
}

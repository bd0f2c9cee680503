import type { Recipe } from "../../../shared/model/recipe.ts";
import type { StandFacts } from "../../../shared/model/stand.ts";

/** The recipe with one fact of the stand stated, or taken back when `value` is null; nothing stated leaves no entry. */
export function withStandFact(recipe: Recipe, key: keyof StandFacts, value: number | null): Recipe {
  const { stand: { [key]: _former, ...facts } = {}, ...others } = recipe;
  const stand: StandFacts = value === null ? facts : { ...facts, [key]: value };
  return Object.keys(stand).length === 0 ? others : { ...others, stand };
}

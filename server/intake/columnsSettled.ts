import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import type { RoleGuess } from "../../shared/model/log.ts";
import type { Recipe } from "../../shared/model/recipe.ts";

/** The recipe of a recording with its columns as a person settled them, or else as they are guessed from all there is. */
export function columnsSettled(recipe: Recipe, guesses: readonly RoleGuess[]): Recipe {
  if (recipe.columns.length > 0) return recipe;
  return { ...recipe, columns: recipeFromGuesses({ guesses, fluid: recipe.fluid }).columns };
}

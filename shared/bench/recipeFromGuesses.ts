import type { FluidState } from "../model/fluid.ts";
import type { RoleGuess } from "../model/log.ts";
import { Recipe } from "../model/recipe.ts";
import { ASSUMED_FLUID } from "./assumedFluid.ts";

/** What a recipe is started from. */
export interface RecipeStart {
  readonly guesses: readonly RoleGuess[];
  /** What the propeller turned in; where absent, room-warm fresh water is taken and the recipe says so. */
  readonly fluid?: FluidState | undefined;
  readonly polePairs?: number | undefined;
}

/**
 * First recipe of a log: each column as it was guessed, readings taken as they are, zero from the rests, plateaus found
 * automatically. Where two columns were guessed to hold the same, the surer guess, then the first, is used and the other ignored.
 */
export function recipeFromGuesses({ guesses, fluid, polePairs }: RecipeStart): Recipe {
  const ranked = guesses.toSorted((a, b) => Number(b.sure) - Number(a.sure) || a.column - b.column);
  const taken = new Set<string>();
  const columns = ranked.map(({ column, role, unit }) => {
    const free = role === "ignore" || !taken.has(role);
    taken.add(role);
    return { column, role: free ? role : ("ignore" as const), unit };
  });
  return Recipe.parse({
    columns: columns.sort((a, b) => a.column - b.column),
    ...(fluid === undefined ? { fluid: ASSUMED_FLUID, fluidAssumed: true } : { fluid }),
    ...(polePairs === undefined ? {} : { polePairs }),
  });
}

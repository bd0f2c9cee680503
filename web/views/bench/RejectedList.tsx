import type { Reduction } from "../../../shared/model/reduction.ts";
import { editRecipe } from "./benchState.ts";
import { additionGap, rejectedRows } from "./plateausModel.ts";
import { withPlateauAdded } from "./recipeEdits.ts";

/** What did not become a plateau, each with its reason; one that a person knows to be good is taken in by hand. */
export function RejectedList({ reduction, hasClock }: { readonly reduction: Reduction; readonly hasClock: boolean }) {
  const rows = rejectedRows(reduction, hasClock);
  if (rows.length === 0) return null;
  const takes = reduction.sweep === null && reduction.plateaus.every(({ foundBy }) => foundBy !== "row");
  return (
    <details class="bench-rejected">
      <summary>{rows.length === 1 ? "1 stretch" : `${rows.length} stretches`} not taken</summary>
      <ul>
        {rows.map(({ key, where, lines, because, span }) => (
          <li key={key}>
            {where} (lines {lines}): {because}{" "}
            {takes && additionGap(reduction.plateaus, span) === "" && (
              <button
                type="button"
                class="quiet"
                aria-label={`Take it in: ${where}`}
                onClick={() =>
                  void editRecipe("Took in a stretch by hand", (recipe) =>
                    withPlateauAdded(recipe, reduction.plateaus, span),
                  )
                }
              >
                Take it in
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

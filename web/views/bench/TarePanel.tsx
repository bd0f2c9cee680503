import { tareInWords } from "../../../shared/bench/tareInWords.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { Fold } from "../../app/Fold.tsx";
import { useChosen } from "../../forms/useChosen.ts";
import { editRecipe } from "./benchState.ts";
import { withTareAdded, withTareRemoved, withTareShape } from "./recipeEdits.ts";
import { SpanForm } from "./SpanForm.tsx";
import { tareRows, windowGap } from "./tareModel.ts";

interface TarePanelProps {
  readonly reduction: Reduction;
  readonly recipe: Recipe;
  readonly hasClock: boolean;
}

type Shape = Reduction["tare"]["shape"];

const SHAPES: Readonly<Record<Shape, string>> = {
  piecewise: "straight from each window to the next",
  line: "one straight line through all windows",
};

/** The zero of the scale: where it was read, how it moved, and how it is drawn between. */
export function TarePanel({ reduction, recipe, hasClock }: TarePanelProps) {
  const { windows } = reduction.tare;
  const rows = tareRows(reduction, hasClock);
  return (
    <Fold id="bench-tare" title="Zero of the scale" note={tareInWords(reduction)} open={false} class="bench-tare">
      {rows.length > 0 && (
        <ul>
          {rows.map(({ name, where, reading }, index) => (
            <li key={name}>
              {name}, {where}: {reading}{" "}
              {rows.length > 1 && (
                <button
                  type="button"
                  class="quiet"
                  aria-label={`Remove ${name}`}
                  onClick={() =>
                    void editRecipe(`Removed ${name.toLowerCase()}`, (now) => withTareRemoved(now, windows, index))
                  }
                >
                  Remove
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      {recipe.tare.mode !== "none" && windows.length > 1 && <ShapeChoice stated={recipe.tare.shape} />}
      <SpanForm
        what="a tare window"
        unit={hasClock ? "s" : ""}
        gap={(span) => windowGap(windows, span)}
        onSpan={(span) => void editRecipe("Added a tare window", (now) => withTareAdded(now, windows, span))}
      />
    </Fold>
  );
}

/** It shows what is stored: the reduction that rests on it comes later. */
function ShapeChoice({ stated = "piecewise" }: { readonly stated: Shape | undefined }) {
  const [shape, choose] = useChosen<Shape>(stated, (value) =>
    editRecipe(`Tare: ${SHAPES[value]}`, (now) => withTareShape(now, value)),
  );
  return (
    <fieldset class="bench-choice">
      <legend>Between the windows</legend>
      {(["piecewise", "line"] as const).map((value) => (
        <label key={value}>
          <input type="radio" name="tare-shape" checked={shape === value} onChange={() => choose(value)} />{" "}
          {SHAPES[value]}
        </label>
      ))}
    </fieldset>
  );
}

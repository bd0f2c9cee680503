import type { Recipe } from "../../../shared/model/recipe.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import {
  hasSpeedColumn,
  speedSpans,
  speedUncertainty,
  withAdvanceSpeed,
  withSpeedUncertainty,
} from "./advanceSpeeds.ts";
import { editRecipe } from "./benchState.ts";
import { SpeedSpans } from "./SpeedSpans.tsx";

/** Speed through the water where no column holds it, and how well speeds are known. */
export function AdvanceSpeedFields({ recipe }: { readonly recipe: Recipe }) {
  const byColumn = hasSpeedColumn(recipe);
  const isStated = recipe.advanceSpeeds !== undefined;
  const bySpans = speedSpans(recipe).length > 0;
  return (
    <>
      <h3>Speed through the water</h3>
      <div class="form-grid">
        {!byColumn && !bySpans && <OneSpeed recipe={recipe} />}
        {(byColumn || isStated) && <SpeedUncertainty recipe={recipe} />}
      </div>
      {byColumn && !isStated && <p class="hint">A column of the log holds it.</p>}
      {byColumn && isStated && (
        <div class="row">
          <p class="hint">A column of the log holds it, and speeds were stated as well: one of the two has to go.</p>
          <button
            type="button"
            onClick={() => void editRecipe("Took the stated speeds away", (now) => withAdvanceSpeed(now, null))}
          >
            Take the stated speeds away
          </button>
        </div>
      )}
      {!byColumn && <SpeedSpans recipe={recipe} />}
    </>
  );
}

function OneSpeed({ recipe }: { readonly recipe: Recipe }) {
  const stated = recipe.advanceSpeeds?.mode === "constant" ? recipe.advanceSpeeds.speed : null;
  return (
    <QuantityField
      label="Speed of the whole run"
      dimension="speed"
      unit="m/s"
      value={stated}
      optional
      help="Positive ahead. Leave it empty for a run at rest (bollard); a column of the log serves as well."
      onChange={() => undefined}
      onCommit={(speed) =>
        speed !== stated && void editRecipe("Set the speed through the water", (now) => withAdvanceSpeed(now, speed))
      }
    />
  );
}

function SpeedUncertainty({ recipe }: { readonly recipe: Recipe }) {
  return (
    <QuantityField
      label="Standard uncertainty of the speeds"
      dimension="fraction"
      unit="%"
      value={speedUncertainty(recipe)}
      min={0}
      max={1}
      help="Part of the speed that all plateaus share, e.g. 1 % from timing the carriage over a measured distance."
      onChange={() => undefined}
      onCommit={(relative) =>
        relative !== null &&
        relative !== speedUncertainty(recipe) &&
        void editRecipe("Set the uncertainty of the speeds", (now) => withSpeedUncertainty(now, relative))
      }
    />
  );
}

import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Run } from "../../../shared/model/run.ts";
import { parts } from "../../app/session.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { partChoices } from "./partChoices.ts";
import { withEntry, withFluid } from "./recipeEdits.ts";

/** Takes a change of the recipe, and what to call it; done when it is stored or refused. */
export type RecipeChange = (label: string, change: (recipe: Recipe) => Recipe) => Promise<unknown>;

interface StandPartsProps {
  readonly run: Pick<Run, "recipe" | "purpose">;
  readonly onChange: RecipeChange;
}

/** Motor and controller behind the shaft, and what the propeller turned in. */
export function StandParts({ run: { recipe, purpose }, onChange }: StandPartsProps) {
  const help =
    purpose === "propeller" ? "Gives shaft power where no torque was measured." : "Whose constants this run tells.";
  return (
    <>
      <SelectField
        label="Motor on the stand"
        value={recipe.motorId ?? ""}
        options={partChoices(parts.value.motors, "Not stated")}
        help={help}
        onChange={(id) => onChange("Set the motor on the stand", (now) => withEntry(now, "motorId", id || undefined))}
      />
      <SelectField
        label="Controller on the stand"
        value={recipe.controllerId ?? ""}
        options={partChoices(parts.value.controllers, "Not stated")}
        onChange={(id) =>
          onChange("Set the controller on the stand", (now) => withEntry(now, "controllerId", id || undefined))
        }
      />
      <FluidField
        label="Water, or air, that it turned in"
        value={recipe.fluid}
        onChange={() => undefined}
        onCommit={(fluid) =>
          JSON.stringify(fluid) !== JSON.stringify(recipe.fluid) &&
          onChange("Set the water of the bench", (now) => withFluid(now, fluid))
        }
      />
      {recipe.fluidAssumed && (
        <div class="field">
          <p class="field-message">Nobody has stated this yet: it was taken as likely.</p>
          <button
            type="button"
            onClick={() => void onChange("Stated the water of the bench", (now) => withFluid(now, now.fluid))}
          >
            It was {describeFluid(recipe.fluid)}
          </button>
        </div>
      )}
    </>
  );
}

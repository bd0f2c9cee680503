import type { ChannelCorrection, Recipe } from "../../../shared/model/recipe.ts";
import { formatPercent } from "../../../shared/quantity/format.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { correctionOf, withCorrection } from "./recipeEdits.ts";
import type { RecipeChange } from "./StandParts.tsx";

/** A standard uncertainty beyond this part is asked about. */
const LARGEST_MEANT = 0.2;

interface CalibrationFieldsProps {
  readonly recipe: Recipe;
  readonly onChange: RecipeChange;
}

/** Tare of the thrust channel, and its factor where no instrument stands behind it. */
export function CalibrationFields({ recipe, onChange }: CalibrationFieldsProps) {
  return (
    <div class="form-grid">
      {recipe.instrumentIds?.thrust === undefined && <ThrustFactor recipe={recipe} onChange={onChange} />}
      <SelectField
        label="Tare"
        value={recipe.tare.mode}
        options={[
          { value: "zeroThrottle", label: "Wherever the propeller stands still" },
          { value: "windows", label: "The windows on the picture", disabled: recipe.tare.mode !== "windows" },
          { value: "none", label: "None: readings are taken as they are" },
        ]}
        onChange={(mode) => mode !== "windows" && onChange("Set the tare", (now) => ({ ...now, tare: { mode } }))}
      />
    </div>
  );
}

/** Size of the factor and how well it is known; its sign is stated with the columns. */
function ThrustFactor({ recipe, onChange }: CalibrationFieldsProps) {
  const { factor, relativeUncertainty } = correctionOf(recipe, "thrust");
  const set = (label: string, change: Partial<ChannelCorrection>) =>
    onChange(label, (now) => withCorrection(now, "thrust", change));
  return (
    <>
      <QuantityField
        label="Thrust factor, lever ratio included"
        dimension="number"
        value={Math.abs(factor)}
        positive
        help="True thrust over reading, from dead weights hung where the thruster pushes: 2 where the lever halves the force on the scale. Its sign is under Columns."
        onChange={() => undefined}
        onCommit={(size) =>
          size !== null &&
          size !== Math.abs(factor) &&
          set("Set the thrust factor", { factor: factor < 0 ? -size : size })
        }
      />
      <QuantityField
        label="Standard uncertainty of that factor"
        dimension="fraction"
        unit="%"
        unitNeeded
        optional
        // Nought stands for a factor whose uncertainty nobody stated, not for one that is known exactly.
        value={relativeUncertainty === 0 ? null : relativeUncertainty}
        min={0}
        max={1}
        check={(stated) =>
          stated > LARGEST_MEANT
            ? `${formatPercent(stated)} is more than any scale. Was ${formatPercent(stated / 100)} meant?`
            : null
        }
        help="In per cent, e.g. 1 %. Common to all points of the run: it does not average down. Empty: not known, and in no interval."
        onChange={() => undefined}
        onCommit={(stated) =>
          (stated ?? 0) !== relativeUncertainty &&
          set("Set the calibration uncertainty", { relativeUncertainty: stated ?? 0 })
        }
      />
    </>
  );
}

import type { Recipe } from "../../../shared/model/recipe.ts";
import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { CHANNEL_NAMES } from "../instruments/instrumentsModel.ts";
import { instrumentChoices, withInstrument } from "./instrumentChoices.ts";
import type { RecipeChange } from "./StandParts.tsx";

interface InstrumentFieldsProps {
  readonly recipe: Recipe;
  readonly onChange: RecipeChange;
}

/** Which instrument each channel of the run was measured with. */
export function InstrumentFields({ recipe, onChange }: InstrumentFieldsProps) {
  const { instruments } = parts.value;
  return (
    <>
      <h3>Measured with</h3>
      <div class="form-grid">
        {instrumentChoices(recipe, instruments).map(({ role, label, chosen, options, sentence }) => (
          <SelectField
            key={role}
            label={label}
            value={chosen}
            options={options}
            help={sentence || undefined}
            onChange={(id) =>
              onChange(`Set the instrument of the ${CHANNEL_NAMES[role].toLowerCase()}`, (now) =>
                withInstrument(now, role, id),
              )
            }
          />
        ))}
      </div>
      <p class="hint">
        <a href={addressOf("parts")}>Instruments are kept under Parts</a>: a dead-weight table there serves every run
        that names it.
      </p>
    </>
  );
}

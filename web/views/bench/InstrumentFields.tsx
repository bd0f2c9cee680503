import type { Recipe } from "../../../shared/model/recipe.ts";
import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { CHANNEL_NAMES } from "../instruments/instrumentsModel.ts";
import { editRecipe } from "./benchState.ts";
import { instrumentChoices, withInstrument } from "./instrumentChoices.ts";

/** Which instrument each channel of the run was measured with. */
export function InstrumentFields({ recipe }: { readonly recipe: Recipe }) {
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
              void editRecipe(`Set the instrument of the ${CHANNEL_NAMES[role].toLowerCase()}`, (now) =>
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

import type { Run } from "../../../../shared/model/run.ts";
import { Fold } from "../../../app/Fold.tsx";
import { addressOf } from "../../../app/route.ts";
import { partOf, parts } from "../../../app/session.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { CalibrationFields } from "../CalibrationFields.tsx";
import { InstrumentFields } from "../InstrumentFields.tsx";
import { partChoices } from "../partChoices.ts";
import { RunFields } from "../RunFields.tsx";
import { withPropeller } from "../recipeEdits.ts";
import { StandParts } from "../StandParts.tsx";

interface LiveStandProps {
  readonly run: Run;
  readonly onChange: (label: string, change: (run: Run) => Run) => Promise<unknown>;
}

/** What is on the stand. It can be stated while lines come; the next result rests on it. */
export function LiveStand({ run, onChange }: LiveStandProps) {
  const { recipe, purpose, propellerId } = run;
  const asks = purpose === "propeller" && propellerId === undefined;
  const onRecipe = (label: string, change: (recipe: Run["recipe"]) => Run["recipe"]) =>
    onChange(label, (now) => ({ ...now, recipe: change(now.recipe) }));
  return (
    <Fold id="bench-setup" title="On the stand" class={asks ? "bench-needed" : ""}>
      <div class="form-grid">
        {asks && (
          <SelectField
            label="Which propeller is on the stand?"
            value=""
            options={partChoices(parts.value.propellers, "Choose a propeller")}
            help="Coefficients go with the fourth power of its diameter, which no log holds."
            onChange={(id) =>
              onChange(`Set the propeller of ${run.name}`, (now) => withPropeller(now, partOf("propellers", id)))
            }
          />
        )}
        <RunFields run={run} onChange={onChange} />
        <StandParts run={run} onChange={onRecipe} />
      </div>
      {asks && parts.value.propellers.length === 0 && (
        <p class="hint">
          None is there yet: <a href={addressOf("parts")}>make it under Parts</a>. The recording goes on meanwhile.
        </p>
      )}
      <InstrumentFields recipe={recipe} onChange={onRecipe} />
      {purpose === "propeller" && <CalibrationFields recipe={recipe} onChange={onRecipe} />}
    </Fold>
  );
}

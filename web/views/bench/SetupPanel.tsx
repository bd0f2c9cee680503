import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun, removeRun } from "../../app/edits.ts";
import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { AdvanceSpeedFields } from "./AdvanceSpeedFields.tsx";
import { editRecipe } from "./benchState.ts";
import { CalibrationFields } from "./CalibrationFields.tsx";
import { Fold } from "./Fold.tsx";
import { InstrumentFields } from "./InstrumentFields.tsx";
import { partChoices } from "./partChoices.ts";
import { RunFields } from "./RunFields.tsx";
import { withEntry } from "./recipeEdits.ts";

/** What was on the stand and how it was calibrated: all that the log itself does not say. */
export function SetupPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const { recipe, purpose, propellerId } = run.document;
  const loaded = purpose === "propeller";
  return (
    <Fold id="bench-setup" title="On the stand">
      <div class="form-grid">
        <RunFields run={run.document} onChange={(label, change) => void editRun(run.id, label, change)} />
        <StandParts run={run.document} />
      </div>
      {loaded && propellerId === undefined && (
        <p class="hint">
          The propeller is asked for above; all of them are kept <a href={addressOf("parts")}>under Parts</a>.
        </p>
      )}
      <InstrumentFields recipe={recipe} />
      {loaded && <CalibrationFields key={run.id} recipe={recipe} />}
      {loaded && <AdvanceSpeedFields key={`${run.id} speed`} recipe={recipe} />}
      <button type="button" class="quiet danger" onClick={() => void removeRun(run.id)}>
        Delete this run
      </button>
    </Fold>
  );
}

/** Motor and controller behind the shaft, and what the propeller turned in. */
function StandParts({ run: { recipe, purpose } }: { readonly run: Run }) {
  const help =
    purpose === "propeller" ? "Gives shaft power where no torque was measured." : "Whose constants this run tells.";
  return (
    <>
      <SelectField
        label="Motor on the stand"
        value={recipe.motorId ?? ""}
        options={partChoices(parts.value.motors, "Not stated")}
        help={help}
        onChange={(id) =>
          void editRecipe("Set the motor on the stand", (now) => withEntry(now, "motorId", id || undefined))
        }
      />
      <SelectField
        label="Controller on the stand"
        value={recipe.controllerId ?? ""}
        options={partChoices(parts.value.controllers, "Not stated")}
        onChange={(id) =>
          void editRecipe("Set the controller on the stand", (now) => withEntry(now, "controllerId", id || undefined))
        }
      />
      <FluidField
        label="Water, or air, that it turned in"
        value={recipe.fluid}
        onChange={() => undefined}
        onCommit={(fluid) =>
          JSON.stringify(fluid) !== JSON.stringify(recipe.fluid) &&
          void editRecipe("Set the water of the bench", (now) => ({ ...now, fluid }))
        }
      />
    </>
  );
}

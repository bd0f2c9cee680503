import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun, removeRun } from "../../app/edits.ts";
import { Fold } from "../../app/Fold.tsx";
import { addressOf } from "../../app/route.ts";
import { AdvanceSpeedFields } from "./AdvanceSpeedFields.tsx";
import { editRecipe } from "./benchState.ts";
import { CalibrationFields } from "./CalibrationFields.tsx";
import { InstrumentFields } from "./InstrumentFields.tsx";
import { RunCircumstances } from "./RunCircumstances.tsx";
import { RunFields } from "./RunFields.tsx";
import { StandParts } from "./StandParts.tsx";

/** What was on the stand and how it was calibrated: all that the log itself does not say. */
export function SetupPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const { recipe, purpose, propellerId } = run.document;
  const loaded = purpose === "propeller";
  return (
    <Fold id="bench-setup" title="On the stand">
      <div class="form-grid">
        <RunFields run={run.document} onChange={(label, change) => editRun(run.id, label, change)} />
        <StandParts run={run.document} onChange={editRecipe} />
        {loaded && <RunCircumstances run={run.document} onChange={(label, change) => editRun(run.id, label, change)} />}
      </div>
      {loaded && propellerId === undefined && (
        <p class="hint">
          The propeller is asked for above; all of them are kept <a href={addressOf("parts")}>under Parts</a>.
        </p>
      )}
      <InstrumentFields recipe={recipe} onChange={editRecipe} />
      {loaded && <CalibrationFields key={run.id} recipe={recipe} onChange={editRecipe} />}
      {loaded && <AdvanceSpeedFields key={`${run.id} speed`} recipe={recipe} />}
      <button type="button" class="quiet danger" onClick={() => void removeRun(run.id)}>
        Delete this run
      </button>
    </Fold>
  );
}

import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun, removeRun } from "../../app/edits.ts";
import { addressOf } from "../../app/route.ts";
import { partOf, parts, runs } from "../../app/session.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { type Option, SelectField } from "../../forms/SelectField.tsx";
import { variantNames } from "../variants/variantGroups.ts";
import { AdvanceSpeedFields } from "./AdvancePanel.tsx";
import { editRecipe } from "./benchState.ts";
import { Fold } from "./Fold.tsx";
import { InstrumentFields } from "./InstrumentFields.tsx";
import { NoteField } from "./NoteField.tsx";
import { correctionOf, withCorrection, withEntry, withPropeller } from "./recipeEdits.ts";

/** What was on the stand and how it was calibrated: all that the log itself does not say. */
export function SetupPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const { document } = run;
  const { recipe } = document;
  const loaded = document.purpose === "propeller";
  const set = (label: string, change: Partial<Run>) => void editRun(run.id, label, (now) => ({ ...now, ...change }));
  return (
    <Fold id="bench-setup" title="On the stand">
      <div class="form-grid">
        <NoteField
          label="Name of the run"
          value={document.name}
          onCommit={(name) => name !== "" && set(`Renamed ${document.name}`, { name })}
        />
        <SelectField
          label="On the shaft"
          value={document.purpose}
          options={PURPOSES}
          help="A run without propeller tells the constants of the motor."
          onChange={(purpose) => set(`Set what was on the shaft in ${document.name}`, { purpose })}
        />
        {loaded && (
          <>
            <NoteField
              label="Variant"
              value={document.variant}
              suggestions={variantNames(runs.value)}
              help="Runs of one variant are compared as a group, e.g. sanded."
              onCommit={(variant) => set(`Set the variant of ${document.name}`, { variant })}
            />
            <NoteField
              label="Mounting"
              value={document.mounting}
              help="Which mounting of the propeller this was, e.g. 2."
              onCommit={(mounting) => set(`Set the mounting of ${document.name}`, { mounting })}
            />
            {document.propellerId !== undefined && (
              <SelectField
                label="Propeller"
                value={document.propellerId}
                options={choices(parts.value.propellers, "None chosen")}
                onChange={(id) =>
                  void editRun(run.id, `Set the propeller of ${document.name}`, (now) =>
                    withPropeller(now, partOf("propellers", id)),
                  )
                }
              />
            )}
          </>
        )}
        <SelectField
          label="Motor on the stand"
          value={recipe.motorId ?? ""}
          options={choices(parts.value.motors, "Not stated")}
          help={loaded ? "Gives shaft power where no torque was measured." : "Whose constants this run tells."}
          onChange={(id) =>
            void editRecipe("Set the motor on the stand", (now) => withEntry(now, "motorId", id || undefined))
          }
        />
        <SelectField
          label="Controller on the stand"
          value={recipe.controllerId ?? ""}
          options={choices(parts.value.controllers, "Not stated")}
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
      </div>
      {loaded && document.propellerId === undefined && (
        <p class="hint">
          The propeller is asked for above; all of them are kept <a href={addressOf("parts")}>under Parts</a>.
        </p>
      )}
      <InstrumentFields recipe={recipe} />
      {loaded && <Calibration key={run.id} recipe={recipe} />}
      {loaded && <AdvanceSpeedFields key={`${run.id} speed`} recipe={recipe} />}
      <button type="button" class="quiet danger" onClick={() => void removeRun(run.id)}>
        Delete this run
      </button>
    </Fold>
  );
}

/** Tare of the thrust channel, and its factor where no instrument stands behind it. */
function Calibration({ recipe }: { readonly recipe: Recipe }) {
  const correction = correctionOf(recipe, "thrust");
  const size = Math.abs(correction.factor);
  const sign = correction.factor < 0 ? -1 : 1;
  const set = (label: string, change: Partial<typeof correction>) =>
    void editRecipe(label, (now) => withCorrection(now, "thrust", change));
  const measured = recipe.instrumentIds?.thrust !== undefined;
  return (
    <div class="form-grid">
      {!measured && (
        <>
          <QuantityField
            label="Thrust factor, lever ratio included"
            dimension="number"
            value={size}
            positive
            help="True thrust over reading, from dead weights hung on the stand."
            onChange={() => undefined}
            onCommit={(factor) =>
              factor !== null && factor !== size && set("Set the thrust factor", { factor: sign * factor })
            }
          />
          <QuantityField
            label="Standard uncertainty of that factor"
            dimension="fraction"
            unit="%"
            value={correction.relativeUncertainty}
            min={0}
            max={1}
            help="Common to all points of the run: it does not average down."
            onChange={() => undefined}
            onCommit={(relativeUncertainty) =>
              relativeUncertainty !== null &&
              relativeUncertainty !== correction.relativeUncertainty &&
              set("Set the calibration uncertainty", { relativeUncertainty })
            }
          />
          <SelectField
            label="Sign of the thrust reading"
            value={sign < 0 ? "turned" : "kept"}
            options={[
              { value: "kept", label: "Forward thrust reads positive" },
              { value: "turned", label: "Forward thrust reads negative" },
            ]}
            onChange={(kept) => set("Turned the sign of the thrust", { factor: kept === "turned" ? -size : size })}
          />
        </>
      )}
      <SelectField
        label="Tare"
        value={recipe.tare.mode}
        options={[
          { value: "zeroThrottle", label: "Wherever the propeller stands still" },
          { value: "windows", label: "The windows on the picture", disabled: recipe.tare.mode !== "windows" },
          { value: "none", label: "None: readings are taken as they are" },
        ]}
        onChange={(mode) =>
          mode !== "windows" && void editRecipe("Set the tare", (now) => ({ ...now, tare: { mode } }))
        }
      />
    </div>
  );
}

const PURPOSES: readonly Option<Run["purpose"]>[] = [
  { value: "propeller", label: "A propeller" },
  { value: "noLoadDry", label: "Nothing, the motor in air" },
  { value: "noLoadWet", label: "Nothing, the motor flooded" },
];

function choices(
  stored: readonly { readonly id: string; readonly document: { readonly name: string } }[],
  none: string,
): Option<string>[] {
  return [{ value: "", label: none }, ...stored.map(({ id, document }) => ({ value: id, label: document.name }))];
}

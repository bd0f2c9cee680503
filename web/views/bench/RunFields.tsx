import type { Run } from "../../../shared/model/run.ts";
import { partOf, parts, runs } from "../../app/session.ts";
import { type Option, SelectField } from "../../forms/SelectField.tsx";
import { variantNames } from "../variants/variantGroups.ts";
import { NoteField } from "./NoteField.tsx";
import { partChoices } from "./partChoices.ts";
import { withPropeller } from "./recipeEdits.ts";

interface RunFieldsProps {
  readonly run: Run;
  readonly onChange: (label: string, change: (run: Run) => Run) => Promise<unknown>;
}

/** What the run is called, what was on the shaft, and which runs it is compared with. */
export function RunFields({ run, onChange }: RunFieldsProps) {
  return (
    <>
      <NoteField
        label="Name of the run"
        value={run.name}
        onCommit={(name) => name !== "" && onChange(`Renamed ${run.name}`, (now) => ({ ...now, name }))}
      />
      <SelectField
        label="On the shaft"
        value={run.purpose}
        options={PURPOSES}
        help="A run without propeller tells the constants of the motor."
        onChange={(purpose) => onChange(`Set what was on the shaft in ${run.name}`, (now) => ({ ...now, purpose }))}
      />
      {run.purpose === "propeller" && <PropellerRunFields run={run} onChange={onChange} />}
    </>
  );
}

function PropellerRunFields({ run, onChange }: RunFieldsProps) {
  return (
    <>
      <NoteField
        label="Variant"
        value={run.variant}
        suggestions={variantNames(runs.value)}
        help="Runs of one variant are compared as a group, e.g. sanded."
        onCommit={(variant) => onChange(`Set the variant of ${run.name}`, (now) => ({ ...now, variant }))}
      />
      <NoteField
        label="Mounting"
        value={run.mounting}
        help="Which mounting of the propeller this was, e.g. 2."
        onCommit={(mounting) => onChange(`Set the mounting of ${run.name}`, (now) => ({ ...now, mounting }))}
      />
      {run.propellerId !== undefined && (
        <SelectField
          label="Propeller"
          value={run.propellerId}
          options={partChoices(parts.value.propellers, "None chosen")}
          onChange={(id) =>
            onChange(`Set the propeller of ${run.name}`, (now) => withPropeller(now, partOf("propellers", id)))
          }
        />
      )}
    </>
  );
}

const PURPOSES: readonly Option<Run["purpose"]>[] = [
  { value: "propeller", label: "A propeller" },
  { value: "noLoadDry", label: "Nothing, the motor in air" },
  { value: "noLoadWet", label: "Nothing, the motor flooded" },
];

import { VehicleRequirement } from "../../../../shared/model/vehicle/requirement.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { without } from "./buildModel.ts";
import { chosenBuild, editBuild } from "./buildState.ts";
import { KeptQuantity } from "./KeptQuantity.tsx";
import { DEMANDS, type Demanded, withDemand } from "./requirementModel.ts";

const SURE = [
  { value: "0.5", label: "by the best estimate" },
  { value: "0.9", label: "with 90\u202f% probability" },
  { value: "0.95", label: "with 95\u202f% probability" },
  { value: "0.99", label: "with 99\u202f% probability" },
];

/** What the vehicle must be able to do. */
export function RequirementCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  const { requirement } = build;
  const asked = requirement ?? VehicleRequirement.parse({});
  const set = (change: (now: VehicleRequirement) => VehicleRequirement, what: string) =>
    editBuild(
      (now): VehicleBuild => ({ ...now, requirement: change(now.requirement ?? VehicleRequirement.parse({})) }),
      what,
    );
  const key = String(asked.confidence);
  return (
    <>
      <p class="hint">A field that is left empty asks nothing.</p>
      {DEMANDS.map(({ title, fields }) => (
        <fieldset key={title} class="build-group">
          <legend>{title}</legend>
          <div class="form-grid build-tight">
            {fields.map((field) => (
              <DemandField key={field.key} field={field} asked={asked} set={set} />
            ))}
          </div>
        </fieldset>
      ))}
      <div class="form-grid">
        <SelectField
          label="Each demand must hold"
          value={key}
          options={
            SURE.some(({ value }) => value === key)
              ? SURE
              : [{ value: key, label: `with ${100 * asked.confidence} %` }, ...SURE]
          }
          help="With the uncertainty of drag, coefficients and parts counted."
          onChange={(value) => set((now) => ({ ...now, confidence: Number(value) }), "confidence")}
        />
      </div>
      {requirement && (
        <button
          type="button"
          class="quiet"
          onClick={() => void editBuild((now) => without(now, "requirement") as VehicleBuild, "no requirement")}
        >
          Ask nothing of it
        </button>
      )}
    </>
  );
}

interface DemandFieldProps {
  readonly field: Demanded;
  readonly asked: VehicleRequirement;
  readonly set: (change: (now: VehicleRequirement) => VehicleRequirement, what: string) => unknown;
}

function DemandField({ field, asked, set }: DemandFieldProps) {
  const { key, label, symbol, dimension, unit, help, zero } = field;
  const value = asked[key];
  return (
    <KeptQuantity
      {...{ label, symbol, dimension, unit, help }}
      {...(zero ? { min: 0 } : { positive: true })}
      value={value === undefined || (zero && value === 0) ? null : value}
      optional
      onKeep={(si) => set((now) => withDemand(now, key, si), label.toLowerCase())}
    />
  );
}

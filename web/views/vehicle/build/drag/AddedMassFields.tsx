import type { AddedMass } from "../../../../../shared/model/vehicle/drag.ts";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { chosenBuild } from "../buildState.ts";
import { DoubtfulFields } from "../DoubtfulFields.tsx";
import { KeptQuantity } from "../KeptQuantity.tsx";
import { type DragAxis, withAddedMass } from "./directions.ts";
import { editDrag } from "./dragState.ts";

const AXIS_NAMES: Readonly<Record<DragAxis, string>> = {
  surge: "ahead and astern",
  sway: "sideways",
  heave: "up and down",
};

interface AddedMassFieldsProps {
  readonly addedMass: AddedMass | undefined;
  readonly axis: DragAxis;
}

/** Water that a start or a stop moves along with the vehicle; steady speeds do not need it. */
export function AddedMassFields({ addedMass, axis }: AddedMassFieldsProps) {
  const keep = (next: AddedMass | null) =>
    editDrag((drag) => withAddedMass(drag, axis, next), `added mass ${AXIS_NAMES[axis]}`);
  return (
    <details>
      <summary>Added mass {AXIS_NAMES[axis]}: water that moves along when it starts and stops</summary>
      <div class="form-grid">
        <SelectField
          label="It is"
          value={addedMass?.from ?? "none"}
          options={[
            { value: "none", label: "not given: taken as 0" },
            { value: "typed", label: "typed" },
            { value: "spheroid", label: "that of a spheroid of like size" },
          ]}
          onChange={(from) => (addedMass?.from === from ? undefined : keep(startOf(from, axis)))}
        />
        {addedMass?.from === "typed" && (
          <DoubtfulFields
            {...{ label: "Added mass", dimension: "mass", unit: "kg", min: 0, max: 1e6 }}
            value={{ value: addedMass.mass, standardUncertainty: addedMass.standardUncertainty }}
            onKeep={({ value, standardUncertainty }) => keep({ from: "typed", mass: value, standardUncertainty })}
          />
        )}
        {addedMass?.from === "spheroid" && <SpheroidFields spheroid={addedMass} keep={keep} />}
      </div>
      {addedMass && <p class="hint">{EXAMPLE[addedMass.from]}</p>}
    </details>
  );
}

const EXAMPLE: Readonly<Record<"typed" | "spheroid", string>> = {
  typed: "It begins with half the mass of the vehicle, an example to be replaced.",
  spheroid: "It begins with the sizes of a small vehicle, an example to be replaced.",
};

/** A start: half the vehicle's mass, or a spheroid as long as a small vehicle. */
function startOf(from: "none" | "typed" | "spheroid", axis: DragAxis): AddedMass | null {
  if (from === "none") return null;
  const mass = chosenBuild.value?.mass.value ?? 0;
  if (from === "typed") return { from, mass: mass / 2, standardUncertainty: mass / 10 };
  const motion = axis === "surge" ? "axial" : "lateral";
  return { from, length: 0.45, diameter: 0.3, motion, relativeUncertainty: 0.2 };
}

interface SpheroidFieldsProps {
  readonly spheroid: Extract<AddedMass, { from: "spheroid" }>;
  readonly keep: (next: AddedMass) => unknown;
}

function SpheroidFields({ spheroid, keep }: SpheroidFieldsProps) {
  const size = { dimension: "length", unit: "mm", positive: true, max: 100 } as const;
  return (
    <>
      <KeptQuantity
        {...{ ...size, label: "Length along its axis" }}
        value={spheroid.length}
        check={(length) => (length < spheroid.diameter ? "It must not be shorter than it is thick." : null)}
        onKeep={(length) => length !== null && keep({ ...spheroid, length })}
      />
      <KeptQuantity
        {...{ ...size, label: "Greatest diameter" }}
        value={spheroid.diameter}
        check={(diameter) => (diameter > spheroid.length ? "It must not be thicker than it is long." : null)}
        onKeep={(diameter) => diameter !== null && keep({ ...spheroid, diameter })}
      />
      <SelectField
        label="It moves"
        value={spheroid.motion}
        options={[
          { value: "axial", label: "along its axis" },
          { value: "lateral", label: "across its axis" },
        ]}
        onChange={(motion) => keep({ ...spheroid, motion })}
      />
      <KeptQuantity
        {...{ label: "give or take", dimension: "fraction", unit: "%", min: 0, max: 1 }}
        help="A hull with frames and holes differs by some 20 %."
        value={spheroid.relativeUncertainty}
        onKeep={(share) => share !== null && keep({ ...spheroid, relativeUncertainty: share })}
      />
    </>
  );
}

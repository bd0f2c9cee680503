import { useState } from "preact/hooks";
import { parts } from "../../../app/session.ts";
import { FormButtons } from "../../../forms/FormButtons.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import { drivePropellers } from "../../drive/drivePropellers.ts";
import { LayoutPicture } from "../layout/LayoutPicture.tsx";
import { freeName, nameGap } from "./buildModel.ts";
import { addBuild, builds } from "./buildState.ts";
import { PartsHint } from "./DrivesCard.tsx";
import { startingBuild } from "./startingBuild.ts";
import { type BodySize, STARTING_LAYOUTS, USUAL_SIZE } from "./startingLayouts.ts";

/** Mass of a body of that size that just hovers in fresh water, and is not all solid, kg/m³. Common practice, no source. */
const USUAL_DENSITY = 300;

/** A new vehicle from a layout of the trade and its outer sizes; all of it can be changed afterwards. */
export function AddBuildForm({ onDone }: { readonly onDone: () => void }) {
  const taken = builds.value.map(({ name }) => name);
  const { motors, packs, controllers } = parts.value;
  const [name, setName] = useState(() => freeName("Vehicle", taken));
  const [layout, setLayout] = useState(STARTING_LAYOUTS[0]!.id);
  const [size, setSize] = useState<BodySize>(USUAL_SIZE);
  const [typedMass, setMass] = useState<number | null>(null);
  const [motorId, setMotor] = useState(motors[0]?.id ?? "");
  const [packId, setPack] = useState(packs[0]?.id ?? "");
  const [propeller, setPropeller] = useState(drivePropellers.value[0]?.name ?? "");
  const [tried, setTried] = useState(false);
  const chosen = STARTING_LAYOUTS.find(({ id }) => id === layout)!;
  const mass = typedMass ?? Math.round(10 * USUAL_DENSITY * size.length * size.width * size.height) / 10;
  const gap = nameGap(name, taken) || (motorId === "" ? "Needed: a motor." : packId === "" ? "Needed: a pack." : "");
  const submit = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (gap !== "") return;
    const controllerId = controllers[0]?.id;
    // A name that no propeller has yet is told where the drive is described.
    const start = { name: name.trim(), layout, size, mass, motorId, controllerId, packId };
    if (await addBuild(startingBuild({ ...start, propeller: propeller || "to be chosen" }))) onDone();
  };
  return (
    <form class="form-grid" noValidate onSubmit={(event) => void submit(event)}>
      <SelectField
        label="Thrusters"
        value={layout}
        options={STARTING_LAYOUTS.map(({ id, label }) => ({ value: id, label }))}
        help={chosen.about}
        onChange={setLayout}
      />
      <TextField label="Name" value={name} maxLength={120} onChange={setName} />
      <SizeFields size={size} onChange={setSize} />
      <QuantityField
        label="Mass with the water it encloses"
        symbol="m"
        dimension="mass"
        unit="kg"
        value={mass}
        positive
        max={1e6}
        onChange={setMass}
      />
      <PartField label="Motor" list={motors} value={motorId} onChange={setMotor} />
      <PartField label="Pack" list={packs} value={packId} onChange={setPack} />
      <SelectField
        label="Propeller"
        value={propeller}
        options={[
          ...(propeller === "" ? [{ value: "", label: "none is known yet" }] : []),
          ...drivePropellers.value.map((one) => ({ value: one.name, label: one.name })),
        ]}
        onChange={setPropeller}
      />
      <div class="build-wide">
        <LayoutPicture thrusters={chosen.thrusters(size).map((one) => ({ ...one, drive: "" }))} isStill />
        <p class="hint">Drag begins as that of a box of this size. Every place and part can be changed afterwards.</p>
        <PartsHint />
      </div>
      <FormButtons onCancel={onDone} gap={tried ? gap : ""} />
    </form>
  );
}

const SIZES = [
  ["length", "Length over all"],
  ["width", "Width"],
  ["height", "Height"],
] as const;

function SizeFields({ size, onChange }: { readonly size: BodySize; readonly onChange: (size: BodySize) => void }) {
  return (
    <>
      {SIZES.map(([key, label]) => (
        <QuantityField
          key={key}
          label={label}
          dimension="length"
          unit="mm"
          value={size[key]}
          positive
          max={20}
          onChange={(si) => si !== null && onChange({ ...size, [key]: si })}
        />
      ))}
    </>
  );
}

interface PartFieldProps {
  readonly label: string;
  readonly list: readonly { readonly id: string; readonly document: { readonly name: string } }[];
  readonly value: string;
  readonly onChange: (id: string) => void;
}

function PartField({ label, list, value, onChange }: PartFieldProps) {
  const none = list.length === 0 ? [{ value: "", label: "none is kept yet" }] : [];
  const options = [...none, ...list.map(({ id, document }) => ({ value: id, label: document.name }))];
  return <SelectField {...{ label, value, options, onChange }} />;
}

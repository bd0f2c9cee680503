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
import { startingBuild, TAKEN_AT_FIRST } from "./startingBuild.ts";
import { type BodySize, STARTING_LAYOUTS, USUAL_SIZE } from "./startingLayouts.ts";

/** What is typed of a vehicle that is not there yet. */
interface StartDraft {
  readonly name: string;
  readonly layout: string;
  readonly size: TypedSize;
  readonly mass: number | null;
  readonly motorId: string;
  readonly controllerId: string;
  readonly packId: string;
  readonly propeller: string;
}

interface DraftProps {
  readonly draft: StartDraft;
  readonly set: (change: Partial<StartDraft>) => void;
}

function freshDraft(taken: readonly string[]): StartDraft {
  const { motors, packs, controllers } = parts.value;
  return {
    ...{ name: freeName("Vehicle", taken), layout: STARTING_LAYOUTS[0]!.id },
    ...{ size: { length: null, width: null, height: null }, mass: null },
    ...{ motorId: motors[0]?.id ?? "", controllerId: controllers[0]?.id ?? "", packId: packs[0]?.id ?? "" },
    propeller: drivePropellers.value[0]?.name ?? "",
  };
}

/** A new vehicle from a layout of the trade and its outer sizes; all of it can be changed afterwards. */
export function AddBuildForm({ onDone }: { readonly onDone: () => void }) {
  const taken = builds.value.map(({ name }) => name);
  const [draft, setDraft] = useState(() => freshDraft(taken));
  const [tried, setTried] = useState(false);
  const set = (change: Partial<StartDraft>) => setDraft((now) => ({ ...now, ...change }));
  const { name, layout, mass, motorId, controllerId, packId, propeller } = draft;
  const size = wholeSize(draft.size);
  const gap = nameGap(name, taken) || startGap({ size, mass, motorId, packId });
  const submit = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (gap !== "" || size === null || mass === null) return;
    // A name that no propeller has yet is told where the drive is described.
    const parts = { motorId, packId, ...(controllerId !== "" && { controllerId }) };
    const start = { name: name.trim(), layout, size, mass, ...parts };
    if (await addBuild(startingBuild({ ...start, propeller: propeller || "to be chosen" }))) onDone();
  };
  const chosen = STARTING_LAYOUTS.find(({ id }) => id === layout)!;
  return (
    <form class="form-grid" noValidate onSubmit={(event) => void submit(event)}>
      <SelectField
        label="Thrusters"
        value={layout}
        options={STARTING_LAYOUTS.map(({ id, label }) => ({ value: id, label }))}
        help={chosen.about}
        onChange={(next) => set({ layout: next })}
      />
      <TextField label="Name" value={name} maxLength={120} onChange={(next) => set({ name: next })} />
      <BodyFields draft={draft} set={set} />
      <PartFields draft={draft} set={set} />
      <div class="build-wide">
        <LayoutPicture thrusters={chosen.thrusters(size ?? USUAL_SIZE).map((one) => ({ ...one, drive: "" }))} isStill />
        {size === null && (
          <p class="hint">
            Drawn for an example of {SIZES.map(([key]) => Math.round(1000 * USUAL_SIZE[key])).join(" × ")} mm until the
            three sizes are typed.
          </p>
        )}
        <TakenAtFirst />
        <PartsHint />
      </div>
      <FormButtons onCancel={onDone} gap={tried ? gap : ""} />
    </form>
  );
}

function BodyFields({ draft: { size, mass }, set }: DraftProps) {
  return (
    <>
      <SizeFields size={size} onChange={(next) => set({ size: next })} />
      <QuantityField
        label="Mass with the water it encloses"
        symbol="m"
        dimension="mass"
        unit="kg"
        value={mass}
        positive
        max={1e6}
        help="Weighed dry, and the water between frames and inside shells that moves along; with its unit, such as 12 kg."
        onChange={(next) => set({ mass: next })}
      />
    </>
  );
}

function PartFields({ draft: { motorId, controllerId, packId, propeller }, set }: DraftProps) {
  const { motors, packs, controllers } = parts.value;
  const noController = { value: "", label: "None: no resistance, no limit" };
  const noPropeller = propeller === "" ? [{ value: "", label: "none is known yet" }] : [];
  return (
    <>
      <PartField label="Motor" list={motors} value={motorId} onChange={(id) => set({ motorId: id })} />
      <SelectField
        label="Controller"
        value={controllerId}
        options={[noController, ...controllers.map(({ id, document }) => ({ value: id, label: document.name }))]}
        onChange={(id) => set({ controllerId: id })}
      />
      <PartField label="Pack" list={packs} value={packId} onChange={(id) => set({ packId: id })} />
      <SelectField
        label="Propeller"
        value={propeller}
        options={[...noPropeller, ...drivePropellers.value.map((one) => ({ value: one.name, label: one.name }))]}
        onChange={(next) => set({ propeller: next })}
      />
    </>
  );
}

/** What a new vehicle begins with though nobody stated it. */
function TakenAtFirst() {
  return (
    <>
      <p class="hint">Taken until you say better, each in its section; every place and part can be changed too:</p>
      <ul class="hint">
        {TAKEN_AT_FIRST.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

interface StartParts {
  readonly size: BodySize | null;
  readonly mass: number | null;
  readonly motorId: string;
  readonly packId: string;
}

/** What is missing for a start; empty where nothing is. */
function startGap({ size, mass, motorId, packId }: StartParts): string {
  if (size === null) return "Needed: length, width and height of the vehicle.";
  if (mass === null) return "Needed: its mass.";
  if (motorId === "") return "Needed: a motor.";
  return packId === "" ? "Needed: a pack." : "";
}

type TypedSize = { readonly [Key in keyof BodySize]: number | null };

function wholeSize({ length, width, height }: TypedSize): BodySize | null {
  return length === null || width === null || height === null ? null : { length, width, height };
}

const SIZES = [
  ["length", "Length over all"],
  ["width", "Width"],
  ["height", "Height"],
] as const;

function SizeFields({ size, onChange }: { readonly size: TypedSize; readonly onChange: (size: TypedSize) => void }) {
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
          help={key === "length" ? "With its unit, such as 450 mm." : undefined}
          onChange={(si) => onChange({ ...size, [key]: si })}
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

import { useState } from "preact/hooks";
import type { ShapeItem, ShapeKind } from "../../../../../shared/model/vehicle/dragShapes.ts";
import { FormButtons } from "../../../../forms/FormButtons.tsx";
import { QuantityField } from "../../../../forms/QuantityField.tsx";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { TextField } from "../../../../forms/TextField.tsx";
import { draftOf, type ShapeDraft, shapeOf, withKind, withValue } from "./shapeDraft.ts";
import { SHAPE_KINDS, type ShapeSize } from "./shapeKinds.ts";

interface ShapeFormProps {
  /** Null for a new part. */
  readonly item: ShapeItem | null;
  readonly onKeep: (item: ShapeItem) => unknown;
  readonly onDone: () => void;
}

const KINDS = Object.entries(SHAPE_KINDS).map(([value, { label }]) => ({ value: value as ShapeKind, label }));

/** One part of the vehicle as a shape. */
export function ShapeForm({ item, onKeep, onDone }: ShapeFormProps) {
  const [draft, setDraft] = useState(() => draftOf(item));
  const [gap, setGap] = useState("");
  const set = (key: string, value: number | string | null) => setDraft((now) => withValue(now, key, value));
  const submit = (event: Event) => {
    event.preventDefault();
    const made = shapeOf(draft);
    if ("missing" in made) setGap(made.missing);
    else void onKeep(made.item);
  };
  return (
    <form class="form-grid" noValidate onSubmit={submit}>
      <TextField
        label="What it is on the vehicle"
        value={String(draft.values["name"] ?? "")}
        maxLength={120}
        onChange={(name) => set("name", name)}
      />
      <SelectField
        label="Shape"
        value={draft.kind}
        options={KINDS}
        onChange={(kind) => setDraft((now) => withKind(now, kind))}
      />
      <KindFields draft={draft} set={set} />
      <CommonFields draft={draft} set={set} />
      <FormButtons onCancel={onDone} gap={gap} />
    </form>
  );
}

interface DraftProps {
  readonly draft: ShapeDraft;
  readonly set: (key: string, value: number | string | null) => void;
}

const numberOf = ({ values }: ShapeDraft, key: string) => (typeof values[key] === "number" ? values[key] : null);

/** What this kind of shape needs and others do not. */
function KindFields({ draft, set }: DraftProps) {
  const { sizes, choices = [] } = SHAPE_KINDS[draft.kind];
  return (
    <>
      {sizes.map((size) => (
        <SizeField key={`${draft.kind} ${size.key}`} {...{ size, draft, set }} />
      ))}
      {choices.map(({ key, label, options }) => (
        <SelectField
          key={key}
          label={label}
          value={String(draft.values[key] ?? options[0]!.value)}
          options={options}
          onChange={(value) => set(key, value)}
        />
      ))}
      {draft.kind === "stated" && (
        <TextField
          label="Where the coefficient is from"
          optional
          value={String(draft.values["source"] ?? "")}
          maxLength={300}
          onChange={(source) => set("source", source === "" ? null : source)}
        />
      )}
    </>
  );
}

function SizeField({ size, draft, set }: DraftProps & { readonly size: ShapeSize }) {
  const { key, label, dimension, unit, optional, help } = size;
  const bounds = dimension === "fraction" ? { min: 0, max: 1 } : { positive: true, max: 1000 };
  return (
    <QuantityField
      {...{ label, dimension, unit, optional, help, ...bounds }}
      value={numberOf(draft, key)}
      onChange={(si) => set(key, si)}
      onProblem={(problem) => problem !== null && set(key, null)}
    />
  );
}

function CommonFields({ draft, set }: DraftProps) {
  return (
    <>
      <QuantityField
        label="How many of it"
        dimension="number"
        value={numberOf(draft, "count")}
        min={1}
        max={1000}
        onChange={(count) => count !== null && set("count", Math.round(count))}
      />
      <QuantityField
        label="Part that undisturbed water meets"
        dimension="fraction"
        unit="%"
        value={numberOf(draft, "exposedShare")}
        min={0}
        max={1}
        help="The rest hides behind other parts."
        onChange={(share) => share !== null && set("exposedShare", share)}
      />
      <QuantityField
        label="Factor for its neighbours"
        dimension="number"
        value={numberOf(draft, "interferenceFactor")}
        positive
        max={5}
        help="1 for none; more where parts squeeze the flow between them."
        onChange={(factor) => factor !== null && set("interferenceFactor", factor)}
      />
    </>
  );
}

import { signal } from "@preact/signals";
import { useMemo, useState } from "preact/hooks";
import type { BladeGeometryAnswer } from "../../../../shared/model/bladeElements.ts";
import type { BladeGeometry } from "../../../../shared/model/bladeGeometry.ts";
import type { Propeller } from "../../../../shared/model/parts/propeller.ts";
import { Dialog } from "../../../app/Dialog.tsx";
import { editPart } from "../../../app/edits.ts";
import { partOf } from "../../../app/session.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import {
  madeOutline,
  OUTLINES,
  type OutlineDraft,
  type OutlineName,
  outlineLike,
  shapeOf,
  shapePicture,
  shapeWords,
  tableText,
} from "./bladeShapeModel.ts";

/** The propeller whose blade shape is on show; null while the dialog is closed. */
export const shapedPropellerId = signal<string | null>(null);

/** Chord, pitch, thickness and camber along the blade: typed, pasted or made from an outline, and seen at once. */
export function BladeShapeDialog({ propellerId }: { readonly propellerId: string }) {
  const propeller = partOf("propellers", propellerId)?.document;
  const close = () => {
    shapedPropellerId.value = null;
  };
  if (propeller === undefined) return null;
  const keep = (geometry: BladeGeometry | null) => {
    const { geometry: _, ...others } = propeller;
    const document = geometry === null ? others : { ...others, geometry };
    void editPart("propellers", propellerId, document).then((stored) => stored && close());
  };
  return (
    <Dialog title={`Blade shape of ${propeller.name}`} onClose={close}>
      <ShapeForm propeller={propeller} onKeep={keep} onCancel={close} />
    </Dialog>
  );
}

interface ShapeFormProps {
  readonly propeller: Propeller;
  readonly onKeep: (geometry: BladeGeometry | null) => void;
  readonly onCancel: () => void;
}

function ShapeForm({ propeller, onKeep, onCancel }: ShapeFormProps) {
  const { geometry, diameter } = propeller;
  const [text, setText] = useState(geometry === undefined ? "" : tableText(geometry));
  const [bladeCount, setBladeCount] = useState(geometry?.bladeCount ?? propeller.bladeCount ?? 3);
  const [hubDiameter, setHubDiameter] = useState<number | null>(geometry?.hubDiameter ?? null);
  const shape = useMemo(
    () => shapeOf(text, { bladeCount, diameter, hubDiameter }),
    [text, bladeCount, diameter, hubDiameter],
  );
  const read = "read" in shape ? shape.read : null;
  const sizes = { propeller, bladeCount, hubDiameter };
  return (
    <div class="blade-shape">
      <SizeFields {...sizes} onBladeCount={setBladeCount} onHubDiameter={setHubDiameter} />
      <OutlineFields {...sizes} onMade={setText} />
      <TextField
        label="Sections, one row a radius"
        value={text}
        lines={9}
        help="From a spreadsheet or typed: radius or r/R; chord, c/D or c/R; pitch, P/D or pitch angle; thickness or t/c; camber or f/c; skew if known. Units stand in the header."
        onChange={setText}
      />
      {"problem" in shape && (
        <p class={text.trim() === "" ? "hint" : "warning"} role="status">
          {shape.problem}
        </p>
      )}
      {read && <ShapeSeen {...read} />}
      <div class="row form-buttons">
        <button type="button" class="primary" disabled={read === null} onClick={() => read && onKeep(read.geometry)}>
          Save
        </button>
        <button type="button" onClick={onCancel}>
          Cancel
        </button>
        {geometry !== undefined && (
          <button type="button" class="danger" onClick={() => onKeep(null)}>
            Remove the shape
          </button>
        )}
      </div>
    </div>
  );
}

/** What the sections of a blade do not say. */
interface Sizes {
  readonly propeller: Propeller;
  readonly bladeCount: number;
  /** m; null: that of the innermost section. */
  readonly hubDiameter: number | null;
}

interface SizeFieldsProps extends Sizes {
  readonly onBladeCount: (count: number) => void;
  readonly onHubDiameter: (metres: number | null) => void;
}

function SizeFields({ propeller, bladeCount, hubDiameter, onBladeCount, onHubDiameter }: SizeFieldsProps) {
  return (
    <div class="form-grid">
      <QuantityField
        label="Number of blades"
        symbol="Z"
        dimension="number"
        value={bladeCount}
        min={1}
        max={12}
        onChange={(count) => count !== null && onBladeCount(Math.round(count))}
      />
      <QuantityField
        label="Hub diameter"
        symbol="d_h"
        dimension="length"
        unit="mm"
        value={hubDiameter}
        optional
        min={0}
        max={propeller.diameter}
        help="Empty: twice the innermost radius of the table."
        onChange={onHubDiameter}
      />
    </div>
  );
}

/** The shape in words and as a picture, with what to know of it. */
function ShapeSeen({ geometry, warnings }: BladeGeometryAnswer) {
  return (
    <>
      <p role="status">{shapeWords(geometry)}</p>
      <Warnings items={warnings} />
      <Chart spec={shapePicture(geometry)} height={240} />
    </>
  );
}

interface OutlineFieldsProps extends Sizes {
  readonly onMade: (text: string) => void;
}

/** A hub of this part of the diameter where none is stated; common practice, no source. */
const USUAL_HUB = 0.2;

const OUTLINE_OPTIONS = Object.entries(OUTLINES).map(([value, label]) => ({ value: value as OutlineName, label }));

function OutlineFields({ propeller, bladeCount, hubDiameter, onMade }: OutlineFieldsProps) {
  const [draft, setDraft] = useState(() => outlineLike(propeller));
  const [problem, setProblem] = useState("");
  const set = (part: Partial<OutlineDraft>) => setDraft((now) => ({ ...now, ...part }));
  const { diameter } = propeller;
  const make = () => {
    const made = madeOutline(draft, { bladeCount, diameter, hubDiameter: hubDiameter ?? USUAL_HUB * diameter });
    setProblem("problem" in made ? made.problem : "");
    if ("text" in made) onMade(made.text);
  };
  const ratio = (label: string, symbol: string, key: Exclude<keyof OutlineDraft, "outline">, most: number) => (
    <QuantityField
      label={label}
      symbol={symbol}
      dimension="number"
      value={draft[key]}
      min={key === "camberRatio" ? -0.2 : 0.01}
      max={most}
      onChange={(value) => value !== null && set({ [key]: value })}
    />
  );
  return (
    <details>
      <summary>Make an outline to start from</summary>
      <div class="form-grid">
        <SelectField
          label="Outline"
          value={draft.outline}
          options={OUTLINE_OPTIONS}
          onChange={(outline) => set({ outline })}
        />
        {ratio("Pitch ratio", "P/D", "pitchRatio", 3)}
        {ratio("Expanded area ratio", "A_E/A_0", "areaRatio", 1.5)}
        {draft.outline !== "series" && ratio("Thickness over chord", "t/c", "thicknessRatio", 0.6)}
        {draft.outline !== "series" && ratio("Camber over chord", "f/c", "camberRatio", 0.2)}
        <button type="button" onClick={make}>
          Fill the table
        </button>
      </div>
      {problem !== "" && <p class="warning">{problem}</p>}
    </details>
  );
}

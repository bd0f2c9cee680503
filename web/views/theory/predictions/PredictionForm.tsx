import { useState } from "preact/hooks";
import type { Prediction } from "../../../../shared/model/prediction.ts";
import { parts } from "../../../app/session.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import { SeriesFields } from "../series/SeriesFields.tsx";
import { SurfaceFields } from "../surface/SurfaceFields.tsx";
import {
  draftLike,
  draftOf,
  KIND_NAMES,
  type PredictionDraft,
  predictionOf,
  suggestedName,
} from "./predictionDraft.ts";
import { addPrediction, changePrediction, predictions } from "./predictionsState.ts";
import { startingPropeller } from "./startingPropeller.ts";

interface PredictionFormProps {
  /** The prediction to change; null for a new one. */
  readonly changed: Prediction | null;
  readonly onDone: () => void;
}

/** What a prediction is computed from. */
export function PredictionForm({ changed, onDone }: PredictionFormProps) {
  const [draft, setDraft] = useState(() => {
    const start = draftLike(startingPropeller());
    return changed === null ? start : draftOf(changed, start);
  });
  const [missing, setMissing] = useState("");
  const set = (part: Partial<PredictionDraft>) => setDraft((now) => ({ ...now, ...part }));
  const submit = async (event: Event) => {
    event.preventDefault();
    const others = predictions.value.map(({ name }) => name).filter((name) => name !== changed?.name);
    const made = predictionOf(draft, others);
    if ("missing" in made) return setMissing(made.missing);
    const { prediction } = made;
    if (await (changed === null ? addPrediction(prediction) : changePrediction(changed.name, prediction))) onDone();
  };
  return (
    <form class="form-grid" onSubmit={(event) => void submit(event)} noValidate>
      <SelectField
        label="Computed from"
        value={draft.kind}
        options={KINDS}
        onChange={(kind) => set({ kind, isSeriesWhole: true })}
      />
      {draft.kind === "series" && <SeriesPart draft={draft} set={set} />}
      {draft.kind === "blades" && <BladesFields draft={draft} set={set} />}
      {draft.kind === "staticMerit" && <MeritFields draft={draft} set={set} />}
      <TextField
        label="Name"
        value={draft.name}
        help={`Left empty: ${suggestedName(draft)}`}
        onChange={(name) => set({ name })}
      />
      <div class="row form-buttons">
        <button type="submit" class="primary">
          {changed === null ? "Add" : "Save"}
        </button>
        <button type="button" onClick={onDone}>
          Cancel
        </button>
        {missing !== "" && (
          <span class="field-message" role="alert">
            {missing}
          </span>
        )}
      </div>
    </form>
  );
}

const KINDS = Object.entries(KIND_NAMES).map(([value, label]) => ({ value: value as PredictionDraft["kind"], label }));

interface FieldsProps {
  readonly draft: PredictionDraft;
  readonly set: (part: Partial<PredictionDraft>) => void;
}

function SeriesPart({ draft, set }: FieldsProps) {
  return (
    <>
      <SeriesFields
        value={draft.series}
        onChange={(series) => set({ series })}
        onReadable={(isSeriesWhole) => set({ isSeriesWhole })}
      />
      <QuantityField
        label="Pitch ratio"
        symbol="P/D"
        dimension="number"
        value={draft.pitchRatio}
        positive
        max={3}
        help="Tested from 0.5 to 1.4, in the nozzle from 0.6; numbers outside are marked."
        onChange={(pitchRatio) => set({ pitchRatio })}
        onProblem={(message) => message !== null && set({ pitchRatio: null })}
      />
      <DiameterField draft={draft} set={set} />
    </>
  );
}

function BladesFields({ draft, set }: FieldsProps) {
  const shaped = parts.value.propellers.filter(({ document }) => document.geometry !== undefined);
  return (
    <>
      <SelectField
        label="Propeller"
        value={draft.propellerId}
        options={[
          { value: "", label: shaped.length === 0 ? "No propeller has a blade shape yet" : "Choose" },
          ...shaped.map(({ id, document }) => ({ value: id, label: document.name })),
        ]}
        help="Propellers whose blade shape is known. Add the shape on the Parts screen."
        onChange={(propellerId) => set({ propellerId })}
      />
      <SurfaceFields value={draft.surface} onChange={(surface) => set({ surface })} />
    </>
  );
}

function MeritFields({ draft, set }: FieldsProps) {
  return (
    <>
      <QuantityField
        label="Static merit"
        symbol="FM"
        dimension="number"
        value={draft.staticMerit}
        positive
        max={2}
        help="Tells thrust against power; no rotation rate follows from it."
        onChange={(staticMerit) => set({ staticMerit })}
        onProblem={(message) => message !== null && set({ staticMerit: null })}
      />
      <DiameterField draft={draft} set={set} />
    </>
  );
}

function DiameterField({ draft, set }: FieldsProps) {
  return (
    <QuantityField
      label="Diameter"
      symbol="D"
      dimension="length"
      unit="mm"
      value={draft.diameter}
      positive
      max={1}
      onChange={(diameter) => set({ diameter })}
      onProblem={(message) => message !== null && set({ diameter: null })}
    />
  );
}

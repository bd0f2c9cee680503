import { useState } from "preact/hooks";
import type { Prediction } from "../../../../shared/model/prediction.ts";
import { Dialog } from "../../../app/Dialog.tsx";
import { Swatch } from "../../../charts/Swatch.tsx";
import { diagramRate } from "../theoryState.ts";
import { PredictionForm } from "./PredictionForm.tsx";
import { predictionNotes } from "./predictionNotes.ts";
import { allPredictions, isShown, removePrediction, show } from "./predictionsState.ts";
import { sourceWords } from "./predictionWords.ts";
import type { ShownPrediction } from "./shownPrediction.ts";

/** The computed curves of the project: shown or not, changed, removed, added. */
export function PredictionsPanel() {
  const [open, setOpen] = useState<{ readonly changed: Prediction | null } | null>(null);
  const notes = predictionNotes(allPredictions.value, diagramRate.value);
  return (
    <>
      {allPredictions.value.length === 0 && (
        <p class="hint">
          None yet. Add what a good published propeller of the same pitch would do, or the blade elements of your own
          blade shape.
        </p>
      )}
      <ul class="prediction-list">
        {allPredictions.value.map((shown) => (
          <PredictionRow
            key={shown.prediction.name}
            shown={shown}
            notes={notes.own.get(shown.prediction.name) ?? []}
            onChange={() => setOpen({ changed: shown.prediction })}
          />
        ))}
      </ul>
      {notes.shared.map((note) => (
        <p key={note} class="hint">
          {note}
        </p>
      ))}
      <div class="row">
        <button type="button" onClick={() => setOpen({ changed: null })}>
          Add a prediction
        </button>
      </div>
      {open && (
        <Dialog
          title={open.changed === null ? "Add a prediction" : `Change ${open.changed.name}`}
          onClose={() => setOpen(null)}
        >
          <PredictionForm changed={open.changed} onDone={() => setOpen(null)} />
        </Dialog>
      )}
    </>
  );
}

interface PredictionRowProps {
  readonly shown: ShownPrediction;
  /** What is to be known of it alone. */
  readonly notes: readonly string[];
  readonly onChange: () => void;
}

function PredictionRow({ shown, notes, onChange }: PredictionRowProps) {
  const { prediction, style, problem } = shown;
  const { name } = prediction;
  return (
    <li>
      <label class="row prediction-name">
        <input type="checkbox" checked={isShown(name)} onChange={(event) => show(name, event.currentTarget.checked)} />
        <Swatch kind="prediction" style={style} />
        <span>{name}</span>
      </label>
      <span class="muted">{sourceWords(prediction.source)}</span>
      <span class="row prediction-buttons">
        <button type="button" class="quiet" aria-label={`Change ${name}`} onClick={onChange}>
          Change
        </button>
        <button type="button" class="quiet" aria-label={`Remove ${name}`} onClick={() => void removePrediction(name)}>
          Remove
        </button>
      </span>
      {problem !== "" && <p class="warning">{problem}</p>}
      {notes.map((note) => (
        <p key={note} class="hint">
          {note}
        </p>
      ))}
    </li>
  );
}

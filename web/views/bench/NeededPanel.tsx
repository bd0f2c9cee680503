import { useState } from "preact/hooks";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { addPart, editRun } from "../../app/edits.ts";
import { focusQuestion } from "../../app/focusQuestion.ts";
import { partOf, parts } from "../../app/session.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { suggestedPropeller } from "./neededModel.ts";
import { withPropeller } from "./recipeEdits.ts";

/** What the log does not say and no coefficient can be had without: the propeller, chosen or made on the spot. */
export function NeededPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const propellers = parts.value.propellers;
  const suggested = suggestedPropeller(run.document, propellers);
  const choose = (id: string) =>
    editRun(run.id, `Set the propeller of ${run.document.name}`, (now) =>
      withPropeller(now, partOf("propellers", id)),
    ).then((stored) => stored && focusQuestion("bench-needed"));
  const none = propellers.length === 0;
  return (
    <section class="card bench-needed" id="bench-needed" aria-labelledby="bench-needed-title">
      <h2 id="bench-needed-title">Which propeller was on the stand?</h2>
      <p class="hint">
        Coefficients go with the fourth power of its diameter, which no log holds.
        {run.document.variant === "" &&
          " Its finish, or its name where no finish is stated, also becomes the variant of this run, by which runs are compared; change that under “On the stand”."}
      </p>
      {!none && (
        <div class="form-grid">
          <SelectField
            label="Propeller of this run"
            value=""
            options={[
              { value: "", label: "Choose a propeller" },
              ...propellers.map(({ id, document }) => ({ value: id, label: document.name })),
            ]}
            onChange={(id) => id !== "" && choose(id)}
          />
          {suggested && (
            <div class="bench-suggested">
              <span class="hint">The name of the log fits one of them:</span>
              <button type="button" onClick={() => void choose(suggested.id)}>
                Use “{suggested.document.name}”
              </button>
            </div>
          )}
        </div>
      )}
      <details open={none}>
        <summary>{none ? "Make a propeller" : "It is not in the list: make it"}</summary>
        <NewPropeller called={`Propeller of ${run.document.name}`.slice(0, 120)} onMade={choose} />
      </details>
    </section>
  );
}

interface PropellerDraft {
  readonly name: string;
  readonly diameter: number | null;
  readonly diameterUncertainty: number | null;
}

/** The least that a propeller needs; the rest can be added under Parts. */
function NewPropeller({ called, onMade }: { readonly called: string; readonly onMade: (id: string) => unknown }) {
  const [draft, setDraft] = useState<PropellerDraft>({ name: called, diameter: null, diameterUncertainty: null });
  const [tried, setTried] = useState(false);
  const make = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    const { name, diameter, diameterUncertainty } = draft;
    if (name.trim() === "" || diameter === null || diameterUncertainty === null) return;
    const before = new Set(parts.peek().propellers.map(({ id }) => id));
    if (!(await addPart("propellers", { name: name.trim(), diameter, diameterUncertainty }))) return;
    const made = parts.peek().propellers.find(({ id }) => !before.has(id));
    if (made) onMade(made.id);
  };
  return (
    <form class="form-grid" onSubmit={make} noValidate>
      <NewPropellerFields
        draft={draft}
        tried={tried}
        onChange={(change) => setDraft((now) => ({ ...now, ...change }))}
      />
      <div class="row form-buttons">
        <button type="submit" class="primary">
          Make it and use it here
        </button>
      </div>
    </form>
  );
}

interface NewPropellerFieldsProps {
  readonly draft: PropellerDraft;
  /** What is missing is told once it was tried without. */
  readonly tried: boolean;
  readonly onChange: (change: Partial<PropellerDraft>) => void;
}

function NewPropellerFields({ draft, tried, onChange }: NewPropellerFieldsProps) {
  const { name, diameter, diameterUncertainty } = draft;
  const needed = (missing: boolean, what: string) => (tried && missing ? what : null);
  return (
    <>
      <TextField
        label="Name of the propeller"
        value={name}
        maxLength={120}
        problem={needed(name.trim() === "", "Give it a name.")}
        onChange={(text) => onChange({ name: text })}
      />
      <QuantityField
        label="Diameter over the blade tips"
        symbol="D"
        dimension="length"
        unit="mm"
        value={diameter}
        positive
        max={1}
        problem={needed(diameter === null, "Needed: the diameter, e.g. 76 mm.")}
        onChange={(length) => onChange({ diameter: length })}
      />
      <QuantityField
        label="Standard uncertainty of the diameter"
        symbol="u(D)"
        dimension="length"
        unit="mm"
        value={diameterUncertainty}
        min={0}
        max={0.1}
        help="How far off the callipers may be, e.g. 0.1 mm."
        problem={needed(diameterUncertainty === null, "Needed: how well the diameter is known, e.g. 0.1 mm.")}
        onChange={(length) => onChange({ diameterUncertainty: length })}
      />
    </>
  );
}

import { useSignal } from "@preact/signals";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { addPart, editRun } from "../../app/edits.ts";
import { partOf, parts } from "../../app/session.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { withPropeller } from "./recipeEdits.ts";

/** What a run lacks before it can give coefficients, asked for where the eye is: the propeller, for its diameter. */
export function PropellerPrompt({ run }: { readonly run: StoredDocument<Run> }) {
  const known = parts.value.propellers;
  const set = (id: string) =>
    void editRun(run.id, `Set the propeller of ${run.document.name}`, (now) =>
      withPropeller(now, partOf("propellers", id)),
    );
  return (
    <section class="card" aria-labelledby="bench-propeller">
      <h2 id="bench-propeller">Which propeller was on the stand?</h2>
      {known.length > 0 ? (
        <SelectField
          label="Propeller of this run"
          value=""
          options={[
            { value: "", label: "Choose a propeller" },
            ...known.map(({ id, document }) => ({ value: id, label: document.name })),
          ]}
          help="Its diameter turns thrust into a coefficient. Another one is entered under Parts."
          onChange={set}
        />
      ) : (
        <NewPropeller name={run.document.name} onMade={set} />
      )}
    </section>
  );
}

/** A propeller known by its diameter alone; the rest can be filled in under Parts. */
function NewPropeller({ name, onMade }: { readonly name: string; readonly onMade: (id: string) => void }) {
  const diameter = useSignal<number | null>(null);
  const doubt = useSignal<number | null>(null);
  const make = async () => {
    const called = `Propeller of ${name}`;
    const added = await addPart("propellers", {
      name: called,
      diameter: diameter.value!,
      diameterUncertainty: doubt.value!,
      nozzle: false,
      note: "",
    });
    const made = parts.value.propellers.findLast(({ document }) => document.name === called);
    if (added && made) onMade(made.id);
  };
  return (
    <div class="form-grid">
      <QuantityField
        label="Diameter over the blade tips"
        symbol="D"
        dimension="length"
        unit="mm"
        value={diameter.value}
        positive
        max={1}
        onChange={(metres) => {
          diameter.value = metres;
        }}
      />
      <QuantityField
        label="Standard uncertainty of the diameter"
        symbol="u(D)"
        dimension="length"
        unit="mm"
        value={doubt.value}
        min={0}
        help="About 0.1 mm with callipers."
        onChange={(metres) => {
          doubt.value = metres;
        }}
      />
      <button
        type="button"
        class="primary"
        disabled={diameter.value === null || doubt.value === null}
        onClick={() => void make()}
      >
        Use this propeller
      </button>
    </div>
  );
}

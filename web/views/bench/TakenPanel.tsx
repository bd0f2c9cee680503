import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun } from "../../app/edits.ts";
import { wantedSection } from "../../app/sections.ts";
import { partOf, parts } from "../../app/session.ts";
import { takenForGranted, withoutTakenPropeller } from "./takenModel.ts";

/** What a new run was given because the log does not say it: told until its columns are confirmed. */
export function TakenPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const taken = takenForGranted(run.document, parts.value);
  if (taken === null) return null;
  const propeller = taken.isPropeller ? partOf("propellers", run.document.propellerId)?.document : undefined;
  return (
    <section class="card bench-needed" aria-labelledby="bench-taken-title">
      <h2 id="bench-taken-title">{taken.title}</h2>
      <p>{taken.sentence}</p>
      <div class="row">
        {propeller && (
          <button
            type="button"
            onClick={() =>
              void editRun(run.id, `Another propeller than ${propeller.name}`, (now) =>
                withoutTakenPropeller(now, propeller),
              ).then(() => (wantedSection.value = { id: "bench-needed" }))
            }
          >
            It was another propeller
          </button>
        )}
        <button type="button" class="quiet" onClick={() => (wantedSection.value = { id: "bench-setup" })}>
          Change what was on the stand
        </button>
      </div>
    </section>
  );
}

import { useState } from "preact/hooks";
import type { RequirementCheck } from "../../../../shared/model/vehicle/requirementAnswer.ts";
import type { Vehicle } from "../../../../shared/model/vehicle/vehicle.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { computeVehicle } from "../../../api/vehicles.ts";
import { shownVehicle } from "../vehicleState.ts";
import { RequirementPanel } from "./RequirementPanel.tsx";

const DRAWING = { draws: 10_000, seed: 1 };

type Drawn =
  | { readonly state: "running"; readonly stop: () => void }
  | { readonly state: "done"; readonly of: Vehicle; readonly check: RequirementCheck | null }
  | { readonly state: "failed"; readonly why: string };

/** The probabilities by drawing every doubtful input, when asked: it takes some seconds, so the workbench does it. */
export function DrawsButton() {
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const start = async () => {
    const vehicle = shownVehicle.value;
    if (vehicle === null) return;
    const abort = new AbortController();
    setDrawn({ state: "running", stop: () => abort.abort() });
    try {
      const answer = await computeVehicle({ vehicle, drawing: DRAWING }, abort.signal);
      setDrawn({ state: "done", of: vehicle, check: answer.requirement });
    } catch (thrown) {
      setDrawn(abort.signal.aborted ? null : { state: "failed", why: sentenceOf(thrown) });
    }
  };
  return (
    <>
      {drawn?.state === "running" ? (
        <p class="row">
          <progress aria-label="Drawing all inputs" />
          <button type="button" onClick={drawn.stop}>
            Stop
          </button>
        </p>
      ) : (
        <p class="row">
          <button type="button" onClick={() => void start()}>
            Check the probabilities by {DRAWING.draws} draws
          </button>
        </p>
      )}
      {drawn?.state === "failed" && <p class="warning">{drawn.why}</p>}
      {drawn?.state === "done" &&
        (drawn.of === shownVehicle.value ? (
          <details open>
            <summary>By draws</summary>
            <RequirementPanel check={drawn.check} />
          </details>
        ) : (
          <p class="hint">Something has changed since; draw again.</p>
        ))}
    </>
  );
}

import { restartReduction, stopReduction } from "../../app/reductions.ts";
import { openState } from "./benchState.ts";

/** How far the work on a long log has come, with the way to give it up; given up, the way to begin it again. */
export function ReductionProgress({ runId }: { readonly runId: string }) {
  const state = openState.value;
  if (state?.state === "working" && state.fraction !== undefined)
    return (
      <div class="row">
        <label>
          Reducing the log <progress value={state.fraction} />
        </label>
        <button type="button" class="quiet" onClick={() => stopReduction(runId)}>
          Cancel
        </button>
      </div>
    );
  if (state?.problem?.code !== "page.stopped") return null;
  return (
    <button type="button" onClick={() => restartReduction(runId)}>
      Reduce this log
    </button>
  );
}

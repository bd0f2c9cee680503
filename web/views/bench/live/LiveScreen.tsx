import { Fragment } from "preact";
import { useMemo } from "preact/hooks";
import type { LiveResult, StoredRecording } from "../../../../shared/model/recording.ts";
import type { Run } from "../../../../shared/model/run.ts";
import { Fold } from "../../../app/Fold.tsx";
import { notesOf } from "../../../app/notes.ts";
import { Screen } from "../../../app/Screen.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { counts } from "../../../app/words.ts";
import { Chart } from "../../../charts/Chart.tsx";
import { BenchLayout } from "../BenchLayout.tsx";
import { CoefficientsPanel } from "../CoefficientsPanel.tsx";
import { hasClock } from "../TracePanel.tsx";
import { traceChart } from "../traceChart.ts";
import { LiveColumns } from "./LiveColumns.tsx";
import { LivePlateaus } from "./LivePlateaus.tsx";
import { LiveSource } from "./LiveSource.tsx";
import { LiveStand } from "./LiveStand.tsx";
import { asRecordingEdit, asRun, liveAnswer, needsPerson } from "./liveModel.ts";
import { liveResult } from "./liveState.ts";
import { portLinks } from "./portLink.ts";
import { editRecording } from "./recordingActs.ts";
import "./live.css";

/** A run while it is recorded: the lines as they come, and what they say so far. */
export function LiveScreen({ recording }: { readonly recording: StoredRecording }) {
  const result = liveResult.value;
  const isReading = portLinks.value.get(recording.id)?.state === "reading";
  const state = { recording, result, isReading };
  const run = asRun(recording, result);
  const notes = result?.reduction ? notesOf(result.reduction) : [];
  return (
    <Screen
      question="What does this log say so far?"
      answer={liveAnswer(state)}
      tone={needsPerson(state) ? "problem" : result?.reduction ? "known" : "open"}
      basis={
        result?.reduction &&
        "± is the half-width of the 95 % interval, here and below. Plateaus, zero and checks are settled when the recording is kept as a run."
      }
    >
      <BenchLayout about={run.purpose === "propeller" ? "bench" : "motor"}>
        <Fragment key={recording.id}>
          <LiveSource recording={recording} result={result} />
          {result !== null && <LivePicture result={result} run={run} />}
          {result?.reduction && <CoefficientsPanel reduction={result.reduction} run={run} />}
          {result?.reduction && <LivePlateaus reduction={result.reduction} />}
          <LiveStand
            run={run}
            onChange={(label, change) => editRecording(recording.id, label, asRecordingEdit(change))}
          />
          {result !== null && <LiveColumns recording={recording} result={result} />}
          {notes.length > 0 && (
            <Fold id="bench-warnings" title="What to know so far" note={counts(notes.length, "note")} open={false}>
              <Warnings items={notes} />
            </Fold>
          )}
        </Fragment>
      </BenchLayout>
    </Screen>
  );
}

function LivePicture({ result, run }: { readonly result: LiveResult; readonly run: Run }) {
  const { trace, reduction } = result;
  const clocked = hasClock(run);
  const spec = useMemo(
    () =>
      trace === null ? null : traceChart({ trace, whole: trace, reduction, recipe: run.recipe, hasClock: clocked }),
    [trace, reduction, clocked, run.recipe],
  );
  if (spec === null || spec.series.length === 0) return null;
  return (
    <div class="bench-picture" id="bench-picture">
      <Chart spec={spec} height={340} />
    </div>
  );
}

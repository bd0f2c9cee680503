import { useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { runFileAddress } from "../../api/client.ts";
import { Caution } from "../../app/Caution.tsx";
import { needReductions, restartReduction, stopReduction } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { openProjectId, runs } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import "./bench.css";
import { benchAnswer } from "./benchModel.ts";
import { followOpenRun, inspection, openRun, openState } from "./benchState.ts";
import { ColumnsPanel } from "./ColumnsPanel.tsx";
import { CompanionPanel } from "./CompanionPanel.tsx";
import { provenance } from "./coefficientsModel.ts";
import { FitPanel } from "./FitPanel.tsx";
import { Intake } from "./Intake.tsx";
import { PlateausTable } from "./PlateausTable.tsx";
import { PropellerPrompt } from "./PropellerPrompt.tsx";
import { QualityPanel } from "./QualityPanel.tsx";
import { ReadingPanel } from "./ReadingPanel.tsx";
import { RunList } from "./RunList.tsx";
import { SetupPanel } from "./SetupPanel.tsx";
import { TarePanel } from "./TarePanel.tsx";
import { hasClock, TracePanel } from "./TracePanel.tsx";

export default function BenchView() {
  // What is on show is asked for first: the other runs of a project can wait.
  useEffect(followOpenRun, []);
  useSignalEffect(() => {
    const open = openRun.value;
    needReductions([...(open === null ? [] : [open.id]), ...runs.value.map(({ id }) => id)]);
  });
  const run = openRun.value;
  const state = openState.value;
  const reduction = state?.reduction ?? null;
  const motorRun = run !== null && run.document.purpose !== "propeller";
  return (
    <Screen
      question="What does this log say?"
      answer={
        run === null
          ? "No run yet. Drop the log of a thrust stand below, or type a table of readings."
          : benchAnswer(run.document, state)
      }
      tone={state?.problem ? "problem" : reduction === null && !motorRun ? "open" : "known"}
      basis={
        reduction && (
          <>
            ± is the half-width of the 95 % interval, here and below. {provenance(reduction)}{" "}
            {run && (
              <a href={runFileAddress(openProjectId(), run.id)} download={run.document.file.name}>
                The log as it came
              </a>
            )}
          </>
        )
      }
    >
      <div class="bench-layout">
        <div class="bench-side">
          <Intake />
          <RunList />
          <Caution about={motorRun ? "motor" : "bench"} />
        </div>
        <div class="bench-main">{run !== null && <OpenRun key={run.id} run={run} reduction={reduction} />}</div>
      </div>
    </Screen>
  );
}

interface OpenRunProps {
  readonly run: StoredDocument<Run>;
  readonly reduction: Reduction | null;
}

/** Everything of the run on show, the picture first. */
function OpenRun({ run, reduction }: OpenRunProps) {
  const first = inspection.value;
  return (
    <>
      {openState.value?.state === "working" && openState.value.fraction !== undefined && (
        <div class="row">
          <label>
            Reducing the log <progress value={openState.value.fraction} />
          </label>
          <button type="button" class="quiet" onClick={() => stopReduction(run.id)}>
            Cancel
          </button>
        </div>
      )}
      {openState.value?.problem?.code === "page.stopped" && (
        <button type="button" onClick={() => restartReduction(run.id)}>
          Reduce this log
        </button>
      )}
      {run.document.purpose === "propeller" && run.document.propellerId === undefined && <PropellerPrompt run={run} />}
      <TracePanel />
      {first !== null && first.value === null && (
        <section class="card">
          <p class="hint">{first.problem}</p>
          <ReadingPanel run={run} inspection={null} />
        </section>
      )}
      {first?.value && <ColumnsPanel key={columnsKey(run.document)} run={run} inspection={first.value} />}
      <CompanionPanel run={run} />
      {reduction !== null && <QualityPanel quality={reduction.quality} recipe={run.document.recipe} />}
      {reduction !== null && <Warnings items={reduction.warnings} />}
      {reduction !== null && (
        <TarePanel reduction={reduction} recipe={run.document.recipe} hasClock={hasClock(run.document)} />
      )}
      {reduction !== null && <PlateausTable reduction={reduction} hasClock={hasClock(run.document)} />}
      {reduction !== null && <FitPanel reduction={reduction} run={run.document} />}
      <SetupPanel run={run} />
    </>
  );
}

/** The columns as stored; a panel that was edited but not confirmed starts over only when these change. */
function columnsKey({ confirmed, recipe: { columns, polePairs, reading } }: Run): string {
  return JSON.stringify([confirmed, columns, polePairs, reading]);
}

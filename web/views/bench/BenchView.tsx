import { useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { runFileAddress } from "../../api/client.ts";
import { notesOf } from "../../app/notes.ts";
import { awaits, needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { openProjectId, runs } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { counts } from "../../app/words.ts";
import { AdvancePanel } from "./AdvancePanel.tsx";
import { BenchLayout } from "./BenchLayout.tsx";
import { BudgetPanel } from "./BudgetPanel.tsx";
import "./bench.css";
import { Fold } from "../../app/Fold.tsx";
import { SectionList } from "../../app/SectionList.tsx";
import { assumedWords, benchAnswer, lacksCalibration, unitNotes } from "./benchModel.ts";
import { followOpenRun, inspection, openRun, openState } from "./benchState.ts";
import { CoefficientsPanel } from "./CoefficientsPanel.tsx";
import { ColumnsPanel } from "./ColumnsPanel.tsx";
import { CompanionPanel } from "./CompanionPanel.tsx";
import { provenance } from "./coefficientsModel.ts";
import { turnedRoles } from "./columnSigns.ts";
import { FitPanel } from "./FitPanel.tsx";
import { LiveScreen } from "./live/LiveScreen.tsx";
import { followRecordings, openRecording } from "./live/liveState.ts";
import { NeededPanel } from "./NeededPanel.tsx";
import { PlateausTable } from "./PlateausTable.tsx";
import { QualityPanel } from "./QualityPanel.tsx";
import { ReadingPanel } from "./ReadingPanel.tsx";
import { ReductionProgress } from "./ReductionProgress.tsx";
import { readingOfRun } from "./readingOwner.ts";
import { SetupPanel } from "./SetupPanel.tsx";
import { benchSections } from "./sections.ts";
import { TakenPanel } from "./TakenPanel.tsx";
import { TarePanel } from "./TarePanel.tsx";
import { hasClock, TracePanel } from "./TracePanel.tsx";
import { followZoom } from "./traceZoom.ts";

export default function BenchView() {
  // What is on show is asked for first: the other runs of a project can wait.
  useEffect(followOpenRun, []);
  useEffect(followZoom, []);
  useEffect(followRecordings, []);
  useSignalEffect(() => {
    const open = openRun.value;
    needReductions([...(open === null ? [] : [open.id]), ...runs.value.map(({ id }) => id)]);
  });
  const run = openRun.value;
  const state = openState.value;
  const reduction = state?.reduction ?? null;
  const motorRun = run !== null && run.document.purpose !== "propeller";
  if (openRecording.value !== null) return <LiveScreen recording={openRecording.value} />;
  return (
    <Screen
      question="What does this log say?"
      answer={
        run === null
          ? "No run yet. Drop the log of a thrust stand below, or type a table of readings."
          : benchAnswer(run.document, state)
      }
      tone={state?.problem ? "problem" : reduction === null && !motorRun ? "open" : "known"}
      isBusy={run !== null && awaits(run)}
      basis={
        reduction && (
          <>
            ± is the half-width of the 95 % interval, here and below.{" "}
            {run && assumedWords(run.document, inspection.value?.value ?? null)} {provenance(reduction)}{" "}
            {run && (
              <a href={runFileAddress(openProjectId(), run.id)} download={run.document.file.name}>
                The log as it came
              </a>
            )}
          </>
        )
      }
    >
      <BenchLayout about={motorRun ? "motor" : "bench"}>
        {run !== null && <OpenRun key={run.id} run={run} reduction={reduction} />}
      </BenchLayout>
    </Screen>
  );
}

interface OpenRunProps {
  readonly run: StoredDocument<Run>;
  readonly reduction: Reduction | null;
}

/** Everything of the run on show: what is missing or to confirm first, then the picture and what came out. */
function OpenRun({ run, reduction }: OpenRunProps) {
  const first = inspection.value;
  const { document } = run;
  const columns =
    first === null ? null : first.value === null ? (
      <section class="card" id="bench-columns">
        <p class="hint">{first.problem}</p>
        <ReadingPanel owner={readingOfRun(run)} inspection={null} />
      </section>
    ) : (
      <ColumnsPanel key={columnsKey(document)} run={run} inspection={first.value} />
    );
  return (
    <>
      <ReductionProgress runId={run.id} />
      <SectionList label="Sections of this run" sections={benchSections(document, reduction)} />
      {document.purpose === "propeller" && document.propellerId === undefined && <NeededPanel run={run} />}
      <TakenPanel run={run} />
      {!document.confirmed && columns}
      <div class="bench-picture" id="bench-picture" tabIndex={-1}>
        <TracePanel />
      </div>
      {reduction !== null && <Result reduction={reduction} run={document} />}
      {document.confirmed && columns}
      <SetupPanel run={run} />
      <CompanionPanel run={run} />
    </>
  );
}

/** What came out, the most telling first; what it was made from after it. */
function Result({ reduction, run }: { readonly reduction: Reduction; readonly run: Run }) {
  const { advance, budget, quality } = reduction;
  const told = notesOf(reduction);
  const doubtful = new Set(told.filter(({ code }) => code === "bench.reading-doubtful").map(({ where }) => where));
  const units = unitNotes(run, inspection.value?.value ?? null).filter(({ where }) => !doubtful.has(where ?? ""));
  const notes = [...units, ...told];
  const clocked = hasClock(run);
  return (
    <>
      {notes.length > 0 && (
        <Fold id="bench-warnings" title="What to know" note={counts(notes.length, "note")}>
          <Warnings items={notes} />
        </Fold>
      )}
      {advance !== null && <AdvancePanel reduction={reduction} advance={advance} recipe={run.recipe} />}
      <CoefficientsPanel reduction={reduction} run={run} />
      <QualityPanel quality={quality} recipe={run.recipe} />
      {advance === null && <FitPanel reduction={reduction} />}
      {budget !== undefined && <BudgetPanel budget={budget} lacksCalibration={lacksCalibration(reduction)} />}
      <PlateausTable reduction={reduction} hasClock={clocked} />
      <TarePanel reduction={reduction} recipe={run.recipe} hasClock={clocked} />
    </>
  );
}

/** The columns as stored; a panel that was edited but not confirmed starts over only when these change. */
function columnsKey({ confirmed, recipe }: Run): string {
  const { columns, polePairs, reading } = recipe;
  return JSON.stringify([confirmed, columns, polePairs, reading, [...turnedRoles(recipe)]]);
}

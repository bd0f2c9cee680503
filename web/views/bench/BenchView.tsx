import { useSignalEffect } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { runFileAddress } from "../../api/client.ts";
import { Caution } from "../../app/Caution.tsx";
import { needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { openProjectId, runs } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import "./bench.css";
import { benchAnswer } from "./benchModel.ts";
import { editRecipe, followOpenRun, inspection, openRun, openState, pickedPlateau, trace } from "./benchState.ts";
import { ColumnsPanel } from "./ColumnsPanel.tsx";
import { provenance } from "./coefficientsModel.ts";
import { FitPanel } from "./FitPanel.tsx";
import { Intake } from "./Intake.tsx";
import { PlateausTable } from "./PlateausTable.tsx";
import { plateauName } from "./plateausModel.ts";
import { RunList } from "./RunList.tsx";
import { automatic, isAutomatic, withPlateauMoved, withTareMoved } from "./recipeEdits.ts";
import { SetupPanel } from "./SetupPanel.tsx";
import { detailCharts, spanTarget, traceChart } from "./traceChart.ts";

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
  return (
    <Screen
      question="What does this log say?"
      answer={
        run === null
          ? "No run yet. Drop the log of a thrust stand below, or type a table of readings."
          : benchAnswer(run.document, state)
      }
      tone={state?.problem ? "problem" : reduction === null ? "open" : "known"}
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
          <Caution about="bench" />
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
        <label>
          Reducing the log <progress value={openState.value.fraction} />
        </label>
      )}
      <TracePicture />
      {first !== null && first.value === null && <p class="hint">{first.problem}</p>}
      {first?.value && <ColumnsPanel key={columnsKey(run.document)} run={run} inspection={first.value} />}
      {reduction !== null && <Warnings items={reduction.warnings} />}
      {reduction !== null && <PlateausTable reduction={reduction} />}
      {reduction !== null && <FitPanel reduction={reduction} run={run.document} />}
      <SetupPanel run={run} />
    </>
  );
}

/** The columns as stored; a panel that was edited but not confirmed starts over only when these change. */
function columnsKey({ confirmed, recipe: { columns, polePairs } }: Run): string {
  return JSON.stringify([confirmed, columns, polePairs]);
}

/** The log over time; edges of plateaus and tares can be dragged. */
function TracePicture() {
  const read = trace.value;
  const reduction = openState.value?.reduction ?? null;
  const recipe = openRun.value?.document.recipe ?? null;
  const hasClock = recipe?.columns.some(({ role }) => role === "time") ?? false;
  const spec = useMemo(
    () => (read?.value ? traceChart(read.value, reduction, hasClock) : null),
    [read, reduction, hasClock],
  );
  const details = useMemo(() => (read?.value ? detailCharts(read.value, hasClock) : []), [read, hasClock]);
  if (spec === null || recipe === null)
    return read === null ? <p class="muted">Reading the log …</p> : <p class="hint">{read.problem}</p>;

  const move = (id: string, start: number, end: number) => {
    if (reduction === null) return;
    const { kind, index } = spanTarget(id);
    if (kind === "tare")
      void editRecipe(`Moved tare ${index + 1}`, (now) =>
        withTareMoved(now, reduction.tare.windows, index, { start, end }),
      );
    else
      void editRecipe(`Moved ${plateauName(index).toLowerCase()}`, (now) =>
        withPlateauMoved(now, reduction.plateaus, index, { start, end }),
      );
  };
  const pick = (id: string) => {
    const { kind, index } = spanTarget(id);
    pickedPlateau.value = kind === "plateau" ? index : null;
  };
  return (
    <>
      <Chart spec={spec} height={360} onSpanChange={move} onSpanSelect={pick} />
      <div class="row">
        {spec.spans?.length ? <p class="hint">Drag the edge of a plateau or tare to move it.</p> : null}
        {!isAutomatic(recipe) && (
          <button type="button" class="quiet" onClick={() => void editRecipe("Back to automatic plateaus", automatic)}>
            Back to automatic
          </button>
        )}
      </div>
      {details.length > 0 && (
        <details>
          <summary>Command and other channels</summary>
          {details.map((one) => (
            <Chart key={one.title} spec={one} height={180} />
          ))}
        </details>
      )}
    </>
  );
}

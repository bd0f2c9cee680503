import { useMemo } from "preact/hooks";
import { sweepInWords } from "../../../shared/bench/sweepInWords.ts";
import type { Run } from "../../../shared/model/run.ts";
import { Chart } from "../../charts/Chart.tsx";
import { editRecipe, openRun, openState, pickedPlateau, trace } from "./benchState.ts";
import { plateauName } from "./plateausModel.ts";
import { asSweep, automatic, isAutomatic, withPlateauMoved, withTareMoved } from "./recipeEdits.ts";
import { offersSweep } from "./sweepModel.ts";
import { detailCharts, spanTarget, traceChart } from "./traceChart.ts";

/** Whether the log tells the time; else rows are counted. */
export function hasClock({ recipe }: Run): boolean {
  return recipe.columns.some(({ role }) => role === "time");
}

/** The log over time; edges of plateaus and tares can be dragged. */
export function TracePanel() {
  const read = trace.value;
  const reduction = openState.value?.reduction ?? null;
  const run = openRun.value?.document ?? null;
  const recipe = run?.recipe ?? null;
  const clocked = run !== null && hasClock(run);
  const spec = useMemo(
    () => (read?.value ? traceChart(read.value, reduction, clocked) : null),
    [read, reduction, clocked],
  );
  const details = useMemo(() => (read?.value ? detailCharts(read.value, clocked) : []), [read, clocked]);
  if (spec === null || recipe === null)
    return read === null ? <p class="muted">Reading the log …</p> : <p class="hint">{read.problem}</p>;

  const move = (id: string, start: number, end: number) => {
    if (reduction === null) return;
    const { kind, index } = spanTarget(id);
    if (kind === "rejected") return;
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
      {reduction?.sweep && (
        <section class="card">
          <h2>Reduced as a sweep</h2>
          {sweepInWords(reduction).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </section>
      )}
      <div class="row">
        {spec.spans?.length ? <p class="hint">Drag the edge of a plateau or tare to move it.</p> : null}
        {offersSweep(reduction, openState.value?.problem?.code) && (
          <button type="button" onClick={() => void editRecipe("Reduced as a sweep", asSweep)}>
            Reduce as a sweep
          </button>
        )}
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

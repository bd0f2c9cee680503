import { useMemo, useState } from "preact/hooks";
import { sweepInWords } from "../../../shared/bench/sweepInWords.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { Trace } from "../../../shared/model/trace.ts";
import { reduced } from "../../app/reductions.ts";
import { Chart } from "../../charts/Chart.tsx";
import { editRecipe, openRun, openState, pickedPlateau, trace } from "./benchState.ts";
import { plateauName } from "./plateausModel.ts";
import {
  asSweep,
  automatic,
  isAutomatic,
  tareWindowsOf,
  withHandPlateauMoved,
  withPlateauMoved,
  withTareMoved,
} from "./recipeEdits.ts";
import { offersSweep } from "./sweepModel.ts";
import { detailCharts, spanTarget, traceChart } from "./traceChart.ts";
import { refining, shownTrace, zoomTrace } from "./traceZoom.ts";
import { fineness } from "./traceZoomModel.ts";

/** Whether the log tells the time; else rows are counted. */
export function hasClock({ recipe }: Run): boolean {
  return recipe.columns.some(({ role }) => role === "time");
}

/** The log over time; edges of plateaus and tares can be dragged, and a zoom brings the samples themselves. */
export function TracePanel() {
  const read = trace.value;
  const shown = shownTrace.value;
  const reduction = openState.value?.reduction ?? null;
  const run = openRun.value?.document ?? null;
  const clocked = run !== null && hasClock(run);
  const recipe = run?.recipe ?? null;
  const whole = read?.value ?? null;
  const spec = useMemo(
    () => (shown && whole && recipe ? traceChart({ trace: shown, whole, reduction, recipe, hasClock: clocked }) : null),
    [shown, whole, reduction, recipe, clocked],
  );
  if (spec === null || shown === null || whole === null || recipe === null)
    return read === null ? <p class="muted">Reading the log …</p> : <p class="hint">{read.problem}</p>;
  return (
    <>
      <Chart spec={spec} height={360} onSpanChange={moveSpan} onSpanSelect={pickSpan} onZoom={zoomTrace} />
      <p class="hint" role="status">
        {refining.value ? "Reading the samples of this stretch …" : fineness(shown, clocked)}
        {spec.spans?.length ? <span class="screen-only"> Drag the edge of a plateau or tare to move it.</span> : null}
      </p>
      <WayOfReduction reduction={reduction} recipe={recipe} />
      <OtherChannels trace={shown} hasClock={clocked} />
    </>
  );
}

/** Takes an edge that was dragged, or typed, into the recipe; done when the picture tells where it came to lie. */
async function moveSpan(id: string, start: number, end: number): Promise<void> {
  const run = openRun.peek();
  const reduction = openState.peek()?.reduction;
  const { kind, index } = spanTarget(id);
  if (run === null || kind === "rejected") return;
  const span = { start, end };
  await (kind === "tare"
    ? editRecipe(`Moved tare ${index + 1}`, (now) =>
        withTareMoved(now, reduction?.tare.windows ?? tareWindowsOf(now), index, span),
      )
    : editRecipe(`Moved ${plateauName(index).toLowerCase()}`, (now) =>
        reduction ? withPlateauMoved(now, reduction.plateaus, index, span) : withHandPlateauMoved(now, index, span),
      ));
  await reduced(run.id);
}

function pickSpan(id: string): void {
  const { kind, index } = spanTarget(id);
  pickedPlateau.value = kind === "plateau" ? index : null;
}

interface WayOfReductionProps {
  readonly reduction: Reduction | null;
  readonly recipe: Recipe;
}

/** Plateaus or a sweep, and the way back to what the program finds. */
function WayOfReduction({ reduction, recipe }: WayOfReductionProps) {
  return (
    <>
      {reduction?.sweep && (
        <section class="card">
          <h2>Reduced as a sweep</h2>
          {sweepInWords(reduction).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </section>
      )}
      <div class="row">
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
    </>
  );
}

/** The command and the electrical side over the stretch on show. */
function OtherChannels({ trace: shown, hasClock: clocked }: { readonly trace: Trace; readonly hasClock: boolean }) {
  const [open, setOpen] = useState(false);
  const details = useMemo(() => detailCharts(shown, clocked), [shown, clocked]);
  if (details.length === 0) return null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Command and other channels</summary>
      {open && details.map((one) => <Chart key={one.title} spec={one} height={180} />)}
    </details>
  );
}

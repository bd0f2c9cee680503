import { computed, signal } from "@preact/signals";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { Caution } from "../../../app/Caution.tsx";
import { project } from "../../../app/session.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { bound } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { Findings } from "../Findings.tsx";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subject.ts";
import {
  depthPicture,
  EXAMPLE_DEPTH,
  exampleNote,
  missingOf,
  nozzleNote,
  untold,
  waterAnswer,
  waterLimits,
  waterRows,
} from "./waterModel.ts";

/** Depth of the shaft, m; null: nobody stated it, and an example stands in. */
const depth = signal<number | null>(null);
/** rev/s; null: the greatest that was measured. */
const chosenRate = signal<number | null>(null);

const working = computed(() => ({
  fluid: project.value!.document.water,
  depth: depth.value ?? EXAMPLE_DEPTH,
  isExample: depth.value === null,
  rotationRate: chosenRate.value ?? subject.value?.topRate ?? 50,
}));

const limits = computed(() => {
  const of = subject.value;
  if (of === null) return { problem: "Reduce a run on Bench first: the limits follow from its thrust." };
  const missing = missingOf(of);
  if (missing !== "") return { problem: missing };
  try {
    return { result: waterLimits(of, working.value) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

/** Drawn only while the card is open: it asks for the limits at many rotation rates. */
const picture = computed(() => {
  const of = subject.value;
  return of === null || limits.value.result === undefined ? null : depthPicture(of, working.value);
});

export const waterNote = computed(() => {
  const { result } = limits.value;
  return result === undefined ? "" : waterAnswer(result, working.value);
});

/** Cavitation and air drawn from the surface, in the working water. */
export function WaterPanel() {
  const told = limits.value;
  return (
    <>
      <div class="form-grid">
        <SubjectField />
        <QuantityField
          label="Depth of the shaft"
          symbol="h"
          dimension="length"
          unit="m"
          {...bound(depth)}
          optional
          help={depth.value === null ? exampleNote : undefined}
          min={0}
          max={1000}
        />
        <QuantityField
          label="Rotation rate"
          symbol="n"
          dimension="rotationRate"
          unit="rpm"
          value={working.value.rotationRate}
          positive
          onChange={(rate) => {
            if (rate !== null) chosenRate.value = rate;
          }}
        />
      </div>
      {told.problem !== undefined && <p class="hint">{told.problem}</p>}
      {told.result !== undefined && (
        <>
          <p role="status">{waterNote.value}</p>
          {subject.value && nozzleNote(subject.value) !== "" && <p class="hint">{nozzleNote(subject.value)}</p>}
          <Warnings items={untold(told.result)} />
          {picture.value && <Chart spec={picture.value} height={300} />}
          <Findings caption="Numbers behind the limits of the water" rows={waterRows(told.result)} />
          <Caution about="drive" />
        </>
      )}
    </>
  );
}

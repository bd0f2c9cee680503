import { computed, signal } from "@preact/signals";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { Caution } from "../../../app/Caution.tsx";
import { project } from "../../../app/session.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { Findings } from "../Findings.tsx";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subject.ts";
import { depthPicture, missingOf, waterLimits, waterRows } from "./waterModel.ts";

/** Depth of the shaft, m. */
const depth = signal(1);
/** rev/s; null: the greatest that was measured. */
const chosenRate = signal<number | null>(null);

const working = computed(() => ({
  fluid: project.value!.document.water,
  depth: depth.value,
  rotationRate: chosenRate.value ?? subject.value?.topRate ?? 50,
}));

const limits = computed(() => {
  const of = subject.value;
  if (of === null) return { problem: "Reduce a run on Bench first: the limits follow from its thrust." };
  const missing = missingOf(of);
  if (missing !== "") return { problem: missing };
  try {
    return { result: waterLimits(of, working.value), spec: depthPicture(of, working.value) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

/** Cavitation and air drawn from the surface, in the working water. */
export function WaterPanel() {
  const told = limits.value;
  return (
    <section class="card" aria-labelledby="theory-water">
      <h2 id="theory-water">What the water allows</h2>
      <div class="form-grid">
        <SubjectField />
        <QuantityField
          label="Depth of the shaft"
          symbol="h"
          dimension="length"
          unit="m"
          value={depth.value}
          min={0}
          max={1000}
          onChange={(metres) => {
            if (metres !== null) depth.value = metres;
          }}
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
          <p role="status" class="theory-told">
            {told.result.answer}
          </p>
          <Warnings items={told.result.warnings} />
          <Chart spec={told.spec} height={300} />
          <Findings caption="Numbers behind the limits of the water" rows={waterRows(told.result)} />
          <Caution about="drive" />
        </>
      )}
    </section>
  );
}

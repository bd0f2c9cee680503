import { computed, signal } from "@preact/signals";
import type { CarryOver } from "../../../../shared/model/carryOver.ts";
import type { FluidState } from "../../../../shared/model/fluid.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { Heads } from "../../../app/Heads.tsx";
import { project } from "../../../app/session.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { FluidField } from "../../../forms/FluidField.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subject.ts";
import { fluid as benchFluid } from "../theoryFluid.ts";
import { carried, carriedSentence, factorRows, missingOf, type Target } from "./carryOverModel.ts";

const chosenFluid = signal<FluidState | null>(null);
const chosenRate = signal<number | null>(null);
const chosenDiameter = signal<number | null>(null);

const target = computed((): Target | null => {
  const of = subject.value;
  if (of === null) return null;
  return {
    fluid: chosenFluid.value ?? project.value!.document.water,
    rotationRate: chosenRate.value ?? of.topRate,
    diameter: chosenDiameter.value ?? of.propeller.diameter,
  };
});

const told = computed(() => {
  const [of, to] = [subject.value, target.value];
  if (of === null || to === null)
    return { problem: "Reduce a run on Bench first: its coefficients are what is carried over." };
  const missing = missingOf(of);
  if (missing !== "") return { problem: missing };
  try {
    const result = carried(of, benchFluid.value, to);
    return { result, sentence: carriedSentence(of, result, to) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

export const carryOverNote = computed(() => told.value.sentence ?? "");

/** From the stand to the water the vehicle works in: each factor with its size and its doubt. */
export function CarryOverPanel() {
  const { problem, result, sentence } = told.value;
  return (
    <>
      <div class="form-grid">
        <SubjectField />
        {target.value && <TargetFields target={target.value} />}
      </div>
      {problem !== undefined && <p class="hint">{problem}</p>}
      {result !== undefined && (
        <>
          <p role="status">{sentence}</p>
          <FactorTable result={result} />
          <Warnings items={result.warnings} />
        </>
      )}
    </>
  );
}

function FactorTable({ result }: { readonly result: CarryOver }) {
  return (
    <TableBox label="Factors from the stand to the working water">
      <table>
        <caption class="visually-hidden">Factors from the stand to the working water, ± at 95 %</caption>
        <Heads columns={["Factor", { numbers: "on thrust" }, { numbers: "on torque" }, "Where it comes from"]} />
        <tbody>
          {factorRows(result).map(({ cause, thrust, torque, reason }) => (
            <tr key={cause}>
              <th scope="row">{cause}</th>
              <td class="number">{thrust}</td>
              <td class="number">{torque}</td>
              <td class="muted">{reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function TargetFields({ target: { fluid, rotationRate, diameter } }: { readonly target: Target }) {
  return (
    <>
      <FluidField
        label="Working water"
        value={fluid}
        onChange={(state) => {
          chosenFluid.value = state;
        }}
      />
      <QuantityField
        label="Rotation rate there"
        symbol="n"
        dimension="rotationRate"
        unit="rpm"
        value={rotationRate}
        positive
        onChange={(rate) => {
          if (rate !== null) chosenRate.value = rate;
        }}
      />
      <QuantityField
        label="Diameter there"
        symbol="D"
        dimension="length"
        unit="mm"
        value={diameter}
        positive
        max={1}
        help="Another diameter is an exact copy to scale."
        onChange={(metres) => {
          if (metres !== null) chosenDiameter.value = metres;
        }}
      />
    </>
  );
}

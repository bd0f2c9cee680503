import { computed, signal } from "@preact/signals";
import type { FinishFit } from "../../../../shared/model/finishFit.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { ClaimFields } from "../../variants/ClaimFields.tsx";
import { claim } from "../../variants/variantsState.ts";
import { subjects } from "../subject.ts";
import { dragPicture, finishPair, finishRows, finishSentences, finishTold } from "./finishModel.ts";

const firstName = signal<string | null>(null);
const secondName = signal<string | null>(null);

const pair = computed(() => finishPair(subjects.value, [firstName.value, secondName.value]));
/** The finishes compared, in a phrase. */
export const finishNote = computed(() => pair.value.map(({ name }) => name).join(" to "));
const told = computed(() => finishTold(pair.value, claim.value?.factor ?? null));
const picture = computed(() => ("result" in told.value ? dragPicture(told.value.result) : null));

/** What the surface does to the sections, fitted from measurement, and what smoothing could still bring. */
export function FinishPanel() {
  const now = told.value;
  return (
    <>
      {pair.value.length > 0 && <Choices />}
      {"problem" in now ? (
        <p class="hint">{now.problem}</p>
      ) : (
        <>
          <Told result={now.result} />
          {picture.value && <Chart spec={picture.value} height={300} />}
          <FinishTable result={now.result} />
          <p class="hint">
            Intervals keep to what can be: drag to that of two laminar sides, roughness to a smooth section. How
            roughness makes drag adds a doubt of its own, which is not known and not in them.
          </p>
          <Warnings items={now.result.warnings} />
        </>
      )}
    </>
  );
}

function FinishTable({ result }: { readonly result: FinishFit }) {
  return (
    <TableBox label="Sections by finish">
      <table>
        <caption class="visually-hidden">Section drag and lift factor of each finish, ± at 95 %</caption>
        <Heads columns={["Finish", { numbers: "Section drag C_D" }, { numbers: "Lift factor" }, "Reads"]} />
        <tbody>
          {finishRows(result).map(({ name, cells: [drag, lift, reads] }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td class="number">{drag}</td>
              <td class="number">{lift}</td>
              <td class="muted">{reads}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function Choices() {
  const options = subjects.value.map(({ name }) => ({ value: name, label: name }));
  const [first, second] = pair.value;
  return (
    <div class="form-grid">
      <SelectField
        label="From"
        value={first?.name ?? ""}
        options={options}
        onChange={(name) => {
          firstName.value = name;
        }}
      />
      <SelectField
        label="To"
        value={second?.name ?? ""}
        options={second === undefined ? [{ value: "", label: "no second finish" }, ...options] : options}
        onChange={(name) => {
          secondName.value = name;
        }}
      />
      <ClaimFields />
    </div>
  );
}

function Told({ result }: { readonly result: FinishFit }) {
  const { first, others } = finishSentences(result);
  return (
    <>
      <p role="status">{first}</p>
      {others.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </>
  );
}

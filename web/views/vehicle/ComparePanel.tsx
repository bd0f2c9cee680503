import { useEffect } from "preact/hooks";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { type Beside, besideEachOther, lookBesides } from "./besides.ts";
import { chosenPlace } from "./build/buildState.ts";
import { COMPARED, type Difference, differenceSentence, differences } from "./compareModel.ts";
import type { Answered } from "./vehicleAnswers.ts";

/** All vehicles of the project, each in the scenario that is kept with it, held against the one on show. */
export function ComparePanel() {
  useEffect(lookBesides, []);
  const all = besideEachOther.value;
  const shown = all[chosenPlace.value];
  if (shown === undefined || all.length < 2)
    return <p class="hint">Copy this vehicle and change the copy: both then stand here beside each other.</p>;
  const columns = all.map((one) => ({ ...one, against: one === shown ? null : against(shown.answered, one.answered) }));
  return (
    <>
      {columns.map(
        ({ name, against: told }) =>
          told && (
            <p key={name} class="vehicle-told">
              {differenceSentence(shown.name, name, told)}
            </p>
          ),
      )}
      <BesideTable columns={columns} shown={shown.name} />
      <p class="hint">
        What both have in common, such as the drag of one hull, makes both wrong alike: it counts once where speeds and
        times are held against each other. For forces, payload and the current that is held it counts twice, so a
        difference that is not told there may be one.
      </p>
    </>
  );
}

function against(from: Answered, to: Answered): readonly Difference[] | null {
  return from.state === "answered" && to.state === "answered" ? differences(from, to) : null;
}

interface BesideTableProps {
  readonly columns: readonly (Beside & { readonly against: readonly Difference[] | null })[];
  readonly shown: string;
}

function BesideTable({ columns, shown }: BesideTableProps) {
  return (
    <TableBox label="The vehicles beside each other">
      <table>
        <caption>Each in the scenario kept with it; under a number what it is more or less than “{shown}”</caption>
        <Heads columns={["With 95\u202f% intervals", ...columns.map(({ name }) => ({ numbers: name }))]} />
        <tbody>
          {COMPARED.map(({ name, cell }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {columns.map(({ name: of, answered, gap, against: told }) => (
                <td key={of} class="number vehicle-beside">
                  {answered.state === "answered"
                    ? cell(answered.answer)
                    : answered.state === "refused"
                      ? answered.why
                      : gap || "…"}
                  <Told difference={told?.find((one) => one.name === name)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function Told({ difference }: { readonly difference: Difference | undefined }) {
  if (difference === undefined) return null;
  return (
    <span class={`vehicle-difference ${difference.isTold ? "vehicle-difference-told" : ""}`}>{difference.line}</span>
  );
}

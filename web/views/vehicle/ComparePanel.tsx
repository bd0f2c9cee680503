import { useEffect } from "preact/hooks";
import { TableBox } from "../../app/TableBox.tsx";
import { COMPARED } from "./compareModel.ts";
import { besideEachOther, lookBesides } from "./vehicleState.ts";

/** All vehicles of the project, each in the scenario that is kept with it. */
export function ComparePanel() {
  useEffect(lookBesides, []);
  const all = besideEachOther.value;
  if (all.length < 2)
    return <p class="hint">Copy this vehicle and change the copy: both then stand here beside each other.</p>;
  return (
    <TableBox label="The vehicles beside each other">
      <table>
        <thead>
          <tr>
            <th scope="col">Each in its own scenario</th>
            {all.map(({ name }) => (
              <th key={name} scope="col" class="number">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {COMPARED.map(({ name, cell }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {all.map(({ name: of, answered }) => (
                <td key={of} class="number">
                  {answered.state === "answered"
                    ? cell(answered.answer)
                    : answered.state === "refused"
                      ? answered.why
                      : "…"}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

import { TableBox } from "../../app/TableBox.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { throttle } from "./driveChoices.ts";
import { pointRows } from "./driveModel.ts";
import { driven } from "./driveState.ts";

/** Every number of every propeller at the chosen throttle. */
export function PointTable() {
  const all = driven.value;
  if (!all.some(({ point }) => point !== null)) return <p class="hint">Nothing runs yet.</p>;
  return (
    <TableBox label={`Numbers at ${Math.round(throttle.value * 100)} % throttle`}>
      <table>
        <thead>
          <tr>
            <th scope="col">At {Math.round(throttle.value * 100)} % throttle</th>
            {all.map(({ inHand }) => (
              <th key={inHand.name} scope="col" class="number">
                <Swatch kind="prediction" style={inHand.style} /> {inHand.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {pointRows(all).map(({ name, symbol, cells }) => (
            <tr key={name}>
              <th scope="row">
                {name} {symbol !== "" && <PrintedSymbol text={symbol} />}
              </th>
              {all.map(({ inHand }, at) => (
                <td key={inHand.name} class="number">
                  {cells[at]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

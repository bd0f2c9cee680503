import { formatQuantity } from "../../../../shared/quantity/format.ts";
import { NORMAL_975 } from "../../../../shared/quantity/uncertain.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { AMPERE, NEWTON, PERCENT } from "../../bench/shownUnits.ts";
import { throttle } from "../driveChoices.ts";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subjectOfDrive.ts";
import { DrawsPanel } from "./DrawsPanel.tsx";
import { contributions, INPUT_WORDS, varianceShare } from "./doubtModel.ts";

/** Which inputs make thrust and current doubtful, and what draws of all of them say. */
export function DoubtPanel() {
  const one = subject.value;
  if (one === undefined) return <p class="hint">Nothing runs yet.</p>;
  const request = { ...one.prepared.request, throttle: throttle.value };
  const all = contributions(request);
  return (
    <>
      <SubjectField />
      {all.length === 0 ? (
        <p class="hint">No input states a doubt, so none is shown. Add uncertainties to the parts.</p>
      ) : (
        <TableBox label="Where the doubt comes from">
          <table>
            <Heads
              columns={[
                "Input",
                { numbers: "Does to the thrust" },
                { numbers: "Share" },
                { numbers: "Does to the supply current" },
                { numbers: "Share" },
              ]}
            />
            <tbody>
              {all.map((row) => (
                <tr key={row.input}>
                  <th scope="row">{INPUT_WORDS[row.input]}</th>
                  <td class="number">± {formatQuantity(NORMAL_975 * row.thrust, NEWTON, 2)}</td>
                  <td class="number">{formatQuantity(varianceShare(all, "thrust", row), PERCENT, 2)}</td>
                  <td class="number">± {formatQuantity(NORMAL_975 * row.supplyCurrent, AMPERE, 2)}</td>
                  <td class="number">{formatQuantity(varianceShare(all, "supplyCurrent", row), PERCENT, 2)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      <p class="hint">Each with the others exact, 95 % half-widths; shares are of the sum of squares.</p>
      <DrawsPanel key={one.inHand.name} request={request} />
    </>
  );
}

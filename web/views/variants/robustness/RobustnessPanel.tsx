import type { Robustness } from "../../../../shared/model/robustness.ts";
import { Fold } from "../../../app/Fold.tsx";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { robustnessRows } from "./robustnessModel.ts";
import { robustness } from "./robustnessState.ts";

/** Does the answer hold when the question is put another way? */
export function RobustnessPanel() {
  const all = robustness.value;
  if (all.length === 0) return null;
  return (
    <Fold
      id="variants-robustness"
      title="Does the answer hold?"
      note={all.map(({ sentence }) => sentence).join(" ")}
      open={false}
    >
      {all.map((one) => (
        <AskedOtherwise key={one.variant} one={one} />
      ))}
    </Fold>
  );
}

function AskedOtherwise({ one }: { readonly one: Robustness }) {
  return (
    <div class="robustness-one">
      <p>{one.sentence}</p>
      <Warnings items={one.warnings} />
      <details>
        <summary>
          {one.variant} over {one.baseline}, asked {one.rows.length} ways
        </summary>
        <TableBox label={`${one.variant} over ${one.baseline}, asked in other ways`}>
          <table>
            <Heads columns={["Asked", { numbers: "Thrust ratio, 95 %" }, { numbers: "Change" }, "Agrees"]} />
            <tbody>
              {robustnessRows(one).map(({ title, ratio, change, agrees }) => (
                <tr key={title}>
                  <th scope="row">{title}</th>
                  <td class="number">{ratio}</td>
                  <td class="number">{change}</td>
                  <td>{agrees}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </details>
    </div>
  );
}

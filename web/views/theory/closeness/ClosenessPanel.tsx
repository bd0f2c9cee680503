import { computed } from "@preact/signals";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { counts } from "../../../app/words.ts";
import { Swatch } from "../../../charts/Swatch.tsx";
import { shownName } from "../predictions/shownPrediction.ts";
import { benchInputs, measured, yardstick } from "../theoryState.ts";
import { closenessRows } from "./closenessModel.ts";

const rows = computed(() =>
  benchInputs.value === null ? [] : closenessRows(measured.value, yardstick.value, benchInputs.value),
);

/** How close each variant comes to the ideal, and to the prediction that is laid over. */
export function ClosenessPanel() {
  if (rows.value.length === 0) return <p class="hint">Reduce a run with shaft power on Bench first.</p>;
  const against = yardstick.value === null ? null : shownName(yardstick.value);
  const styles = new Map(measured.value.map(({ name, style }) => [name, style]));
  return (
    <TableBox label="How close each variant comes">
      <table>
        <caption class="visually-hidden">How close each variant comes, ± at 95 %</caption>
        <Heads
          columns={[
            "Variant",
            { numbers: "of the ideal efficiency" },
            { numbers: "thrust of 100\u202fW at the shaft" },
            ...(against === null ? [] : [{ numbers: `over that of ${against}` }]),
            "From",
          ]}
        />
        <tbody>
          {rows.value.map(({ name, cells: [share, thrust, ratio], mountings }) => (
            <tr key={name}>
              <th scope="row">
                <Swatch kind="measured" style={styles.get(name) ?? 0} /> {name}
              </th>
              <td class="number">{share}</td>
              <td class="number">{thrust}</td>
              {against !== null && <td class="number">{ratio}</td>}
              <td class="muted">{counts(mountings, "mounting")}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

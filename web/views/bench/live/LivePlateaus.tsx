import type { Reduction } from "../../../../shared/model/reduction.ts";
import { Fold } from "../../../app/Fold.tsx";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { plateauTable } from "../plateausModel.ts";

/** The plateaus so far. They are edited once the recording is a run: until then each pass finds them anew. */
export function LivePlateaus({ reduction }: { readonly reduction: Reduction }) {
  const { heads, rows, summary } = plateauTable(reduction);
  return (
    <Fold id="bench-plateaus" title="Plateaus so far" note={summary} class="bench-plateaus">
      <TableBox label="Plateaus so far">
        <table>
          <Heads columns={["Plateau", ...heads.map((numbers) => ({ numbers })), "In the log"]} />
          <tbody>
            {rows.map((row) => (
              <tr key={row.index} class={row.used ? "" : "bench-aside"}>
                <th scope="row">{row.name}</th>
                {row.cells.map((cell, at) => (
                  <td key={at} class="number">
                    {cell}
                  </td>
                ))}
                <td>
                  {row.when || `lines ${row.lines}`}
                  {!row.used && `, left out: ${row.reason}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </Fold>
  );
}

import { Fold } from "../../../app/Fold.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { factors } from "../groupedRuns.ts";
import { factorHeads, shownFactors } from "./factorsModel.ts";

/** What differs between the variants besides what is compared. */
export function FactorsPanel() {
  const table = factors.value;
  if (table.rows.length === 0) return null;
  return (
    <Fold id="variants-factors" title="What else differs" note={table.sentence} open={false}>
      <TableBox label="Factors by variant">
        <table>
          <caption class="visually-hidden">Factors by variant; in brackets the runs of each value</caption>
          <thead>
            <tr>
              <th scope="col">Factor</th>
              <th scope="col">Role</th>
              {factorHeads(table).map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shownFactors(table).map(({ title, role, isDoubtful, cells }) => (
              <tr key={title}>
                <th scope="row">{title}</th>
                <td>{isDoubtful ? <strong>{role}</strong> : role}</td>
                {cells.map((cell, at) => (
                  <td key={at}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </Fold>
  );
}

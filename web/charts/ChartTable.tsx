import { formatNumber } from "../../shared/quantity/format.ts";
import { TableBox } from "../app/TableBox.tsx";
import type { ChartSpec } from "./chartSpec.ts";
import { chartTable } from "./chartTable.ts";

const MOST_ROWS = 2000;

/** The numbers of a chart as an HTML table. A long log is cut here and whole in the CSV file. */
export function ChartTable({ spec }: { readonly spec: ChartSpec }) {
  const { head, rows } = chartTable(spec);
  return (
    <TableBox class="chart-table" label={`${spec.title}, table`}>
      <table>
        <caption>
          {spec.title}
          {rows.length > MOST_ROWS && `: the first ${MOST_ROWS} of ${rows.length} rows; the CSV file has all`}
        </caption>
        <thead>
          <tr>
            {head.map((title) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_ROWS).map((row, at) => (
            <tr key={at}>
              {row.map((content, column) => (
                <td key={head[column]} class={typeof content === "number" ? "number" : ""}>
                  {typeof content === "number" ? formatNumber(content, 5) : (content ?? "")}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

import type { HoldingCell, HoldingMap } from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { WATT } from "../../bench/shownUnits.ts";
import { METRE_PER_SECOND, shown } from "./units.ts";

/** Power to hold a place, by the speed of the current and where it comes from: numbers on a shade. */
export function HoldingTable({ map }: { readonly map: HoldingMap }) {
  const powers = map.cells.flat().flatMap(({ power }) => power ?? []);
  const [least, most] = [Math.min(...powers), Math.max(...powers)];
  const shade = ({ power }: HoldingCell) =>
    power === null || most === least ? 0 : Math.round(60 * ((power - least) / (most - least)));
  return (
    <>
      <h3>Holding a place in a current</h3>
      <p>{map.sentence}</p>
      <TableBox label="Power to hold a place, by current and where it comes from" class="vehicle-holding">
        <table>
          <caption>Power from the bus, hotel load included; a dash where it can not be held</caption>
          <thead>
            <tr>
              <th scope="col">Current</th>
              {map.headings.map((from) => (
                <th key={from} scope="col" class="number">{`from ${Math.round((180 * from) / Math.PI)}°`}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {map.cells.map((row, at) => (
              <tr key={map.speeds[at]}>
                <th scope="row">{shown(map.speeds[at]!, METRE_PER_SECOND, 2)}</th>
                {row.map((cell) => (
                  <td
                    key={cell.currentFrom}
                    class="number"
                    title={cell.shortfall?.sentence}
                    style={{ background: `color-mix(in srgb, var(--series-0) ${shade(cell)}%, transparent)` }}
                  >
                    {shown(cell.power, WATT, 2)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

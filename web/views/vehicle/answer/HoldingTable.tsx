import type { HoldingCell, HoldingMap } from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { WATT } from "../../bench/shownUnits.ts";
import { fromText, METRE_PER_SECOND, shown, shownUncertain } from "./units.ts";

/** Strongest shade that figures can still be read on, per cent of the colour. */
const STRONGEST = 45;

/** Power to hold a place, by the speed of the current and where it comes from: numbers on a shade. */
export function HoldingTable({ map }: { readonly map: HoldingMap }) {
  const powers = map.cells.flat().flatMap(({ power }) => power ?? []);
  const [least, most] = [Math.min(...powers), Math.max(...powers)];
  const shade = ({ power }: HoldingCell) =>
    power === null || most === least ? 0 : Math.round(STRONGEST * ((power - least) / (most - least)));
  return (
    <>
      <h3>Holding a place in a current</h3>
      <p>{map.sentence}</p>
      <p class="holding-key">
        {powers.length > 0 && (
          <>
            {shown(least, WATT, 2)} <span class="holding-ramp" /> {shown(most, WATT, 2)}
          </>
        )}
        <span>
          <span class="holding-not" /> can not be held
        </span>
      </p>
      <TableBox label="Power to hold a place, by current and where it comes from" class="vehicle-holding">
        <table>
          <caption>
            Power from the bus, hotel load included, best estimates; where the current comes from is told from the bow
            to starboard{hardestText(map)}
          </caption>
          <Heads columns={["Current", ...map.headings.map((from) => ({ numbers: `from ${fromText(from)}` }))]} />
          <tbody>
            {map.cells.map((row, at) => (
              <tr key={map.speeds[at]}>
                <th scope="row">{shown(map.speeds[at]!, METRE_PER_SECOND, 2)}</th>
                {row.map((cell) => (
                  <Cell key={cell.currentFrom} cell={cell} shade={shade(cell)} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

/** How doubtful the numbers are, by the hardest of them. */
function hardestText({ hardest }: HoldingMap): string {
  if (hardest === null) return "";
  const { currentSpeed, currentFrom, power } = hardest;
  const where = `${shown(currentSpeed, METRE_PER_SECOND, 2)} from ${fromText(currentFrom)}`;
  return `. The greatest that is held from every side, in ${where}, is ${shownUncertain(power, WATT)}; the others are doubtful in like manner`;
}

function Cell({ cell: { power, shortfall }, shade }: { readonly cell: HoldingCell; readonly shade: number }) {
  return power === null ? (
    <td class="number holding-not" title={shortfall?.sentence}>
      –<span class="visually-hidden"> can not be held</span>
    </td>
  ) : (
    <td class="number" style={{ background: `color-mix(in srgb, var(--series-0) ${shade}%, transparent)` }}>
      {shown(power, WATT, 2)}
    </td>
  );
}

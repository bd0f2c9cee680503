import type { HeadingPolar } from "../../../../shared/model/vehicle/motionAnswer.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { polarShape } from "./polarShape.ts";
import { DEGREE, METRE_PER_SECOND, shown } from "./units.ts";

const RADIUS = 120;

/** Speed over the ground along its way with the current from any side, and the current in which it holds its place. */
export function HeadingsPanel({ headings }: { readonly headings: HeadingPolar | null }) {
  if (headings === null) return <p class="hint">The vehicle does not go ahead.</p>;
  const { rings, path, points } = polarShape(headings, RADIUS);
  const box = RADIUS + 34;
  return (
    <>
      <p>{headings.sentence}</p>
      <div class="vehicle-polar">
        <svg
          viewBox={`${-box} ${-box} ${2 * box} ${2 * box}`}
          role="img"
          aria-label="Speed over the ground by where the current comes from; the numbers stand in the table"
        >
          {rings.map(({ speed, radius }) => (
            <g key={speed}>
              <circle class="polar-ring" r={radius} />
              <text class="polar-word" x={3} y={-radius + 12}>
                {Number(speed.toPrecision(3))} m/s
              </text>
            </g>
          ))}
          <line class="polar-ring" x1={-RADIUS} x2={RADIUS} y1={0} y2={0} />
          <line class="polar-ring" x1={0} x2={0} y1={-RADIUS} y2={RADIUS} />
          {path !== "" && <path class="polar-speed" d={path} />}
          {points.map(({ x, y, label }) => (
            <circle key={`${x} ${y}`} class="polar-point" cx={x} cy={y} r={2.5}>
              <title>{label}</title>
            </circle>
          ))}
          <text class="polar-word" x={0} y={-RADIUS - 10} text-anchor="middle">
            current from ahead
          </text>
          <text class="polar-word" x={0} y={RADIUS + 18} text-anchor="middle">
            from astern
          </text>
        </svg>
        <TableBox label="By where the current comes from">
          <table>
            <thead>
              <tr>
                <th scope="col" class="number">
                  Current from
                </th>
                <th scope="col" class="number">
                  Over the ground
                </th>
                <th scope="col" class="number">
                  Bow turned by
                </th>
                <th scope="col" class="number">
                  Holds up to
                </th>
              </tr>
            </thead>
            <tbody>
              {headings.points
                .filter((_point, at) => at % 3 === 0)
                .map(({ currentFrom, speedOverGround, bowOffset, greatestCurrentHeld }) => (
                  <tr key={currentFrom}>
                    <th scope="row" class="number">{`${Math.round((180 * currentFrom) / Math.PI)}°`}</th>
                    <td class="number">{shown(speedOverGround, METRE_PER_SECOND)}</td>
                    <td class="number">{shown(bowOffset, DEGREE, 2)}</td>
                    <td class="number">{shown(greatestCurrentHeld, METRE_PER_SECOND)}</td>
                  </tr>
                ))}
            </tbody>
          </table>
        </TableBox>
      </div>
    </>
  );
}

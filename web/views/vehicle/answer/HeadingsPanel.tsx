import type { HeadingPoint, HeadingPolar } from "../../../../shared/model/vehicle/motionAnswer.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { polarShape } from "./polarShape.ts";
import { DEGREE, fromText, METRE_PER_SECOND, numberClass, shown, shownUncertain } from "./units.ts";

const RADIUS = 120;
const BOX = RADIUS + 34;

/** Speed over the ground along its way with the current from any side, and the current in which it holds its place. */
export function HeadingsPanel({ headings }: { readonly headings: HeadingPolar | null }) {
  if (headings === null) return <p class="hint">The vehicle does not go ahead.</p>;
  return (
    <>
      <p>{headings.sentence}</p>
      <div class="vehicle-polar">
        <Polar headings={headings} />
        <HeadingsTable headings={headings} />
      </div>
    </>
  );
}

function Polar({ headings }: { readonly headings: HeadingPolar }) {
  const { rings, path, heldPath, points } = polarShape(headings, RADIUS);
  return (
    <figure class="polar">
      <svg
        viewBox={`${-BOX} ${-BOX} ${2 * BOX} ${2 * BOX}`}
        role="img"
        aria-label="Speed over the ground and greatest current held, by where the current comes from; the numbers stand in the table"
      >
        {path !== "" && <path class="polar-speed" d={path} />}
        {rings.map(({ speed, radius }) => (
          <circle key={speed} class="polar-ring" r={radius} />
        ))}
        <line class="polar-ring" x1={-RADIUS} x2={RADIUS} y1={0} y2={0} />
        <line class="polar-ring" x1={0} x2={0} y1={-RADIUS} y2={RADIUS} />
        {heldPath !== "" && <path class="polar-held" d={heldPath} />}
        {points.map(({ x, y, label }) => (
          <circle key={`${x} ${y}`} class="polar-point" cx={x} cy={y} r={2.5}>
            <title>{label}</title>
          </circle>
        ))}
        <path class="polar-bow" d="M0 -10 L5 6 L0 3 L-5 6 Z" />
        {rings.map(({ speed, radius }) => (
          <text key={speed} class="polar-word polar-scale" x={3} y={-radius + 12}>
            {shown(speed, METRE_PER_SECOND, 2)}
          </text>
        ))}
        <SideWords />
      </svg>
      <figcaption>
        <ul class="polar-key">
          <li>
            <span class="polar-key-speed" /> speed over the ground in a current of{" "}
            {shown(headings.current, METRE_PER_SECOND)}
          </li>
          <li>
            <span class="polar-key-held" /> greatest current in which it holds its place, bow kept
          </li>
        </ul>
      </figcaption>
    </figure>
  );
}

function SideWords() {
  return (
    <>
      <text class="polar-word" x={0} y={-RADIUS - 10} text-anchor="middle">
        current from ahead
      </text>
      <text class="polar-word" x={0} y={RADIUS + 18} text-anchor="middle">
        from astern
      </text>
      {[
        { side: 1, text: "from starboard" },
        { side: -1, text: "from port" },
      ].map(({ side, text }) => (
        <text
          key={text}
          class="polar-word"
          text-anchor="middle"
          transform={`translate(${side * (RADIUS + 14)} 0) rotate(${90 * side})`}
        >
          {text}
        </text>
      ))}
    </>
  );
}

/** Every third point; the doubt stands where it is told, straight against the current and at the weakest side. */
function HeadingsTable({ headings }: { readonly headings: HeadingPolar }) {
  const over = ({ currentFrom, speedOverGround }: HeadingPoint) =>
    currentFrom === 0 && headings.againstCurrent !== null
      ? shownUncertain(headings.againstCurrent, METRE_PER_SECOND)
      : shown(speedOverGround, METRE_PER_SECOND);
  const held = ({ currentFrom, greatestCurrentHeld }: HeadingPoint) =>
    currentFrom === headings.worstFrom && headings.leastCurrentHeld !== null
      ? shownUncertain(headings.leastCurrentHeld, METRE_PER_SECOND)
      : shown(greatestCurrentHeld, METRE_PER_SECOND);
  return (
    <TableBox label="By where the current comes from">
      <table>
        <caption>Best estimates; the 95 % interval straight against the current and at the weakest side</caption>
        <Heads
          columns={["Current from", "Over the ground", "Bow turned by", "Holds up to"].map((numbers) => ({ numbers }))}
        />
        <tbody>
          {headings.points
            .filter((_point, at) => at % 3 === 0)
            .map((point) => (
              <tr key={point.currentFrom}>
                <th scope="row" class="number">
                  {fromText(point.currentFrom)}
                </th>
                <td class={point.currentFrom === 0 ? numberClass(headings.againstCurrent) : "number"}>{over(point)}</td>
                <td class="number">{shown(point.bowOffset, DEGREE, 2)}</td>
                <td
                  class={point.currentFrom === headings.worstFrom ? numberClass(headings.leastCurrentHeld) : "number"}
                >
                  {held(point)}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </TableBox>
  );
}

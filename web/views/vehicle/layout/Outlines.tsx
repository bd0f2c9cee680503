import type { LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import { OUTLINE_HALF, type OutlineShape, outlineShape } from "./outlineShape.ts";

const ROOM = 12;
const HALF = OUTLINE_HALF + ROOM;
/** Beside the outline stand the words of its sides. */
const WIDE = OUTLINE_HALF + 30;

/** Forces that can be made in three planes while all other commanded motions are at zero. */
export function Outlines({ outlines }: Pick<LayoutAnswer, "outlines">) {
  const shapes = outlines.map(outlineShape);
  return (
    <>
      <div class="layout-outlines">
        {shapes.map((shape) => (
          <Outline key={shape.title} shape={shape} />
        ))}
      </div>
      <ul class="layout-key">
        <li>
          <span />
          by the limits of the thrusters
        </li>
        {shapes.some(({ bus }) => bus !== null) && (
          <li>
            <span class="layout-key-bus" />
            within the current of the bus
          </li>
        )}
      </ul>
    </>
  );
}

function Outline({ shape }: { readonly shape: OutlineShape }) {
  const { title, free, bus, rings, sentence } = shape;
  return (
    <figure>
      <figcaption>
        <h4>{title}</h4>
      </figcaption>
      <svg viewBox={`${-WIDE} ${-HALF} ${2 * WIDE} ${2 * HALF}`} role="img" aria-label={`${title}. ${sentence}`}>
        {rings.map(({ radius, text }) => (
          <g key={text}>
            <circle class="outline-grid" cx="0" cy="0" r={radius} fill="none" />
            <text class="outline-word" x={0.71 * radius + 1} y={-0.71 * radius - 1}>
              {text}
            </text>
          </g>
        ))}
        <path class="outline-axis" d={`M${-OUTLINE_HALF} 0H${OUTLINE_HALF}M0 ${-OUTLINE_HALF}V${OUTLINE_HALF}`} />
        <path class="outline-free" d={free} />
        {bus !== null && <path class="outline-bus" d={bus} />}
        <SideWords ends={shape.ends} />
      </svg>
      <p class="field-help">{sentence}</p>
    </figure>
  );
}

function SideWords({ ends: [right, left, top, bottom] }: Pick<OutlineShape, "ends">) {
  return (
    <>
      <text class="outline-word" x="0" y={-HALF + 5} text-anchor="middle">
        {top}
      </text>
      <text class="outline-word" x="0" y={HALF - 2} text-anchor="middle">
        {bottom}
      </text>
      <text class="outline-word" x={OUTLINE_HALF + 2} y="1.5">
        {right}
      </text>
      <text class="outline-word" x={-OUTLINE_HALF - 2} y="1.5" text-anchor="end">
        {left}
      </text>
    </>
  );
}

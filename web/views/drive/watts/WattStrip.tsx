import { useRef } from "preact/hooks";
import { useWidth } from "../../../charts/useWidth.ts";
import { stripShape } from "./stripShape.ts";
import type { Watts } from "./wattFlow.ts";
import "./watts.css";

/** Where the watts go: a stream that gets thinner on its way to the water, and the same numbers as a list. */
export function WattStrip({ flows, title }: { readonly flows: readonly Watts[]; readonly title: string }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 720);
  const { height, trunk, branches } = stripShape(flows, width);
  const push = flows.find(({ kind }) => kind === "push");
  const total = flows.reduce((sum, { power }) => sum + power, 0);
  if (!(total > 0)) return <p class="hint">Nothing is drawn at this throttle.</p>;
  return (
    <figure class="watts" aria-label={title}>
      <figcaption>{title}</figcaption>
      <div ref={box}>
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <path class="watts-trunk" d={trunk} />
          {branches.map(({ flow, number, path, at }) => (
            <g key={flow.name}>
              <path class={`watts-${flow.kind}`} d={path} />
              <text x={at.x} y={at.y} text-anchor="middle">
                {number}
              </text>
            </g>
          ))}
        </svg>
      </div>
      <ol class="watts-list">
        {branches.map(({ flow, number }) => (
          <WattRow key={flow.name} flow={flow} number={String(number)} />
        ))}
        {push && <WattRow flow={push} number="→" />}
      </ol>
    </figure>
  );
}

function WattRow({ flow: { name, text, share, kind }, number }: { readonly flow: Watts; readonly number: string }) {
  return (
    <li class={`watts-row watts-row-${kind}`}>
      <span class="muted">{number}</span>
      <span>{name}</span>
      <span class="number">{text}</span>
      <span class="number muted">{`${share < 0.01 ? (100 * share).toFixed(1) : Math.round(100 * share)}\u202f%`}</span>
    </li>
  );
}

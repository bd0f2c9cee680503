import { useId, useRef, useState } from "preact/hooks";
import type {
  DrawnThruster,
  LayoutView,
  PictureLine,
  PicturePoint,
} from "../../../../shared/vehicle/layout/projectLayout.ts";
import "./layout.css";
import { drawnPicture, FIRST_VIEW, isView, layoutInWords, turnedByDrag, turnedByKey, VIEWS } from "./pictureModel.ts";

interface LayoutPictureProps {
  readonly thrusters: readonly DrawnThruster[];
  /** Not to be turned: a small picture beside a choice. */
  readonly isStill?: boolean;
}

/** Where the thrusters sit and which way they push; turned by drag, arrow keys and buttons. */
export function LayoutPicture({ thrusters, isStill = false }: LayoutPictureProps) {
  const id = useId();
  const [view, setView] = useState<LayoutView>(FIRST_VIEW);
  const drag = useDrag({ view, setView });
  const words = layoutInWords(thrusters);
  const name = `Layout of ${thrusters.length} ${thrusters.length === 1 ? "thruster" : "thrusters"}`;
  if (isStill) {
    return (
      <figure class="layout-picture layout-still">
        <Drawing {...{ thrusters, view }} label={`${name}. ${words.join(" ")}`} />
      </figure>
    );
  }
  return (
    <figure class="layout-picture" aria-label={name}>
      <ViewButtons {...{ view, setView }} />
      <div class="layout-beside">
        <div
          class="layout-turn"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned from the keyboard
          tabIndex={0}
          role="application"
          aria-roledescription="picture to turn"
          aria-label={name}
          aria-describedby={`${id}-keys ${id}-words`}
          onKeyDown={(event) => {
            const next = turnedByKey(view, event.key);
            if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
            event.preventDefault();
            setView(next);
          }}
          {...drag}
        >
          <Drawing {...{ thrusters, view }} label="" />
        </div>
        <ol class="layout-words" id={`${id}-words`}>
          {words.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      </div>
      <p class="field-help" id={`${id}-keys`}>
        Drag or use the arrow keys to turn it. Arrows: forward thrust; arcs: sense of rotation.
      </p>
    </figure>
  );
}

interface ViewProps {
  readonly view: LayoutView;
  readonly setView: (view: LayoutView) => void;
}

function ViewButtons({ view, setView }: ViewProps) {
  return (
    <div class="row">
      {VIEWS.map(({ label, view: named }) => (
        <button
          key={label}
          type="button"
          class="quiet"
          aria-pressed={isView(view, named)}
          onClick={() => setView(named)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

function useDrag({ view, setView }: ViewProps) {
  const start = useRef<{ readonly x: number; readonly y: number; readonly view: LayoutView } | null>(null);
  return {
    onPointerDown: (event: PointerEvent) => {
      start.current = { x: event.clientX, y: event.clientY, view };
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      if (start.current === null) return;
      const { width, height } = (event.currentTarget as HTMLElement).getBoundingClientRect();
      const { x, y, view: from } = start.current;
      setView(turnedByDrag(from, (event.clientX - x) / width, (event.clientY - y) / height));
    },
    onPointerUp: () => {
      start.current = null;
    },
    onPointerCancel: () => {
      start.current = null;
    },
  };
}

interface DrawingProps extends Pick<LayoutPictureProps, "thrusters"> {
  readonly view: LayoutView;
  /** Empty where what is round it says it. */
  readonly label: string;
}

const path = (points: readonly PicturePoint[]) =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x.toFixed(2)} ${y.toFixed(2)}`).join("");

/** Wings of an arrow at the end of a line, in drawing units. */
const WING = 2.6;

function arrowHead(points: readonly PicturePoint[]): string {
  const [[x0, y0], [x1, y1]] = [points.at(-2)!, points.at(-1)!];
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length < 0.2) return "";
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
  const wing = (side: number): PicturePoint => [
    x1 - WING * ux - side * 0.6 * WING * uy,
    y1 - WING * uy + side * 0.6 * WING * ux,
  ];
  return path([wing(1), [x1, y1], wing(-1)]);
}

function Drawing({ thrusters, view, label }: DrawingProps) {
  const { lines, box, tags, axes } = drawnPicture(thrusters, view);
  return (
    <svg
      viewBox={box.join(" ")}
      role={label === "" ? undefined : "img"}
      aria-label={label || undefined}
      aria-hidden={label === ""}
    >
      {lines.map((line, at) => (
        <Line key={at} line={line} />
      ))}
      {axes.map(({ at: [x, y], text }) => (
        <text key={text} class="layout-axis-word" x={x} y={y} text-anchor={x < 0 ? "end" : "start"}>
          {text}
        </text>
      ))}
      {tags.map(({ at: [x, y], text }) => (
        <text key={text} class="layout-tag" x={x} y={y} text-anchor="middle" dominant-baseline="central">
          {text}
        </text>
      ))}
    </svg>
  );
}

function Line({ line: { role, points } }: { readonly line: PictureLine }) {
  const isArrow = role === "thrust" || role === "spin" || role === "axis";
  return (
    <>
      <path class={`layout-${role}`} d={path(points)} />
      {role === "thrust" && <circle class="layout-hub" cx={points[0]![0]} cy={points[0]![1]} r={1.2} />}
      {isArrow && <path class={`layout-${role} layout-head`} d={arrowHead(points)} />}
    </>
  );
}

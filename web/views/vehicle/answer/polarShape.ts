import type { HeadingPolar } from "../../../../shared/model/vehicle/motionAnswer.ts";

/** A polar diagram ready to draw; the way of the vehicle is up, lengths in px from the middle. */
export interface PolarShape {
  readonly radius: number;
  /** Rings at round numbers, m/s. */
  readonly rings: readonly { readonly speed: number; readonly radius: number }[];
  /** Outline of the speed over the ground; empty where there are too few points. */
  readonly path: string;
  /** Outline of the greatest current in which it holds its place. */
  readonly heldPath: string;
  readonly points: readonly { readonly x: number; readonly y: number; readonly label: string }[];
}

/**
 * Speed over the ground, and the current that is held, by where the current comes from: right of the middle it comes
 * from starboard.
 */
export function polarShape({ points }: HeadingPolar, radius: number): PolarShape {
  const speeds = points.map(({ speedOverGround }) => Math.max(0, speedOverGround ?? 0));
  const held = points.map(({ greatestCurrentHeld }) => greatestCurrentHeld ?? 0);
  const most = Math.max(...speeds, ...held);
  const step = roundStep(Math.max(most, 0.1));
  const greatest = step * Math.max(1, Math.ceil(most / step));
  const at = (speed: number, from: number) => {
    const r = (radius * speed) / greatest;
    return { x: r * Math.sin(from), y: -r * Math.cos(from) };
  };
  const drawn = points.flatMap(({ currentFrom, speedOverGround }) =>
    speedOverGround === null || speedOverGround < 0
      ? []
      : [{ ...at(speedOverGround, currentFrom), label: `${speedOverGround.toPrecision(3)}\u202fm/s` }],
  );
  const count = Math.round(greatest / step);
  return {
    radius,
    rings: Array.from({ length: count }, (_one, ring) => ({
      speed: (ring + 1) * step,
      radius: (radius * (ring + 1)) / count,
    })),
    path: closed(drawn),
    heldPath: closed(
      points.flatMap(({ currentFrom, greatestCurrentHeld }) =>
        greatestCurrentHeld === null ? [] : [at(greatestCurrentHeld, currentFrom)],
      ),
    ),
    points: drawn,
  };
}

const closed = (points: readonly { readonly x: number; readonly y: number }[]) =>
  points.length < 2 ? "" : `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join(" L")} Z`;

/** A step of 1, 2 or 5 times a power of ten, for two to five rings. */
function roundStep(greatest: number): number {
  const power = 10 ** Math.floor(Math.log10(greatest / 2));
  const times = greatest / 2 / power;
  return power * (times >= 5 ? 5 : times >= 2 ? 2 : 1);
}

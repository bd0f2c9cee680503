import type { ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";
import { cross, scaled, unitDirection, type Vector } from "./wrenchMatrix.ts";

/** Where the picture is looked at from, rad. Zero and zero: from astern, level. */
export interface LayoutView {
  /** Round to starboard: a quarter turn looks at the starboard side, with the bow to the right. */
  readonly azimuth: number;
  /** Upwards: a quarter turn looks straight down. */
  readonly elevation: number;
}

/** A point of the picture, m: to the right, downwards. */
export type PicturePoint = readonly [number, number];

/** What of a thruster the picture shows. */
export type DrawnThruster = Pick<ThrusterPlacement, "name" | "position" | "direction" | "spin">;

export interface PictureLine {
  readonly role: "hull" | "hullBehind" | "axis" | "thrust" | "spin";
  /** Ends of a line, or the points of the arc of a spin mark; the arrow is at the last. */
  readonly points: readonly PicturePoint[];
  readonly label: string;
  /** Place of the thruster in the order; null for hull and axes. */
  readonly thruster: number | null;
  /** Distance behind the origin, m, of its middle. */
  readonly depth: number;
}

export interface LayoutPicture {
  /** The farthest first, so that what is drawn later covers it. */
  readonly lines: readonly PictureLine[];
  /** Left, top, right, bottom, m. */
  readonly bounds: readonly [number, number, number, number];
}

/** Sizes as parts of the longest side of the hull; common practice, no source. */
const ARROW = 0.22;
const SPIN_RADIUS = 0.06;
const AXIS = 0.35;
/** Hull beyond the outermost thruster, and the least thickness of it. */
const MARGIN = 0.05;
const SPIN_STEPS = 10;
const SPIN_ARC = (300 / 180) * Math.PI;

interface Piece extends Omit<PictureLine, "points" | "depth"> {
  readonly corners: readonly Vector[];
}

/**
 * A layout of thrusters as lines on a plane: a box round them, an arrow for the forward thrust of each with an arc for the
 * sense of rotation, and the three axes.
 *
 *   v = (cos a cos e, −sin a cos e, sin e),  right = (sin a, cos a, 0),  up = right × v
 *
 * Source   parallel projection, any text on technical drawing.
 * Throws   InputProblem `vehicle.layout-zero-direction`.
 */
export function projectLayout(thrusters: readonly DrawnThruster[], view: LayoutView): LayoutPicture {
  const [a, e] = [view.azimuth, view.elevation];
  const into: Vector = [Math.cos(a) * Math.cos(e), -Math.sin(a) * Math.cos(e), Math.sin(e)];
  const right: Vector = [Math.sin(a), Math.cos(a), 0];
  const up = cross(right, into);
  const box = boxRound(thrusters);
  const size = Math.max(...box.high.map((one, k) => one - box.low[k]!));
  const pieces = [
    ...hullEdges(box, into),
    ...axisLines(size),
    ...thrusters.flatMap((one, i) => thrustLines(one, i, size)),
  ];
  const lines = pieces
    .map(({ corners, ...rest }): PictureLine => {
      const points = corners.map((p): PicturePoint => [dot(p, right), -dot(p, up)]);
      return { ...rest, points, depth: corners.reduce((sum, p) => sum + dot(p, into), 0) / corners.length };
    })
    .sort((one, other) => other.depth - one.depth);
  const across = lines.flatMap(({ points }) => points.map(([x]) => x));
  const along = lines.flatMap(({ points }) => points.map(([, y]) => y));
  return { lines, bounds: [Math.min(...across), Math.min(...along), Math.max(...across), Math.max(...along)] };
}

const dot = ([a, b, c]: Vector, [d, e, f]: Vector) => a * d + b * e + c * f;
const moved = (p: Vector, d: Vector, by: number): Vector => [p[0] + by * d[0], p[1] + by * d[1], p[2] + by * d[2]];

interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

/** A box round all thrusters with a margin, so that a flat layout still looks like a body. */
function boxRound(thrusters: readonly DrawnThruster[]): Box {
  const ends = (part: "x" | "y" | "z") => {
    const places = thrusters.map(({ position }) => position[part]);
    return [Math.min(...places), Math.max(...places)] as const;
  };
  const [x, y, z] = [ends("x"), ends("y"), ends("z")];
  const margin = MARGIN * Math.max(x[1] - x[0], y[1] - y[0], z[1] - z[0], 0.1);
  return {
    low: [x[0] - margin, y[0] - margin, z[0] - margin],
    high: [x[1] + margin, y[1] + margin, z[1] + margin],
  };
}

/** Twelve edges; those that meet in the farthest corner are behind the hull. */
function hullEdges({ low, high }: Box, into: Vector): Piece[] {
  const corner = (n: number): Vector => [n & 1 ? high[0] : low[0], n & 2 ? high[1] : low[1], n & 4 ? high[2] : low[2]];
  const all = [0, 1, 2, 3, 4, 5, 6, 7];
  const farthest = all.reduce((most, n) => (dot(corner(n), into) > dot(corner(most), into) ? n : most));
  return all.flatMap((n) =>
    [1, 2, 4]
      .filter((bit) => (n & bit) === 0)
      .map((bit) => ({
        role: n === farthest || (n | bit) === farthest ? ("hullBehind" as const) : ("hull" as const),
        corners: [corner(n), corner(n | bit)],
        label: "",
        thruster: null,
      })),
  );
}

function axisLines(size: number): Piece[] {
  const ends: readonly [string, Vector][] = [
    ["x ahead", [1, 0, 0]],
    ["y starboard", [0, 1, 0]],
    ["z down", [0, 0, 1]],
  ];
  return ends.map(([label, d]) => ({
    role: "axis",
    corners: [[0, 0, 0], moved([0, 0, 0], d, AXIS * size)],
    label,
    thruster: null,
  }));
}

/** Arrow of the forward thrust, and the way its propeller turns then. */
function thrustLines({ name, position, direction, spin }: DrawnThruster, thruster: number, size: number): Piece[] {
  const p: Vector = [position.x, position.y, position.z];
  const d = unitDirection(direction, `thrusters.${thruster}.direction`);
  // Any direction square to the thrust will do to begin the arc.
  const other: Vector = Math.abs(d[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const square = cross(d, other);
  const u = scaled(square, 1 / Math.hypot(...square));
  const v = cross(d, u);
  const sense = spin === "clockwise" ? 1 : -1;
  const arc = Array.from({ length: SPIN_STEPS + 1 }, (_, k) => {
    const q = (sense * SPIN_ARC * k) / SPIN_STEPS;
    return moved(moved(p, u, SPIN_RADIUS * size * Math.cos(q)), v, SPIN_RADIUS * size * Math.sin(q));
  });
  return [
    { role: "thrust", corners: [p, moved(p, d, ARROW * size)], label: name, thruster },
    { role: "spin", corners: arc, label: `${name} turns ${spin}`, thruster },
  ];
}

import type { ForceOutline } from "../../model/vehicle/layoutAnswer.ts";
import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import { rowOf } from "./axes.ts";
import { unitWrench } from "./axisAsk.ts";
import { greatestAlong } from "./greatestAlong.ts";
import type { LayoutModel } from "./layoutModel.ts";

type Corner = readonly [number, number];

const PLANES = [
  { plane: "horizontal", axes: ["surge", "sway"] },
  { plane: "lengthwise", axes: ["surge", "heave"] },
  { plane: "crosswise", axes: ["sway", "heave"] },
] as const satisfies readonly { readonly plane: ForceOutline["plane"]; readonly axes: readonly [Axis, Axis] }[];

/** A bulge beyond a side that is not worth a corner, as a part of the size: rounding, or what the pieces of a current are off. */
const ROUNDING = 1e-9;
const CURRENT_ROUNDING = 1e-2;
const MOST_CORNERS = 200;

/** The outlines of what can be pushed in the three planes while the other held axes stay at zero. */
export function forceOutlines(model: LayoutModel, held: readonly Axis[], current: number | null): ForceOutline[] {
  return PLANES.map(({ plane, axes }) => {
    const free = outlineIn(model, { axes, held, current: null });
    const within = current === null ? null : outlineIn(model, { axes, held, current });
    return {
      plane,
      axes: [...axes],
      corners: free.corners.map(([a, b]) => [a, b]),
      cornersWithBusLimit: within === null ? null : within.corners.map(([a, b]) => [a, b]),
      converged: free.converged && (within?.converged ?? true),
    };
  });
}

interface OutlineAsk {
  readonly axes: readonly [Axis, Axis];
  readonly held: readonly Axis[];
  readonly current: number | null;
}

/**
 * Corners of a convex outline from its farthest points: between two known corners the outline is asked square to the line
 * through them; either there is a new corner, or the line is a side.
 *
 * Source   support function of a convex set; planar hull by farthest points, e.g. Eddy, ACM Transactions on Mathematical
 *          Software 3 (1977) 398.
 * Error    exact to rounding for the limits of thrust; a current's bulges under 1 % of the size are left out.
 *          Where torque ahead and astern differ and is counted, the set is not convex and this is its convex hull.
 */
function outlineIn(model: LayoutModel, { axes, held, current }: OutlineAsk) {
  const [i, j] = [rowOf(axes[0]), rowOf(axes[1])];
  const hold = held.filter((axis) => !axes.includes(axis)).map((axis) => ({ wrench: unitWrench(axis), at: 0 }));
  const farthest = ([a, b]: Corner): Corner => {
    const along = [0, 0, 0, 0, 0, 0];
    along[i] = a;
    along[j] = b;
    const { forces } = greatestAlong(model, { along, hold, limits: model.limits, current });
    const at = (row: number) => forces.reduce((sum, one, k) => sum + one * model.matrix[row]![k]!, 0);
    return [at(i), at(j)];
  };
  const ways: readonly Corner[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ]; // prettier-ignore
  const first = ways.map(farthest);
  const size = Math.max(...first.flat().map(Math.abs));
  const least = (current === null ? ROUNDING : CURRENT_ROUNDING) * size;
  let left = MOST_CORNERS;
  const between = (p: Corner, q: Corner): Corner[] => {
    const normal: Corner = [q[1] - p[1], p[0] - q[0]];
    const length = Math.hypot(...normal);
    if (length <= ROUNDING * size || left === 0) return [];
    const far = farthest([normal[0] / length, normal[1] / length]);
    const bulge = ((far[0] - p[0]) * normal[0] + (far[1] - p[1]) * normal[1]) / length;
    if (bulge <= least) return [];
    left -= 1;
    return [...between(p, far), far, ...between(far, q)];
  };
  const around = first.flatMap((p, k) => [p, ...between(p, first[(k + 1) % first.length]!)]);
  return { corners: cornersOnly(around, ROUNDING * size), converged: left > 0 };
}

/** Without points that repeat the one before or lie on the line between their neighbours. */
function cornersOnly(points: readonly Corner[], near: number): Corner[] {
  const apart = points.filter((p, k) => {
    const before = points[(k + points.length - 1) % points.length]!;
    return points.length === 1 || Math.hypot(p[0] - before[0], p[1] - before[1]) > near;
  });
  if (apart.length === 0) return [tidy(points[0]!, near)];
  const turning = apart.filter((p, k) => {
    const [a, b] = [apart[(k + apart.length - 1) % apart.length]!, apart[(k + 1) % apart.length]!];
    const doubleArea = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
    const turnsBack = (p[0] - a[0]) * (b[0] - p[0]) + (p[1] - a[1]) * (b[1] - p[1]) < 0;
    return turnsBack || Math.abs(doubleArea) > near * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
  return distinct(turning, near).map((p) => tidy(p, near));
}

const distinct = (points: readonly Corner[], near: number) =>
  points.filter((p, k) => points.findIndex((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) <= near) === k);

const tidy = ([a, b]: Corner, near: number): Corner => [Math.abs(a) <= near ? 0 : a, Math.abs(b) <= near ? 0 : b];

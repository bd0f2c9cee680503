import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import { dragAlong, netWeight } from "../motion/wayForces.ts";
import type { HullWrench } from "../propulsion/busProblem.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import type { PullBook } from "./pullBook.ts";

/** A steady state that a vehicle is asked for. */
export interface Wish {
  /** Velocity through the water, axes of the vehicle, m/s. */ readonly velocity: Vector;
  /** Force on something besides, axes of the vehicle, N. */ readonly push: Vector;
  /** Speed of the current, m/s, and where it comes from, off the bow, rad. */
  readonly current: { readonly speed: number; readonly from: number };
  /** W. */ readonly hotelPower: number;
  /** False: thrusters off. */ readonly thrusters: boolean;
  /** Axes without which it can not be done, though no force is needed on them now. */
  readonly along: readonly ("surge" | "sway" | "heave")[];
}

/** What the hull needs from the thrusters for it. */
export interface Needs {
  readonly wish: Wish;
  /** N, on the axes that the thrusters command. */ readonly wrench: HullWrench;
  /** Size of the force, N. */ readonly force: number;
  /** Force times velocity through the water, W. */ readonly useful: number;
  /** Ways whose drag is needed and not given. */ readonly unknown: readonly MotionWay[];
  /** Axes that are needed and not commanded. */ readonly notCommanded: readonly string[];
  /** Net force down, N, that no thruster holds; 0 where they do. */ readonly weightNotHeld: number;
  readonly converged: boolean;
}

const AXES = ["surge", "sway", "heave"] as const;
/** Part of the force of the whole below which an axis counts as at rest. */
const SLIGHT = 1e-9;

/**
 * Force of the thrusters on the hull for a steady state, N.
 *
 *   F = D(v) − F_tether − (W − B) + F_push,   D_i = (½ ρ C_D A_i |v_i| + a_i) v_i
 *
 * Assumes  the drag of each axis does not know of the others (cross-flow principle, common practice, no source); what the
 *          layout does not command sideways or vertically is held by fins or trim in straight swimming.
 */
export function needsOf(model: PropulsionModel, pulls: PullBook, wish: Wish): Needs {
  const { numbers, geometry } = model;
  const none = {
    wish,
    wrench: {},
    force: 0,
    useful: 0,
    unknown: [],
    notCommanded: [],
    weightNotHeld: 0,
    converged: true,
  };
  if (!wish.thrusters) return none;
  const { velocity: v, push } = wish;
  const pull = pulls(numbers, wish);
  const drags = AXES.map((_, i) => dragOn(model, i, v[i]!));
  const down = netWeight(model);
  const force = AXES.map((_, i) => drags[i]!.force - pull.force[i]! + push[i]! - (i === 2 ? down : 0));
  const size = Math.hypot(...force);
  const slight = AXES.map((_, i) => Math.abs(force[i]!) <= SLIGHT * size);
  const commanded = AXES.map((axis) => geometry.held.includes(axis));
  const wrench = Object.fromEntries(AXES.flatMap((axis, i) => (slight[i] || !commanded[i] ? [] : [[axis, force[i]!]])));
  return {
    ...{ wish, wrench, force: Math.hypot(...AXES.map((axis) => wrench[axis] ?? 0)) },
    useful: AXES.reduce((sum, axis, i) => sum + (wrench[axis] ?? 0) * v[i]!, 0),
    unknown: drags.flatMap(({ unknown }) => (unknown === null ? [] : [unknown])),
    notCommanded: wish.along.filter((axis) => !geometry.held.includes(axis)),
    weightNotHeld: commanded[2] || slight[2] ? 0 : -force[2]!,
    converged: pull.converged,
  };
}

const WAYS: readonly (readonly [MotionWay, MotionWay])[] = [
  ["ahead", "astern"],
  ["starboard", "port"],
  ["down", "up"],
];

/** Force that keeps an axis at its speed against the drag, N. */
function dragOn(
  { numbers }: PropulsionModel,
  axis: number,
  speed: number,
): { force: number; unknown: MotionWay | null } {
  if (speed === 0) return { force: 0, unknown: null };
  const way = WAYS[axis]![speed > 0 ? 0 : 1];
  const drag = numbers.drag[way];
  if (drag === null) return { force: 0, unknown: way };
  return { force: Math.sign(speed) * dragAlong(drag, numbers.density, Math.abs(speed)), unknown: null };
}

import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import { type BusSolution, busDemand } from "../propulsion/busDemand.ts";
import type { HullWrench } from "../propulsion/busProblem.ts";
import { type PropulsionModel, WAY_VECTOR } from "../propulsion/propulsionModel.ts";
import type { WayDrag } from "../propulsion/vehicleNumbers.ts";
import type { TetherPull } from "./tetherPull.ts";

const AXIS_OF = {
  ...{ ahead: "surge", astern: "surge", starboard: "sway", port: "sway", up: "heave", down: "heave" },
} as const satisfies Record<MotionWay, keyof HullWrench>;

export const axisOf = (way: MotionWay) => AXIS_OF[way];

/** A vehicle that goes one way. */
export interface WayProblem {
  readonly model: PropulsionModel;
  readonly way: MotionWay;
  /** Force of the tether at a velocity through the water. */ readonly pull: (through: Vector) => TetherPull;
  /** A thruster that makes none. */ readonly lost?: number;
  /** Its depth is let go: what pulls it up or down is not held. */ readonly adrift?: boolean;
}

/** Forces at one speed, N; all but the first against the motion. */
export interface WayForces {
  readonly available: number;
  readonly drag: number;
  readonly tether: number;
  readonly weight: number;
  /** What is left to speed up with. */ readonly net: number;
  readonly solved: BusSolution;
  readonly converged: boolean;
}

/** Drag at a speed (m/s, along its way), N: (½ ρ C_D A V + a) V. */
export function dragAlong({ dragArea, linear }: WayDrag, density: number, speed: number): number {
  return (0.5 * density * dragArea * speed + linear) * speed;
}

/** Whether the thrusters drive it: not where they can not hold what pulls across the way, or the supply fails. */
export const isDriven = ({ solved: { outcome } }: Pick<WayForces, "solved">): boolean =>
  outcome !== "notHeld" && outcome !== "collapsed";

/** Weight less buoyancy of vehicle and payload in water, N, downwards. */
export const netWeight = ({ numbers }: Pick<PropulsionModel, "numbers">): number =>
  numbers.payload - numbers.netBuoyancy;

/**
 * Greatest force of the thrusters along a way at a speed through the water (m/s), and what is against it; the forces of
 * tether and net weight across the way are held as far as the layout commands those axes.
 */
export function forcesAt({ model, way, pull, lost, adrift }: WayProblem, speed: number): WayForces {
  const { numbers } = model;
  const unit = WAY_VECTOR[way];
  const velocity: Vector = [unit[0] * speed, unit[1] * speed, unit[2] * speed];
  const {
    force: [x, y, z],
    converged,
  } = pull(velocity);
  const sinking = netWeight(model);
  const axis = AXIS_OF[way];
  const across = { surge: -x, sway: -y, heave: adrift ? 0 : -(z + sinking), [axis]: 0 };
  const sign = unit[0] + unit[1] + unit[2];
  const direction = { [axis]: sign };
  const solved = busDemand(model, { direction, aside: across, velocity, ...(lost !== undefined && { lost }) });
  const wayDrag = numbers.drag[way];
  const drag = wayDrag === null ? 0 : dragAlong(wayDrag, numbers.density, speed);
  const tether = -(x * unit[0] + y * unit[1] + z * unit[2]);
  const weight = -sinking * unit[2] + 0;
  const net = solved.times - drag - tether - weight;
  return { available: solved.times, drag, tether, weight, net, solved, converged: converged && solved.converged };
}

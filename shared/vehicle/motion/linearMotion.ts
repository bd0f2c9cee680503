import type { Vector } from "../layout/wrenchMatrix.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearsOf } from "../propulsion/firstOrder.ts";
import { WAY_VECTOR, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { SteadySpeed } from "./steadySpeed.ts";
import type { TetherPull } from "./tetherPull.ts";
import { dragAlong, forcesAt, type WayForces, type WayProblem } from "./wayForces.ts";

/** The tether's force for changed numbers, at a velocity through the water. */
export type PullFor = (numbers: VehicleNumbers) => (through: Vector) => TetherPull;

/** Step of the speed for the slope of the forces, relative. */
const STEP = 1e-4;

/** The bus by first order. */
export interface LinearBus {
  /** V. */ readonly voltage: Linear;
  /** A. */ readonly current: Linear;
  /** W. */ readonly power: Linear;
}

const busValues = ({ solved: { busVoltage, supplyCurrent, power } }: WayForces) => [busVoltage, supplyCurrent, power];

const busOf = ([voltage, current, power]: readonly Linear[]): LinearBus => ({
  ...{ voltage: voltage!, current: current!, power: power! },
});

/** The steady speed by first order, and what goes along with it. */
export interface LinearWay {
  /** m/s. */ readonly speed: Linear;
  readonly bus: LinearBus;
  /** Force of the thrusters on the hull at it, N. */ readonly available: Linear;
  /** What is left of the forces, N, by first order where the speed stays: what a push more or a drag less is there. */
  readonly net: Linear;
}

const atSpeed = (forces: WayForces) => [forces.net, forces.available, ...busValues(forces)];

/**
 * What is left of the forces at a fixed speed, N, and the bus meanwhile, by first order. Only what a doubt touches is
 * worked out again.
 */
function linearsAt(doubts: VehicleDoubts, problem: WayProblem, pullFor: PullFor, speed: number): Linear[] {
  const { model, way } = problem;
  const unit = WAY_VECTOR[way];
  const velocity: Vector = [unit[0] * speed, unit[1] * speed, unit[2] * speed];
  const still = problem.pull(velocity);
  const values = atSpeed(forcesAt({ ...problem, pull: () => still }, speed));
  const [net, ...rest] = values;
  const drag = (numbers: VehicleNumbers) => dragAlong(numbers.drag[way]!, numbers.density, speed);
  return linearsOf(doubts, model.numbers, values, (numbers, { of }) => {
    if (of === "mass") return null;
    if (of === "drag") return numbers.drag[way] === null ? null : [net! - drag(numbers) + drag(model.numbers), ...rest];
    const pull = of === "tether" || of === "current" ? pullFor(numbers)(velocity) : still;
    if (of === "current" && pull === still) return null;
    return atSpeed(forcesAt({ ...problem, model: withNumbers(model, numbers), pull: () => pull }, speed));
  });
}

/** What is left of the forces at a fixed speed, N, by first order. */
export const linearNet = (...at: Parameters<typeof linearsAt>): Linear => linearsAt(...at)[0]!;

/**
 * The steady speed by first order, from the balance of forces at it, and the bus that goes along with it:
 *
 *   dV/dp = −(∂F/∂p)/(∂F/∂V),   dP/dp = ∂P/∂p + (∂P/∂V)(dV/dp)
 *
 * Source   derivative of a root by the implicit function theorem.
 */
export function linearSteady(
  doubts: VehicleDoubts,
  problem: WayProblem,
  pullFor: PullFor,
  { speed }: SteadySpeed,
): LinearWay {
  const [net, ...fixed] = linearsAt(doubts, problem, pullFor, speed);
  const [slope, ...slopes] = slopesAt(problem, speed);
  const by = net!.by.map((one) => -one / slope!);
  const [available, ...bus] = fixed.map((one, k) => ({
    ...one,
    by: one.by.map((part, i) => part + slopes[k]! * by[i]!),
  }));
  return { speed: { value: speed, by }, bus: busOf(bus), available: available!, net: net! };
}

export const linearSpeed = (...at: Parameters<typeof linearSteady>): Linear => linearSteady(...at).speed;

/** Change of the force that is left, and of the bus, with the speed: N·s/m, V·s/m and so on. */
function slopesAt(problem: WayProblem, speed: number): number[] {
  const [low, high] = [speed * (1 - STEP), speed * (1 + STEP)];
  const below = atSpeed(forcesAt(problem, low));
  return atSpeed(forcesAt(problem, high)).map((above, k) => (above - below[k]!) / (high - low));
}

/** The greatest force at rest on the hull, N, and the bus at it, by first order. */
export function linearAtRest(
  doubts: VehicleDoubts,
  problem: WayProblem,
  { atRest }: SteadySpeed,
): { readonly force: Linear; readonly bus: LinearBus } {
  const still = problem.pull([0, 0, 0]);
  const valuesOf = (forces: WayForces) => [forces.available, ...busValues(forces)];
  const [force, ...bus] = linearsOf(doubts, problem.model.numbers, valuesOf(atRest), (numbers, { of }) =>
    of === "propulsion" || of === "weight"
      ? valuesOf(forcesAt({ ...problem, model: withNumbers(problem.model, numbers), pull: () => still }, 0))
      : null,
  );
  return { force: force!, bus: busOf(bus) };
}

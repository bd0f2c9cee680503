import type { Vector } from "../layout/wrenchMatrix.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearOf } from "../propulsion/firstOrder.ts";
import { WAY_VECTOR, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { SteadySpeed } from "./steadySpeed.ts";
import type { TetherPull } from "./tetherPull.ts";
import { dragAlong, forcesAt, type WayProblem } from "./wayForces.ts";

/** The tether's force for changed numbers, at a velocity through the water. */
export type PullFor = (numbers: VehicleNumbers) => (through: Vector) => TetherPull;

/** Step of the speed for the slope of the forces, relative. */
const STEP = 1e-4;

/**
 * What is left of the forces at a fixed speed, N, by first order. Only what a doubt touches is worked out again.
 */
export function linearNet(doubts: VehicleDoubts, problem: WayProblem, pullFor: PullFor, speed: number): Linear {
  const { model, way } = problem;
  const unit = WAY_VECTOR[way];
  const velocity: Vector = [unit[0] * speed, unit[1] * speed, unit[2] * speed];
  const still = problem.pull(velocity);
  const net = forcesAt({ ...problem, pull: () => still }, speed).net;
  const drag = (numbers: VehicleNumbers) => dragAlong(numbers.drag[way]!, numbers.density, speed);
  return linearOf(doubts, model.numbers, net, (numbers, { of }) => {
    if (of === "mass") return null;
    if (of === "drag") return numbers.drag[way] === null ? null : net - drag(numbers) + drag(model.numbers);
    const pull = of === "tether" || of === "current" ? pullFor(numbers)(velocity) : still;
    if (of === "current" && pull === still) return null;
    return forcesAt({ ...problem, model: withNumbers(model, numbers), pull: () => pull }, speed).net;
  });
}

/**
 * The steady speed by first order, from the balance of forces at it:  dV/dp = −(∂F/∂p)/(∂F/∂V).
 *
 * Source   derivative of a root by the implicit function theorem.
 */
export function linearSpeed(
  doubts: VehicleDoubts,
  problem: WayProblem,
  pullFor: PullFor,
  { speed }: SteadySpeed,
): Linear {
  const { by } = linearNet(doubts, problem, pullFor, speed);
  const slope = netSlope(problem, speed);
  return { value: speed, by: by.map((one) => -one / slope) };
}

/** ∂F/∂V at a speed, N·s/m. */
function netSlope(problem: WayProblem, speed: number): number {
  const [low, high] = [speed * (1 - STEP), speed * (1 + STEP)];
  return (forcesAt(problem, high).net - forcesAt(problem, low).net) / (high - low);
}

/** The greatest force at rest on the hull by first order, N. */
export function linearForce(doubts: VehicleDoubts, problem: WayProblem, { atRest }: SteadySpeed): Linear {
  const still = problem.pull([0, 0, 0]);
  return linearOf(doubts, problem.model.numbers, atRest.available, (numbers, { of }) =>
    of === "propulsion" || of === "weight"
      ? forcesAt({ ...problem, model: withNumbers(problem.model, numbers), pull: () => still }, 0).available
      : null,
  );
}

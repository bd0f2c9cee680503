import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { NO_PULL, type TetherPull, tetherOut, tetherPulls } from "../motion/tetherPull.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { Wish } from "./needs.ts";

/** Force of the tether on the vehicle for what it is asked. */
export type PullBook = (numbers: VehicleNumbers, wish: Pick<Wish, "velocity" | "current">) => TetherPull;

/** A tether that is solved once for each question; a changed vehicle whose tether and water are the same asks in vain. */
export function pullBook(vehicle: Vehicle): PullBook {
  if (vehicle.tether === undefined || vehicle.scenario.tetherLength === 0) return () => NO_PULL;
  const solvers = new Map<string, ReturnType<typeof tetherPulls>>();
  const known = new Map<string, TetherPull>();
  return (numbers, { velocity, current }) => {
    const state = JSON.stringify([current, numbers.tether, numbers.density]);
    const key = `${state} ${velocity.join(" ")}`;
    const there = { ...numbers, currentSpeed: current.speed };
    const solve = solvers.get(state) ?? tetherPulls(tetherOut(vehicle, there), current.from);
    solvers.set(state, solve);
    const pull = known.get(key) ?? solve(velocity);
    known.set(key, pull);
    return pull;
  };
}

/**
 * The pull at 1 m/s of current from an angle, times the square of the current: a few solutions for a whole map.
 *
 * Assumes  a tether whose weight does not matter beside its drag.
 */
export function squarePulls(book: PullBook): PullBook {
  return (numbers, { current: { speed, from } }) => {
    if (speed === 0) return NO_PULL;
    const { force, converged } = book(numbers, {
      velocity: [Math.cos(from), Math.sin(from), 0],
      current: { speed: 1, from },
    });
    const times = speed * speed;
    return { force: [force[0] * times, force[1] * times, force[2] * times], converged };
  };
}

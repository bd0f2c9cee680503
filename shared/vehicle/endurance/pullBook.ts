import type { TetherBook } from "../motion/tetherBook.ts";
import type { TetherPull } from "../motion/tetherPull.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { Wish } from "./needs.ts";

/** Force of the tether on the vehicle for what it is asked. */
export type PullBook = (numbers: VehicleNumbers, wish: Pick<Wish, "velocity" | "current">) => TetherPull;

export const pullBook =
  (tether: TetherBook): PullBook =>
  (numbers, { velocity, current }) =>
    tether.in(current)(numbers)(velocity);

/**
 * The pull at 1 m/s of current from an angle, times the square of the current: a few solutions for a whole map.
 *
 * Assumes  a tether whose weight does not matter beside its drag; doubts are not asked for.
 */
export const squarePulls =
  (tether: TetherBook): PullBook =>
  (numbers, { current: { speed, from } }) => {
    const pull = tether.atOne(numbers)(from);
    const times = speed * speed;
    const [x, y, z] = pull.force;
    return { ...pull, force: [x * times, y * times, z * times] };
  };

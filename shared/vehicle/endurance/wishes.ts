import type { MissionLeg } from "../../model/vehicle/mission.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import type { Vector } from "../layout/wrenchMatrix.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { Wish } from "./needs.ts";

export interface WishedLeg {
  readonly wish: Wish;
  /** Time of all repeats, s; null: it makes no way. */ readonly duration: number | null;
  /** Way over the ground, or change of depth, in a second, m/s; 0 where it stays. */ readonly pace: number;
}

const NONE: Vector = [0, 0, 0];

/**
 * What a leg of a mission asks of the vehicle.
 *
 *   swim   V ahead through the water, V − U cos ψ over the ground along the bow;   t = s/(V − U cos ψ)
 *   hold, push   (U cos ψ, U sin ψ, 0) through the water, none over the ground
 *   climb   w up, carried along by the current;   t = s/|w|
 */
export function wishOfLeg(
  { scenario }: Pick<Vehicle, "scenario">,
  numbers: VehicleNumbers,
  leg: MissionLeg,
): WishedLeg {
  const current = { speed: leg.current ?? numbers.currentSpeed, from: scenario.currentFrom };
  const against = current.speed * Math.cos(current.from);
  const held = through(current);
  const hotelPower = leg.hotelPower ?? numbers.hotelPower;
  const wish = (velocity: Vector, along: Wish["along"], push = NONE): Wish => ({
    ...{ velocity, push, current, hotelPower, along, thrusters: true },
  });
  const { kind, repeats } = leg;
  switch (kind.does) {
    case "swim": {
      const pace = kind.speed - against;
      const time = kind.extent.by === "duration" ? kind.extent.duration : way(kind.extent.distance, pace);
      return { wish: wish([kind.speed, 0, 0], ["surge"]), duration: times(repeats, time), pace };
    }
    case "climb":
      return {
        wish: wish([0, 0, -kind.speed], ["heave"]),
        ...{ duration: times(repeats, way(kind.distance, Math.abs(kind.speed))), pace: Math.abs(kind.speed) },
      };
    case "hold":
      return { wish: wish(held, axesOf(held)), duration: repeats * kind.duration, pace: 0 };
    case "push":
      return {
        wish: wish(held, [...new Set([...axesOf(held), "surge" as const])], [kind.force, 0, 0]),
        ...{ duration: repeats * kind.duration, pace: 0 },
      };
    case "rest":
      return { wish: { ...wish(NONE, []), thrusters: false }, duration: repeats * kind.duration, pace: 0 };
  }
}

/** Straight ahead at a speed in the current of the scenario. */
export function swimWish({ scenario }: Pick<Vehicle, "scenario">, numbers: VehicleNumbers, speed: number): Wish {
  const current = { speed: numbers.currentSpeed, from: scenario.currentFrom };
  const { hotelPower } = numbers;
  return {
    velocity: [speed, 0, 0],
    push: NONE,
    current,
    hotelPower,
    thrusters: true,
    along: speed > 0 ? ["surge"] : [],
  };
}

/** Over one place in a current. */
export function holdWish(numbers: VehicleNumbers, current: Wish["current"]): Wish {
  const velocity = through(current);
  const { hotelPower } = numbers;
  return { velocity, push: NONE, current, hotelPower, thrusters: true, along: axesOf(velocity) };
}

/** Through the water over one place; a component of rounding alone is none. */
function through({ speed, from }: Wish["current"]): Vector {
  const part = (size: number) => (Math.abs(size) < 1e-12 ? 0 : speed * size);
  return [part(Math.cos(from)), part(Math.sin(from)), 0];
}

function axesOf([x, y]: Vector): ("surge" | "sway")[] {
  return [...(x === 0 ? [] : ["surge" as const]), ...(y === 0 ? [] : ["sway" as const])];
}

const way = (distance: number, pace: number) =>
  distance === 0 ? 0 : pace > 0 && distance > 0 ? distance / pace : null;
const times = (repeats: number, time: number | null) => (time === null ? null : repeats * time);

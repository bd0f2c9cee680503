import type { SteadyMotion } from "../../model/vehicle/motionAnswer.ts";
import { asShare, hasInterval, type Told, withoutInterval } from "../../quantity/told.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import { withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { LinearWay } from "./linearMotion.ts";
import { steadySpeed } from "./steadySpeed.ts";
import type { WayProblem } from "./wayForces.ts";

/**
 * Useful power over that of the thrusters at the steady speed; null where the thrusters draw none.
 *
 *   η = F V/(P − P_h)
 */
export function efficiencyOf(
  doubts: VehicleDoubts,
  numbers: VehicleNumbers,
  { speed, available, bus }: LinearWay,
  why: string | null,
): Told | null {
  if (!(bus.power.value > numbers.hotelPower)) return null;
  const share = linearFrom(
    doubts,
    numbers,
    [speed, available, bus.power],
    ([V, F, P], { hotelPower }) => (F! * V!) / (P! - hotelPower),
  );
  const told = toldOf(doubts, share, why);
  return hasInterval(told) ? asShare(told) : told;
}

/** Part of a speed that the search for it leaves open. */
const ROUNDING = 1e-9;

/** The two inputs that are left out in turn. */
const WAKE = "wakeFraction";
const DEDUCTION = "thrustDeduction";

/**
 * What wake and thrust deduction each change, by leaving them out.
 *
 * Assumes  every other input acts on the speed without them in proportion, as far as it acts on the speed with them.
 */
export function interactionOf(
  doubts: VehicleDoubts,
  problem: WayProblem,
  speed: Linear,
  why: string | null,
): SteadyMotion["interaction"] {
  const without = (...left: readonly (typeof WAKE | typeof DEDUCTION)[]): Linear => {
    const numbers = { ...problem.model.numbers, ...Object.fromEntries(left.map((one) => [one, 0])) };
    const value = steadySpeed({ ...problem, model: withNumbers(problem.model, numbers) }).speed;
    const isOut = (i: number) => left.some((one) => one === doubts.list[i]!.key);
    return { value, by: speed.by.map((one, i) => (isOut(i) ? 0 : (one * value) / speed.value)) };
  };
  const change = (other: Linear) => {
    const value = speed.value - other.value;
    if (Math.abs(value) < ROUNDING * speed.value) return uncertain(0, 0);
    const by = speed.by.map((one, i) => one - other.by[i]!);
    return why === null ? uncertainOf(doubts, { value, by }) : withoutInterval(value, why);
  };
  return {
    speedWithout: toldOf(doubts, without(WAKE, DEDUCTION), why),
    byWake: change(without(WAKE)),
    byDeduction: change(without(DEDUCTION)),
  };
}

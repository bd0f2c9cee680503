import type { VehicleRequirement } from "../../model/vehicle/requirement.ts";
import { formatNumber } from "../../quantity/format.ts";
import { heldCurrent, holdReserve, holdSolved, linearHeld } from "../motion/headings.ts";
import { solvedWay } from "../motion/steadyMotion.ts";
import { brakedStop, coastingStop, DRIFTING } from "../motion/stopping.ts";
import { forcesAt } from "../motion/wayForces.ts";
import { linearFrom } from "../propulsion/firstOrder.ts";
import { limitingPart } from "../propulsion/limitingPart.ts";
import { withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { type DemandQuestion, lacking, orShort, type SolvedDemand } from "./solvedDemand.ts";

const SIDES = 24;
/** Sides near the worst that draws are held against too: a draw may change which is worst. */
const NEAR_WORST = 1.1;

/** The current in which it holds its place from any side, bow kept. */
export function holdDemand(question: DemandQuestion, { holdCurrent }: VehicleRequirement): SolvedDemand | null {
  if (holdCurrent === undefined) return null;
  const { model, doubts } = question;
  const base = {
    demand: "holdCurrent",
    name: "Current held from any side, bow kept",
    unit: "m/s",
    needed: holdCurrent,
    better: "more",
  } as const;
  return orShort(base, () => {
    const hold = { model, pullsAtOne: question.tether.atOne };
    const sides = Array.from({ length: SIDES }, (_, i) => (2 * Math.PI * i) / SIDES).map((from) => ({
      from,
      current: heldCurrent(hold, from),
    }));
    if (sides.some(({ current }) => current === null)) {
      return lacking(
        base,
        "Sideways it has no thrust or no drag stated: it can hold its place only with the bow turned into the current.",
      );
    }
    const worst = sides.reduce((least, one) => (one.current! < least.current! * (1 - 1e-9) ? one : least));
    const near = sides.filter(({ current }) => current! <= NEAR_WORST * worst.current!);
    const meets = (numbers: VehicleNumbers) => {
      const drawn = { ...hold, model: withNumbers(model, numbers) };
      return near.every(({ from }) => holdReserve(drawn, from, holdCurrent)! >= 1);
    };
    const found = linearHeld(doubts, hold, worst.from, worst.current!);
    const limitedBy = limitingPart(model, holdSolved(hold, worst.from, holdCurrent)!);
    return { ...base, found, fixed: null, limitedBy, besideDepth: true, meets };
  });
}

/** The way to stop from the speed that is asked for, or from full speed. */
export function stopDemand(question: DemandQuestion, requirement: VehicleRequirement): SolvedDemand | null {
  const { stoppingDistance, speed, againstCurrent } = requirement;
  if (stoppingDistance === undefined) return null;
  const { model, doubts } = question;
  const base = { demand: "stoppingDistance", unit: "m", needed: stoppingDistance, better: "less" } as const;
  const { pullFor } = question;
  const named = (text: string) => ({ ...base, name: `Way to stop ${text}` });
  if (model.numbers.drag.ahead === null) return lacking(named(""), "The drag ahead is not given.");
  const ahead = speed === undefined ? solvedWay({ model, way: "ahead", doubts, pullFor }) : null;
  const from =
    speed === undefined ? (ahead?.speed ?? null) : { value: speed + againstCurrent, by: doubts.list.map(() => 0) };
  if (from === null) return lacking(named("from full speed"), "It does not go ahead.");
  const astern = solvedWay({ model, way: "astern", doubts, pullFor });
  const brakes = astern !== null && astern.force.value > 0;
  const body = ({ mass, density, drag }: VehicleNumbers) => {
    const { addedMass, dragArea, linear } = drag.ahead!;
    return { mass: mass + addedMass, quadratic: 0.5 * density * dragArea, linear };
  };
  const wayFor = (numbers: VehicleNumbers, V: number, F: number) =>
    brakes ? brakedStop(body(numbers), V, F).distance : coastingStop(body(numbers), V, DRIFTING).distance;
  const parts = brakes ? [from, astern.force] : [from];
  const found = linearFrom(doubts, model.numbers, parts, ([V, F], numbers) => wayFor(numbers, V!, F ?? 0));
  const meets = (numbers: VehicleNumbers) => {
    const drawn = withNumbers(model, numbers);
    const force = brakes ? forcesAt({ ...astern.problem, model: drawn }, 0).available : 0;
    return wayFor(numbers, from.value, force) <= stoppingDistance;
  };
  const how = brakes ? "with full astern" : "by drag alone, down to a tenth of the speed";
  const apart = question.vehicle.scenario.tetherLength > 0 && question.vehicle.tether ? ", the tether left out" : "";
  const name = `from ${formatNumber(from.value)} m/s ${how}${apart}`;
  const besideDepth = brakes || speed === undefined;
  const limitedBy = brakes ? limitingPart(model, astern.steady.atRest.solved) : null;
  return { ...named(name), found, fixed: null, limitedBy, besideDepth, meets };
}

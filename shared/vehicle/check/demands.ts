import type { VehicleRequirement } from "../../model/vehicle/requirement.ts";
import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { formatNumber } from "../../quantity/format.ts";
import { linearNet, type PullFor } from "../motion/linearMotion.ts";
import { solvedWay } from "../motion/steadyMotion.ts";
import { tetherBook } from "../motion/tetherBook.ts";
import { axisOf, forcesAt, isDriven, type WayProblem } from "../motion/wayForces.ts";
import { isAtMost, wayWarnings } from "../motion/wayWarnings.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom } from "../propulsion/firstOrder.ts";
import { limitingPart } from "../propulsion/limitingPart.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import { withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { holdDemand, stopDemand } from "./holdAndStop.ts";
import { type DemandQuestion, lacking, notPushed, orShort, type SolvedDemand, TOO_SHORT } from "./solvedDemand.ts";

/** Every demand of a requirement, in the order of its fields. */
export function solvedDemands(question: DemandQuestion): SolvedDemand[] {
  const requirement = question.vehicle.requirement!;
  return [speedDemand, depthDemand, climbDemand, liftDemand, holdDemand, stopDemand].flatMap((solve) => {
    const solved = solve(question, requirement);
    return solved === null ? [] : [solved];
  });
}

/** The vehicle under the conditions that are asked for: depth, current ahead and tether paid out. */
function asked(
  { vehicle, model, tether }: DemandQuestion,
  requirement: VehicleRequirement,
): { model: PropulsionModel; pullFor: PullFor } {
  const depth = requirement.depth ?? vehicle.scenario.depth;
  const there = { ...vehicle, scenario: { ...vehicle.scenario, depth } };
  const currentSpeed = requirement.againstCurrent;
  const at = (numbers: VehicleNumbers) => ({ ...numbers, currentSpeed });
  const { tetherLength } = requirement;
  const isSame = depth === vehicle.scenario.depth && tetherLength === vehicle.scenario.tetherLength;
  const book = isSame ? tether : tetherBook(there, model.numbers, tetherLength);
  return { model: withNumbers(model, at(model.numbers)), pullFor: book.in({ speed: currentSpeed, from: 0 }) };
}

/** Doubts of the current are left out: it is asked for, not measured. */
const atStatedCurrent = ({ list }: VehicleDoubts, { value, by }: Linear): Linear => ({
  value,
  by: by.map((one, i) => (list[i]!.of === "current" ? 0 : one)),
});

/** Whether something is left of the forces at a speed for other numbers. */
function meetsSpeed(
  problem: WayProblem,
  pullFor: PullFor,
  speed: number,
  change: (numbers: VehicleNumbers) => VehicleNumbers,
) {
  return (numbers: VehicleNumbers) => {
    const changed = change(numbers);
    const model = withNumbers(problem.model, changed);
    const forces = forcesAt({ ...problem, model, pull: pullFor(changed) }, speed);
    return isDriven(forces) && forces.net >= 0;
  };
}

/**
 * Force left of the thrust at a speed (m/s), N, by first order; null where the vehicle is not driven there.
 *
 * It is straight in a drag area, which doubts most of all; the speed itself is not: it goes with the root of the drag.
 */
function leftAt(doubts: VehicleDoubts, problem: WayProblem, pullFor: PullFor, speed: number): Linear | null {
  return isDriven(forcesAt(problem, speed)) ? linearNet(doubts, problem, pullFor, speed) : null;
}

function speedDemand(question: DemandQuestion, requirement: VehicleRequirement): SolvedDemand | null {
  const { speed, againstCurrent, tetherLength } = requirement;
  if (speed === undefined) return null;
  const against = againstCurrent > 0 ? ` against ${formatNumber(againstCurrent)} m/s of current` : "";
  const behind = tetherLength > 0 ? ` with ${formatNumber(tetherLength)} m of tether out` : "";
  const name = `Speed ahead over the ground${against}${behind}`;
  const base = { demand: "speed", name, unit: "m/s", needed: speed, better: "more" } as const;
  return orShort(base, () => {
    const { model, pullFor } = asked(question, requirement);
    const solved = solvedWay({ model, way: "ahead", doubts: question.doubts, pullFor });
    if (solved === null) return notPushed(base, "No thruster pushes ahead with the other motions at zero.");
    if (model.numbers.drag.ahead === null) return lacking(base, "The drag ahead is not given.");
    const limitedBy = limitingPart(model, solved.steady.atSpeed.solved);
    const through = solved.speed ?? { value: 0, by: question.doubts.list.map(() => 0) };
    const found = atStatedCurrent(question.doubts, { ...through, value: through.value - againstCurrent });
    const meets = meetsSpeed(solved.problem, pullFor, speed + againstCurrent, (numbers) => ({
      ...numbers,
      currentSpeed: againstCurrent,
    }));
    const net = leftAt(question.doubts, solved.problem, pullFor, speed + againstCurrent);
    const left = net && atStatedCurrent(question.doubts, net);
    const atMost = isAtMost(wayWarnings(solved.problem, solved.steady));
    return { ...base, found, left, fixed: null, limitedBy, besideDepth: true, atMost, meets };
  });
}

function depthDemand({ vehicle }: DemandQuestion, { depth, tetherLength }: VehicleRequirement): SolvedDemand | null {
  if (depth === undefined) return null;
  const base = { demand: "depth", name: "Depth", unit: "m", needed: depth, better: "more" } as const;
  const out = tetherLength || vehicle.scenario.tetherLength;
  if (vehicle.tether === undefined || out === 0) {
    const text =
      "No tether bounds the depth; what pressure hull and seals bear is not judged here: go by their own tests.";
    return { ...base, found: null, fixed: { met: true, text }, limitedBy: null, meets: () => true };
  }
  const reach = Math.sqrt(Math.max(0, out ** 2 - vehicle.scenario.tetherOffset ** 2));
  const met = reach > depth;
  const text = `${formatNumber(out)} m of tether ${met ? "reach" : "do not reach"} ${formatNumber(depth)} m of depth; what pressure hull and seals bear is not judged here.`;
  return { ...base, found: null, fixed: { met, text }, limitedBy: met ? null : TOO_SHORT, meets: () => met };
}

/** The vehicle with what it must lift aboard. */
const laden = (model: PropulsionModel, lift: number): PropulsionModel => {
  const payload = model.numbers.payload + lift * STANDARD_GRAVITY;
  return withNumbers(model, { ...model.numbers, payload });
};

function climbDemand(question: DemandQuestion, { climb, lift = 0 }: VehicleRequirement): SolvedDemand | null {
  if (climb === undefined) return null;
  const name = lift > 0 ? `Speed of climb with ${formatNumber(lift)} kg in water aboard` : "Speed of climb";
  const base = { demand: "climb", name, unit: "m/s", needed: climb, better: "more" } as const;
  return orShort(base, () => {
    const [model, pullFor] = [laden(question.model, lift), question.pullFor];
    const solved = solvedWay({ model, way: "up", doubts: question.doubts, pullFor });
    if (solved === null) return notPushed(base, "No thruster pushes up with the other motions at zero.");
    if (model.numbers.drag.up === null) return lacking(base, "The drag upwards is not given.");
    const limitedBy = limitingPart(model, solved.steady.atSpeed.solved);
    const found = solved.speed ?? { value: 0, by: question.doubts.list.map(() => 0) };
    const aboard = (numbers: VehicleNumbers) => ({ ...numbers, payload: numbers.payload + lift * STANDARD_GRAVITY });
    const left = leftAt(question.doubts, solved.problem, pullFor, climb);
    const atMost = isAtMost(wayWarnings(solved.problem, solved.steady));
    const meets = meetsSpeed(solved.problem, pullFor, climb, aboard);
    return { ...base, found, left, fixed: null, limitedBy, atMost, meets };
  });
}

function liftDemand(question: DemandQuestion, { lift, climb = 0 }: VehicleRequirement): SolvedDemand | null {
  if (lift === undefined) return null;
  const rate = climb > 0 ? ` at ${formatNumber(climb)} m/s` : " at all";
  const base = {
    demand: "lift",
    name: `Mass in water lifted${rate}`,
    unit: "kg",
    needed: lift,
    better: "more",
  } as const;
  return orShort(base, () => {
    const { model, doubts } = question;
    const { pullFor } = question;
    const problem: WayProblem = { model, way: "up", pull: pullFor(model.numbers) };
    if (!model.geometry.held.includes(axisOf("up")))
      return notPushed(base, "No thruster pushes up with the other motions at zero.");
    if (climb > 0 && model.numbers.drag.up === null) return lacking(base, "The drag upwards is not given.");
    const net = linearNet(doubts, problem, pullFor, climb);
    const found = linearFrom(doubts, model.numbers, [net], ([left]) => Math.max(0, left! / STANDARD_GRAVITY));
    const atSpeed = forcesAt(problem, climb);
    const limitedBy = limitingPart(model, atSpeed.solved);
    const aboard = (numbers: VehicleNumbers) => ({ ...numbers, payload: numbers.payload + lift * STANDARD_GRAVITY });
    const atMost = isAtMost(wayWarnings(problem, { speed: climb, atSpeed }));
    return { ...base, found, fixed: null, limitedBy, atMost, meets: meetsSpeed(problem, pullFor, climb, aboard) };
  });
}

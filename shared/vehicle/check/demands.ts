import type { LimitingPart } from "../../model/vehicle/motionAnswer.ts";
import type { VehicleRequirement } from "../../model/vehicle/requirement.ts";
import type { DemandName } from "../../model/vehicle/requirementAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { heldCurrent, holdReserve, linearHeld } from "../motion/headings.ts";
import { linearNet, type PullFor } from "../motion/linearMotion.ts";
import { solvedWay } from "../motion/steadyMotion.ts";
import { brakedStop, coastingStop, DRIFTING } from "../motion/stopping.ts";
import { type TetherBook, tetherBook } from "../motion/tetherBook.ts";
import { axisOf, forcesAt, isDriven, type WayProblem } from "../motion/wayForces.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom } from "../propulsion/firstOrder.ts";
import { limitingPart } from "../propulsion/limitingPart.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import { withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";

/** A demand worked out, and a quick way to see whether other numbers meet it. */
export interface SolvedDemand {
  readonly demand: DemandName;
  readonly name: string;
  readonly unit: string;
  readonly needed: number;
  readonly better: "more" | "less";
  /** Null: it can not, or it is not known. */ readonly found: Linear | null;
  /** Force left at the speed that is needed, N, which says more surely whether it is met; absent: there is none. */
  readonly left?: Linear | null;
  /** What is known without a number; null: told by the number. */ readonly fixed: {
    readonly met: boolean;
    readonly text: string;
  } | null;
  readonly limitedBy: LimitingPart | null;
  /** Whether a draw meets it. */ readonly meets: (numbers: VehicleNumbers) => boolean;
}

export interface DemandQuestion {
  readonly vehicle: Vehicle;
  readonly model: PropulsionModel;
  readonly doubts: VehicleDoubts;
  /** The tether of the scenario, in its current and in any. */ readonly pullFor: PullFor;
  readonly tether: TetherBook;
  /** How long it works, s, by first order. */ readonly endurance: EnduranceFound | EnduranceUnknown;
}

/** What the endurance room found for the time asked for. */
export interface EnduranceFound {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly text: string;
}

/** Why it is not known how long it works, as the end of a sentence. */
export interface EnduranceUnknown {
  readonly unknown: string;
}

/** Every demand of a requirement, in the order of its fields. */
export function solvedDemands(question: DemandQuestion): SolvedDemand[] {
  const requirement = question.vehicle.requirement!;
  return [speedDemand, depthDemand, climbDemand, liftDemand, holdDemand, stopDemand].flatMap((solve) => {
    const solved = solve(question, requirement);
    return solved === null ? [] : [solved];
  });
}

const never = () => false;

function lacking(
  base: Pick<SolvedDemand, "demand" | "name" | "unit" | "needed" | "better">,
  text: string,
): SolvedDemand {
  return { ...base, found: null, fixed: { met: false, text }, limitedBy: null, meets: never };
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

/** What comes out of a tether that does not reach is a demand that is not met, not a refusal of the whole answer. */
function orShort(base: Parameters<typeof lacking>[0], solve: () => SolvedDemand): SolvedDemand {
  try {
    return solve();
  } catch (error) {
    if (error instanceof InputProblem && error.problem.code === "vehicle.tether-too-short")
      return lacking(base, `${error.problem.found}: ${error.problem.needed} is needed.`);
    throw error;
  }
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
    if (solved === null) return lacking(base, "No thruster pushes ahead with the other motions at zero.");
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
    return { ...base, found, left, fixed: null, limitedBy, meets };
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
  return { ...base, found: null, fixed: { met, text }, limitedBy: null, meets: () => met };
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
    if (solved === null) return lacking(base, "No thruster pushes up with the other motions at zero.");
    if (model.numbers.drag.up === null) return lacking(base, "The drag upwards is not given.");
    const limitedBy = limitingPart(model, solved.steady.atSpeed.solved);
    const found = solved.speed ?? { value: 0, by: question.doubts.list.map(() => 0) };
    const aboard = (numbers: VehicleNumbers) => ({ ...numbers, payload: numbers.payload + lift * STANDARD_GRAVITY });
    const left = leftAt(question.doubts, solved.problem, pullFor, climb);
    return { ...base, found, left, fixed: null, limitedBy, meets: meetsSpeed(solved.problem, pullFor, climb, aboard) };
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
      return lacking(base, "No thruster pushes up with the other motions at zero.");
    if (climb > 0 && model.numbers.drag.up === null) return lacking(base, "The drag upwards is not given.");
    const net = linearNet(doubts, problem, pullFor, climb);
    const found = linearFrom(doubts, model.numbers, [net], ([left]) => Math.max(0, left! / STANDARD_GRAVITY));
    const limitedBy = limitingPart(model, forcesAt(problem, climb).solved);
    const aboard = (numbers: VehicleNumbers) => ({ ...numbers, payload: numbers.payload + lift * STANDARD_GRAVITY });
    return { ...base, found, fixed: null, limitedBy, meets: meetsSpeed(problem, pullFor, climb, aboard) };
  });
}

const SIDES = 24;
/** Sides near the worst that draws are held against too: a draw may change which is worst. */
const NEAR_WORST = 1.1;

function holdDemand(question: DemandQuestion, { holdCurrent }: VehicleRequirement): SolvedDemand | null {
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
    const hold = { model, pullAtOne: question.tether.atOne };
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
    return { ...base, found, fixed: null, limitedBy: null, meets };
  });
}

function stopDemand(question: DemandQuestion, requirement: VehicleRequirement): SolvedDemand | null {
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
  return { ...named(`from ${formatNumber(from.value)} m/s ${how}`), found, fixed: null, limitedBy: null, meets };
}

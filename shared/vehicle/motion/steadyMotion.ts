import type { MotionWay, SteadyMotion, Stopping } from "../../model/vehicle/motionAnswer.ts";
import { formatNumber } from "../../quantity/format.ts";
import { formatBare, hasInterval, noInterval, type Told } from "../../quantity/told.ts";
import { type BusTold, busState } from "../propulsion/busState.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { doubtShares, type Linear, linearFrom, toldOf } from "../propulsion/firstOrder.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { METRE_PER_SECOND, NEWTON } from "../tether/shownUnits.ts";
import { efficiencyOf, interactionOf } from "./hullAndBus.ts";
import { type LinearBus, type LinearWay, linearAtRest, linearSteady, type PullFor } from "./linearMotion.ts";
import { notDriven } from "./notDriven.ts";
import { type SteadySpeed, steadySpeed } from "./steadySpeed.ts";
import { brakedStop, coastingStop, DRIFTING } from "./stopping.ts";
import { NO_PULL } from "./tetherPull.ts";
import { upToSpeed } from "./upToSpeed.ts";
import { axisOf, forcesAt, isDriven, type WayProblem } from "./wayForces.ts";
import { atMostWords, GOING, isAtMost, wayWarnings } from "./wayWarnings.ts";

/** One way with its first-order results, before it becomes a document. */
export interface SolvedWay {
  readonly problem: WayProblem;
  readonly steady: SteadySpeed;
  /** Force at rest on the hull, N. */ readonly force: Linear;
  /** m/s; null where it does not move or its drag is not given. */ readonly speed: Linear | null;
  readonly busAtRest: LinearBus;
  /** Null where there is no speed. */ readonly moving: LinearWay | null;
}

export interface WayQuestion {
  readonly model: PropulsionModel;
  readonly way: MotionWay;
  readonly doubts: VehicleDoubts;
  readonly pullFor: PullFor;
}

/** A way solved to first order; null where no thruster commands it. */
export function solvedWay({ model, way, doubts, pullFor }: WayQuestion): SolvedWay | null {
  if (!model.geometry.held.includes(axisOf(way))) return null;
  const problem: WayProblem = { model, way, pull: pullFor(model.numbers) };
  const steady = model.numbers.drag[way] === null ? standing(problem) : steadySpeed(problem);
  const { force, bus: busAtRest } = linearAtRest(doubts, problem, steady);
  const moving = steady.speed > 0 ? linearSteady(doubts, problem, pullFor, steady) : null;
  return { problem, steady, force, busAtRest, speed: moving?.speed ?? null, moving };
}

/** Without a drag nothing is known but the force at rest. */
function standing(problem: WayProblem): SteadySpeed {
  const atRest = forcesAt(problem, 0);
  return { speed: 0, atRest, atSpeed: atRest, converged: atRest.converged };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** A way that no thruster commands. */
export function notCommanded(way: MotionWay): SteadyMotion {
  return {
    ...{
      way,
      state: "notCommanded",
      sentence: `${capital(GOING[way])} no thruster pushes with the other motions at zero.`,
    },
    ...{ force: null, speed: null, atRest: null, atSpeed: null, drag: null, tether: null, propulsiveEfficiency: null },
    ...{ shares: [], interaction: null, curve: [], upToSpeed: [], stopping: null, warnings: [] },
  };
}

/**
 * The document of a solved way; `opposite` is the way that brakes it, `why` no interval can be stated of its numbers, null
 * where one can.
 */
export function steadyMotion(
  doubts: VehicleDoubts,
  solved: SolvedWay,
  opposite: SolvedWay | null,
  why: string | null,
): SteadyMotion {
  const { problem, steady, busAtRest, moving } = solved;
  const { model, way } = problem;
  const along = axisOf(way) === "surge";
  const tell = (linear: Linear) => toldOf(doubts, linear, why);
  const [force, speed] = [tell(solved.force), solved.speed && tell(solved.speed)];
  const state = model.numbers.drag[way] === null ? "noDrag" : speed === null ? "stands" : "moves";
  const at = speed === null ? null : steady.atSpeed;
  const useful = at === null ? 0 : at.available * steady.speed;
  const warnings = wayWarnings(problem, steady);
  const moves = along && speed !== null;
  return {
    ...{
      way,
      state,
      sentence: sentenceOf(doubts, solved, { force, speed, state, isAtMost: isAtMost(warnings) }),
      force,
      speed,
    },
    atRest: busState(model, steady.atRest.solved, 0, busTold(busAtRest, tell)),
    atSpeed: at && moving && busState(model, at.solved, useful, busTold(moving.bus, tell)),
    ...{ drag: at?.drag ?? null, tether: at?.tether ?? null },
    propulsiveEfficiency: moving && efficiencyOf(doubts, model.numbers, moving, why),
    shares: solved.speed === null || why !== null ? [] : doubtShares(doubts, solved.speed),
    interaction: moves && solved.speed ? interactionOf(doubts, problem, solved.speed, why) : null,
    curve: state === "noDrag" ? [] : curveOf(problem, steady.speed),
    upToSpeed: moves && moving ? upToSpeed({ problem, doubts, moving, atRest: solved.force, why }) : [],
    stopping: moves ? stoppingOf(doubts, solved, opposite, why) : null,
    warnings,
  };
}

const busTold = ({ voltage, current, power }: LinearBus, tell: (linear: Linear) => Told): BusTold => ({
  ...{ voltage: tell(voltage), current: tell(current), power: tell(power) },
});

interface MotionTold {
  readonly force: Told;
  readonly speed: Told | null;
  readonly state: SteadyMotion["state"];
  readonly isAtMost: boolean;
}

function sentenceOf(doubts: VehicleDoubts, solved: SolvedWay, { force, speed, state, isAtMost }: MotionTold): string {
  const { problem, steady } = solved;
  const { way } = problem;
  if (!isDriven(steady.atRest)) return notDriven(doubts, solved, GOING[way]);
  const pull = `${formatBare(force, NEWTON)} at rest`;
  const bare = [speed, force].find((one) => one !== null && !hasInterval(one));
  const end = bare && !hasInterval(bare) ? `; ${noInterval(bare)}.` : ".";
  if (state === "noDrag") return `${capital(GOING[way])} it pushes with ${pull}; its drag that way is not given${end}`;
  if (speed === null && force.value === 0) return `${capital(GOING[way])} its thrusters do not push.`;
  if (speed === null) {
    const { tether, weight } = steady.atRest;
    return `It does not move ${GOING[way]}: it pushes with ${pull}, and ${formatNumber(tether + weight)} N are against it${end}`;
  }
  const told = formatBare(speed, METRE_PER_SECOND);
  return `${capital(GOING[way])} it goes ${atMostWords(told, isAtMost)} through the water and pushes with ${pull}${end}`;
}

const CURVE_POINTS = 16;
/** The curve goes on beyond the steady speed by this. */
const BEYOND = 1.25;

function curveOf(problem: WayProblem, speed: number): SteadyMotion["curve"] {
  const top = BEYOND * (speed > 0 ? speed : 0.5);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    const at = (top * i) / CURVE_POINTS;
    const { available, drag, tether, weight } = forcesAt(problem, at);
    return { speed: at, available, drag, tether: tether + 0, weight };
  });
}

const TETHER_LEFT_OUT = "The pull of the tether is left out: where it drags, the way is shorter.";

/** Way and time to stop, with the speed, the mass and the drag all moved together by each doubt. */
function stoppingOf(
  doubts: VehicleDoubts,
  { problem, speed }: SolvedWay,
  opposite: SolvedWay | null,
  why: string | null,
): Stopping {
  const { model, way } = problem;
  const body = ({ mass, density, drag }: VehicleNumbers) => {
    const { addedMass, dragArea, linear } = drag[way]!;
    return { mass: mass + addedMass, quadratic: 0.5 * density * dragArea, linear };
  };
  const told = (parts: readonly Linear[], of: (values: readonly number[], numbers: VehicleNumbers) => number) =>
    toldOf(doubts, linearFrom(doubts, model.numbers, parts, of), why);
  const isTowing = problem.pull([0, 0, 0]) !== NO_PULL;
  const brake = opposite !== null && opposite.force.value > 0 ? opposite.force : null;
  const coast = (part: "distance" | "time") =>
    told([speed!], ([V], numbers) => coastingStop(body(numbers), V!, DRIFTING)[part]);
  const braked = (part: "distance" | "time") =>
    brake && told([speed!, brake], ([V, F], numbers) => brakedStop(body(numbers), V!, F!)[part]);
  return {
    ...{ coastDistance: coast("distance"), coastTime: coast("time") },
    ...{ brakedDistance: braked("distance"), brakedTime: braked("time") },
    text: `Drifting is told down to a tenth of the speed, as drag alone never stops it. ${brake ? "Braking is with the greatest force at rest the other way; the propellers reverse at once." : "The thrusters can not brake it."}${isTowing ? ` ${TETHER_LEFT_OUT}` : ""}`,
  };
}

import type { SpeedOverTether, TetherLimitPoint } from "../../model/vehicle/speedOverTether.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { InputProblem, sentence } from "../../quantity/problem.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { toldOf } from "../propulsion/firstOrder.ts";
import { linearSpeed } from "./linearMotion.ts";
import { overTetherSentence } from "./overTetherWords.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { steadySpeed } from "./steadySpeed.ts";
import { type TetherBook, tetherBook } from "./tetherBook.ts";
import { NO_PULL } from "./tetherPull.ts";

/** What the speed over the length of the tether is worked out from. */
export interface TetherLimitQuestion {
  readonly vehicle: Vehicle;
  readonly doubts: VehicleDoubts;
  readonly ahead: SolvedWay;
  /** The tether at the length of the scenario. */ readonly tether: TetherBook;
  /** Why no interval can be stated; null: it can. */ readonly why: string | null;
}

/** Lengths that are told besides those of scenario and requirement. */
const LENGTHS = 6;
/** The shortest is this many times the straight distance between the ends, where a tether is all but taut. */
const SHORTEST = 1.02;
const ASSUMPTION =
  "The upper end stays where the scenario holds it, so that a longer tether is a slacker one; current and depth are those of the scenario.";

/**
 * Greatest steady speed ahead for lengths of tether paid out; null where the vehicle has no tether.
 *
 *   F(V) (1 − t) = ½ ρ C_D A V² + a V + F_t(V, L)
 *
 * Source   as `steadySpeed` and `tetherModel`; doubts as `linearSpeed`.
 * Assumes  the upper end keeps its place, so a longer tether is a slacker one.
 * Range    from all but taut to twice the longest that is asked about; a length that does not reach has a reason and no
 *          speed.
 */
export function speedOverTether(question: TetherLimitQuestion): SpeedOverTether | null {
  const { vehicle, ahead } = question;
  const { numbers } = ahead.problem.model;
  if (vehicle.tether === undefined || numbers.drag.ahead === null) return null;
  const { depth, tetherOffset, tetherLength } = vehicle.scenario;
  const { requirement } = vehicle;
  const straight = Math.hypot(depth, tetherOffset);
  const asked = requirement?.tetherLength ?? 0;
  const lengths = lengthsOf(straight, [tetherLength, asked]);
  const curve = solvedCurve(question, lengths);
  const points = curve.map(({ point }) => point);
  const pointAt = (length: number) => points.find((one) => one.length === length)!;
  const needed = requirement?.speed === undefined ? null : requirement.speed + requirement.againstCurrent;
  const told = {
    without: withoutTether(question),
    straight,
    points,
    scenario: tetherLength > 0 ? pointAt(tetherLength) : null,
    requirement:
      asked > 0
        ? { at: pointAt(asked), needed, greatestLength: needed === null ? null : lengthFor(points, needed) }
        : null,
  };
  const converged = curve.every((one) => one.converged);
  const currents = { told: numbers.currentSpeed, asked: requirement?.againstCurrent ?? 0 };
  return { sentence: overTetherSentence(told, currents), ...told, assumption: ASSUMPTION, converged };
}

/** From all but taut to twice the greatest that is asked about, m. */
function lengthsOf(straight: number, marks: readonly number[]): number[] {
  const longest = 2 * Math.max(straight, ...marks, 1);
  const shortest = straight > 0 ? SHORTEST * straight : longest / LENGTHS;
  const even = Array.from({ length: LENGTHS }, (_, i) => shortest * (longest / shortest) ** (i / (LENGTHS - 1)));
  return [...new Set([...even, ...marks.filter((one) => one > 0)])].sort((a, b) => a - b);
}

function withoutTether({ doubts, ahead: { problem }, why }: TetherLimitQuestion): SpeedOverTether["without"] {
  const free = { ...problem, pull: () => NO_PULL };
  const steady = steadySpeed(free);
  return steady.speed > 0
    ? toldOf(
        doubts,
        linearSpeed(doubts, free, () => () => NO_PULL, steady),
        why,
      )
    : null;
}

function solvedCurve(question: TetherLimitQuestion, lengths: readonly number[]): Solved[] {
  let near: number | null = question.ahead.steady.speed || null;
  return lengths.map((length) => {
    const solved = solvedAt(question, length, near);
    near = solved.point.speed?.value ?? near;
    return solved;
  });
}

interface Solved {
  readonly point: TetherLimitPoint;
  readonly converged: boolean;
}

function solvedAt(
  { vehicle, doubts, ahead: { problem }, tether, why }: TetherLimitQuestion,
  length: number,
  near: number | null,
): Solved {
  const { numbers } = problem.model;
  const none = (reason: string, converged = true): Solved => ({
    point: { length, speed: null, resistance: null, reason },
    converged,
  });
  try {
    const { pullFor } = length === vehicle.scenario.tetherLength ? tether : tetherBook(vehicle, numbers, length);
    const towing = { ...problem, pull: pullFor(numbers) };
    const steady = steadySpeed(towing, near);
    if (!steady.converged)
      return none("No shape of the tether was found for which it is held where it must be.", false);
    if (!(steady.speed > 0)) return none("The thrust does not move it ahead with this tether.");
    const speed = toldOf(doubts, linearSpeed(doubts, towing, pullFor, steady), why);
    return { point: { length, speed, resistance: steady.atSpeed.tether, reason: null }, converged: true };
  } catch (error) {
    if (error instanceof InputProblem && error.problem.code === "vehicle.tether-too-short")
      return none(sentence(error.problem));
    throw error;
  }
}

/** Greatest length at which a speed is reached, by a monotone curve between the lengths that are told; null: not among them. */
function lengthFor(points: readonly TetherLimitPoint[], needed: number): number | null {
  const moving = points.filter(({ speed }) => speed !== null);
  const reached = moving.findLastIndex(({ speed }) => speed!.value >= needed);
  if (reached < 0 || reached === moving.length - 1) return null;
  const at = monotoneCubic(
    moving.map(({ length }) => length),
    moving.map(({ speed }) => speed!.value),
  );
  const [low, high] = [moving[reached]!.length, moving[reached + 1]!.length];
  return bracketedRoot((length) => at(length) - needed, low, high, { relativeTolerance: 1e-9 }).root;
}

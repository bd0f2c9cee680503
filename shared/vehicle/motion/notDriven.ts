import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import { formatTold } from "../../quantity/told.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { linearFrom, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import { limitingPart } from "../propulsion/limitingPart.ts";
import { NEWTON } from "../tether/shownUnits.ts";
import { linearAtRest } from "./linearMotion.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { sized } from "./trim.ts";
import { axisOf, forcesAt, isDriven, netWeight, type WayProblem } from "./wayForces.ts";

/** Rounding of a force, as a part of what is held. */
const ROUNDING = 1e-9;

/**
 * Why no thrust is left to go one way (`words`) with: the supply, the tether across the way, or the net weight, which is
 * laid beside the greatest thrust that the bus lets the thrusters make against it.
 */
export function notDriven(
  doubts: VehicleDoubts,
  { problem, steady: { atRest } }: Pick<SolvedWay, "problem" | "steady">,
  words: string,
): string {
  const { model, way, pull } = problem;
  const first = `It can not be driven ${words}:`;
  const [, , z] = pull([0, 0, 0]).force;
  const down = axisOf(way) === "heave" ? 0 : z + netWeight(model);
  const weight = down === 0 ? null : tooHeavy(doubts, problem, down);
  if (weight !== null) {
    const because = limitingPart(model, atRest.solved);
    return `${first} ${weight} ${because.part === "propeller" ? because.text : "Trim it first."}`;
  }
  if (atRest.solved.outcome === "collapsed") return `${first} the supply can not even feed what must run besides.`;
  const across = down === 0 ? "the pull of the tether across the way" : "its depth and the pull of the tether at once";
  return `${first} its thrusters can not hold ${across}.`;
}

/** What pulls it up or down (N, downwards) beside the most that holds against it; null where it is held, or nothing is fed. */
function tooHeavy(doubts: VehicleDoubts, { model, pull }: WayProblem, down: number): string | null {
  const against: MotionWay = down > 0 ? "up" : "down";
  const problem: WayProblem = { model, way: against, pull };
  const atRest = forcesAt(problem, 0);
  if (!isDriven(atRest) || atRest.available >= Math.abs(down) * (1 - ROUNDING)) return null;
  const steady = { speed: 0, atRest, atSpeed: atRest, converged: atRest.converged };
  const most = formatTold(toldOf(doubts, linearAtRest(doubts, problem, steady).force), NEWTON);
  const held = linearFrom(doubts, model.numbers, [], (_, numbers) => down - netWeight(model) + netWeight({ numbers }));
  const told = formatTold(sized(uncertainOf(doubts, held)), NEWTON);
  const goes = down > 0 ? "sinks" : "floats up";
  const upwards = down > 0 ? "upwards" : "downwards";
  return `it ${goes} with ${told}, more than the ${most} that its thrusters can push ${upwards} with the other motions at zero.`;
}

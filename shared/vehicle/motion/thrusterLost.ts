import type { VerticalAnswer } from "../../model/vehicle/motionAnswer.ts";
import { formatNumber } from "../../quantity/format.ts";
import { formatTold } from "../../quantity/told.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { NEWTON } from "../tether/shownUnits.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { sized } from "./trim.ts";
import type { VerticalQuestion } from "./vertical.ts";
import { forcesAt, isDriven } from "./wayForces.ts";

/** Rounding of a force, as a part of what it was. */
const ROUNDING = 1e-9;

/** What is left on the hull when one thruster makes nothing, and whether that holds the depth against `held`, N downwards. */
export function thrusterLosses(
  { model, ahead, up, down }: Pick<VerticalQuestion, "model" | "ahead" | "up" | "down">,
  held: Uncertain,
): VerticalAnswer["losses"] {
  const against = held.value > 0 ? up : down;
  const left = (solved: SolvedWay | null, lost: number) => {
    if (solved === null) return 0;
    const holding = forcesAt({ ...solved.problem, lost }, 0);
    // What can not hold its depth any more can still go ahead, on its way up or down.
    const force = (isDriven(holding) ? holding : forcesAt({ ...solved.problem, lost, adrift: true }, 0)).available;
    return force > ROUNDING * solved.steady.atRest.available ? force : 0;
  };
  return model.thrusters.map(({ name }, i) => {
    const [upForce, aheadForce] = [left(up, i), left(ahead, i)];
    const holdsDepth = held.value === 0 || left(against, i) >= Math.abs(held.value);
    const percent = (force: number, solved: SolvedWay | null) =>
      `${formatNumber((100 * force) / (solved?.steady.atRest.available || 1), 2)} %`;
    const parts = [
      ...(ahead
        ? [aheadForce === 0 ? "no force ahead is left" : `${percent(aheadForce, ahead)} of the force ahead is left`]
        : []),
      ...(up
        ? [upForce === 0 ? "none upwards with the other motions at zero" : `${percent(upForce, up)} upwards`]
        : []),
    ].join(", ");
    const goes = `${held.value > 0 ? "sinks" : "floats up"} with ${formatTold(sized(held), NEWTON)}`;
    const depth = holdsDepth ? "" : `; it can not hold its depth and ${goes}`;
    return {
      thruster: name,
      up: upForce,
      ahead: aheadForce,
      holdsDepth,
      sentence: `Without ${name} ${parts || "nothing is lost"}${depth}.`,
    };
  });
}

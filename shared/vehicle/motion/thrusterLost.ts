import type { VerticalAnswer } from "../../model/vehicle/motionAnswer.ts";
import { normalProbability } from "../../numeric/normalProbability.ts";
import { certaintyInWords } from "../../quantity/certaintyInWords.ts";
import { formatNumber, formatQuantity } from "../../quantity/format.ts";
import { formatTold } from "../../quantity/told.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { spreadOfLinear } from "../propulsion/firstOrder.ts";
import { NEWTON } from "../tether/shownUnits.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { sized } from "./trim.ts";
import type { VerticalQuestion } from "./vertical.ts";
import { forcesAt, isDriven } from "./wayForces.ts";

/** Rounding of a force, as a part of what it was. */
const ROUNDING = 1e-9;

/** Probability from which it is sure that the depth is held: the upper end of a 95 % interval. */
const SURE = 0.975;

/**
 * What is left on the hull when one thruster makes nothing, and whether that holds the depth against `held`, N downwards.
 *
 *   p = Φ((s F − |W|)/√(s² u²(F) + u²(W)));   s the share of the force F that is left
 *
 * Source   JCGM 106:2012, 7.2.
 * Assumes  that the share which is left has no doubt of its own: force before and after go with the same inputs.
 */
export function thrusterLosses(
  { model, doubts, ahead, up, down }: Pick<VerticalQuestion, "model" | "doubts" | "ahead" | "up" | "down">,
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
    const reserve = left(against, i) - Math.abs(held.value);
    const holdsDepth = held.value === 0 || reserve >= 0;
    const share = against === null ? 0 : (reserve + Math.abs(held.value)) / (against.force.value || 1);
    const spread = against === null ? 0 : share * spreadOfLinear(doubts, against.force);
    const doubt = Math.hypot(spread, held.standardUncertainty);
    const sure = held.value === 0 || doubt === 0 ? 1 : normalProbability(Math.abs(reserve) / doubt);
    const bySure = sure < SURE ? `, ${certaintyInWords(sure)} sure` : "";
    const parts = [
      ...(ahead
        ? [
            aheadForce === 0
              ? "no force ahead is left"
              : `${shareWords(aheadForce, ahead, "the force ahead")} is left within the bus current`,
          ]
        : []),
      ...(up
        ? [upForce === 0 ? "none upwards with the other motions at zero" : `${shareWords(upForce, up)} upwards`]
        : []),
    ].join(", ");
    const goes = `${held.value > 0 ? "sinks" : "floats up"} with ${formatTold(sized(held), NEWTON)}`;
    const depth = holdsDepth
      ? bySure && `; it holds its depth by the best estimate${bySure}`
      : `; it can not hold its depth${bySure && `${bySure},`} and ${goes}`;
    return {
      thruster: name,
      up: upForce,
      ahead: aheadForce,
      holdsDepth,
      sentence: `Without ${name} ${parts || "nothing is lost"}${depth}.`,
    };
  });
}

/** A force (N) as a share of what all thrusters make; as itself where that is nothing while the depth is held. */
function shareWords(force: number, { steady: { atRest } }: SolvedWay, of = ""): string {
  const whole = atRest.available;
  if (!(whole > 0)) return `${formatQuantity(force, NEWTON, 2)}${of === "" ? "" : ` of ${of}`}`;
  return `${formatNumber((100 * force) / whole, 2)} %${of === "" ? "" : ` of ${of}`}`;
}

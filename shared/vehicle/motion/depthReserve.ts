import { normalProbability } from "../../numeric/normalProbability.ts";
import { certaintyInWords } from "../../quantity/certaintyInWords.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { linearFrom, spreadOfLinear } from "../propulsion/firstOrder.ts";
import type { VerticalQuestion } from "./vertical.ts";
import { isDriven, netWeight } from "./wayForces.ts";

/** Part of the vertical thrust from which holding the depth leaves too little to count on; common practice, no source. */
const MOST = 0.9;
/** Standard uncertainties that the reserve must have. */
const COVERAGE = 2;

/**
 * What must be known where holding the depth takes all but all of the vertical thrust: the other motions have what is left
 * over, and a little more weight or less voltage takes it.
 *
 *   r = F_max − |W + F_t|,   p = Φ(r/u(r));   F_t the pull of the tether at rest, downwards
 *
 * Source   first order, as `linearFrom`; JCGM 106:2012, 7.2 for the probability.
 */
export function reserveWarnings({
  model,
  doubts,
  up,
  down,
}: Pick<VerticalQuestion, "model" | "doubts" | "up" | "down">): Warning[] {
  const pull = (up ?? down)?.problem.pull([0, 0, 0]).force[2] ?? 0;
  const sinking = netWeight(model) + pull;
  const against = sinking > 0 ? up : down;
  if (sinking === 0 || against === null || !isDriven(against.steady.atRest)) return [];
  const reserve = linearFrom(
    doubts,
    model.numbers,
    [against.force],
    ([force], numbers) => force! - Math.abs(netWeight({ numbers }) + pull),
  );
  const spread = spreadOfLinear(doubts, reserve);
  const taken = Math.abs(sinking) / against.force.value;
  if (reserve.value < 0 || (taken < MOST && reserve.value >= COVERAGE * spread)) return [];
  const sure = spread > 0 ? `, ${certaintyInWords(normalProbability(reserve.value / spread))} sure` : "";
  return [
    warning({
      code: "vehicle.little-reserve",
      where: "netBuoyancy",
      found: `Holding its depth takes ${formatNumber(100 * taken)} % of the vertical thrust and leaves ${formatNumber(reserve.value)} N${sure}. What is told of the other motions holds only while that lasts: a little more net force or less voltage stops them all`,
      needed: `at most ${formatNumber(100 * MOST)} %, and a reserve of ${COVERAGE} standard uncertainties`,
      mend: "Trim it, or take thrusters that push more",
    }),
  ];
}

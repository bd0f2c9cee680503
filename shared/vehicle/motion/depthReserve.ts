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

/** What holding the depth leaves of the vertical thrust. */
export interface DepthReserve {
  /** Part of the vertical thrust that it takes. */ readonly taken: number;
  /** N; negative: the depth is not held. */ readonly value: number;
  /** Its standard uncertainty, N. */ readonly spread: number;
}

/**
 * What holding the depth leaves of the vertical thrust; null where nothing is to be held, or no thruster pushes against it.
 *
 *   r = F_max − |W + F_t|;   F_t the pull of the tether at rest, downwards
 *
 * Source   first order, as `linearFrom`.
 */
export function depthReserve({
  model,
  doubts,
  up,
  down,
}: Pick<VerticalQuestion, "model" | "doubts" | "up" | "down">): DepthReserve | null {
  const pull = (up ?? down)?.problem.pull([0, 0, 0]).force[2] ?? 0;
  const sinking = netWeight(model) + pull;
  const against = sinking > 0 ? up : down;
  if (sinking === 0 || against === null || !isDriven(against.steady.atRest)) return null;
  const reserve = linearFrom(
    doubts,
    model.numbers,
    [against.force],
    ([force], numbers) => force! - Math.abs(netWeight({ numbers }) + pull),
  );
  const taken = Math.abs(sinking) / against.force.value;
  return { taken, value: reserve.value, spread: spreadOfLinear(doubts, reserve) };
}

/**
 * Why no interval can be stated of the motions that go on while the depth is held; null where one can. They have what is
 * left over: as long as the doubt may take all of it, they do not change straight with the inputs, they end.
 */
export function noIntervalAside(reserve: DepthReserve | null): string | null {
  return reserve !== null && Math.abs(reserve.value) < COVERAGE * reserve.spread ? "its depth is hardly held" : null;
}

/**
 * What must be known where holding the depth takes all but all of the vertical thrust: the other motions have what is left
 * over, and a little more weight or less voltage takes it.
 *
 *   p = Φ(r/u(r))
 *
 * Source   JCGM 106:2012, 7.2.
 */
export function reserveWarnings(reserve: DepthReserve | null): Warning[] {
  if (reserve === null) return [];
  const { taken, value, spread } = reserve;
  if (value < 0 || (taken < MOST && value >= COVERAGE * spread)) return [];
  const sure = spread > 0 ? `, ${certaintyInWords(normalProbability(value / spread))} sure` : "";
  return [
    warning({
      code: "vehicle.little-reserve",
      where: "netBuoyancy",
      found: `Holding its depth takes ${formatNumber(100 * taken)} % of the vertical thrust and leaves ${formatNumber(value)} N${sure}. What is told of the other motions holds only while that lasts: a little more net force or less voltage stops them all`,
      needed: `at most ${formatNumber(100 * MOST)} %, and a reserve of ${COVERAGE} standard uncertainties`,
      mend: "Trim it, or take thrusters that push more",
    }),
  ];
}

import { DRAWS, monteCarloOfRun } from "../../shared/bench/monteCarloOfRun.ts";
import { type RunRequest, runFactsOf } from "../../shared/bench/reduceRun.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import { formatInterval, formatNumber } from "../../shared/quantity/format.ts";
import type { Option, Words } from "./options.ts";

export const MONTE_CARLO_OPTIONS = {
  "monte-carlo": {
    value: "COUNT",
    text: `check the intervals by so many draws of all inputs, e.g. ${DRAWS.usual}; at least ${DRAWS.fewest}`,
  },
  seed: { value: "COUNT", text: "start of the draws; the same gives the same numbers (default 1)" },
} as const satisfies Record<string, Option>;

/** The check that --monte-carlo asks for, under the key it has in the result; nothing where it is not asked for. */
export function monteCarloOf(request: RunRequest, words: Words): { readonly monteCarlo?: MonteCarlo } {
  const draws = words.whole("monte-carlo", DRAWS.fewest);
  if (draws === undefined) return {};
  const work = monteCarloOfRun(runFactsOf(request), { draws, seed: words.whole("seed", 0) ?? 1 });
  for (;;) {
    const step = work.next();
    if (step.done) return { monteCarlo: step.value };
  }
}

const NAMES = { thrustCoefficient: "K_T", powerCoefficient: "C_P", staticMerit: "static merit" } as const;

/** One line for each coefficient that was checked. */
export function monteCarloLines({ draws, seed, results }: MonteCarlo): string[] {
  return results.map(({ quantity, interval95, firstOrder95, agrees, difference, tolerance }) => {
    const verdict = agrees ? "agrees" : "does not agree";
    return `Monte Carlo, ${draws} draws, seed ${seed}: ${NAMES[quantity]} ${formatInterval(interval95)} at 95 %; ${verdict} with ${formatInterval(firstOrder95)} (ends differ by ${formatNumber(difference, 2)}, tolerance ${formatNumber(tolerance, 1)})`;
  });
}

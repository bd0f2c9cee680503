import { twoSidedPValue } from "../../numeric/studentT.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { type JudgedPlateau, plateauName } from "../judgedPlateau.ts";
import type { RunFacts } from "../runFacts.ts";

/** Chance of one plateau so far off in the whole run below which it is named. */
const TOO_RARE = 0.05;
/** Part of itself that a plateau must leave free for its distance from the line to say anything. */
const LEAST_FREEDOM = 1e-3;

/**
 * Plateaus that do not belong to the line the others make; named, never left out.
 *
 * The distance of each is judged by the scatter of the others (studentised deleted residual), but never by less than
 * their own doubts, and by Bonferroni's rule for as many plateaus.
 * Source   Belsley, Kuh & Welsch, Regression Diagnostics (1980), ch. 2.
 */
export function outlierChecks({ used, thrust: { fit } }: RunFacts): Warning[] {
  const count = used.length;
  if (count < 4) return [];
  return used.flatMap((plateau, i) => {
    const leverage = fit.influences[i]! * plateau.thrustPoint.x;
    const residual = fit.residuals[i]!;
    // A plateau that carries the whole line lies on it wherever it is.
    if (1 - leverage < LEAST_FREEDOM) return [];
    const others = Math.max(0, fit.chiSquared - residual ** 2 / (1 - leverage)) / (count - 2);
    const t = residual / Math.sqrt(Math.max(1, others) * (1 - leverage));
    return twoSidedPValue(t, count - 2) * count < TOO_RARE ? [named(plateau, fit.coefficient, t)] : [];
  });
}

function named(plateau: JudgedPlateau, K: number, t: number): Warning {
  const { x, y } = plateau.thrustPoint;
  return warning({
    code: "bench.outlier",
    where: plateauName(plateau),
    found: `${formatNumber(y)} N lies ${formatPercent(Math.abs(y / (K * x) - 1))} ${y > K * x ? "above" : "below"} the fit, ${formatNumber(Math.abs(t), 2)} standard deviations of the others`,
    needed: "",
    mend: "It still counts. If you know what went wrong there, leave it out with the reason",
  });
}

import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { type PowerMisfit, powerMisfit } from "../misfit.ts";
import type { RunFacts } from "../runFacts.ts";

/** Does shaft power grow with the cube of the rotation rate, so that one C_P holds? The twin of `lawChecks`. */
export function powerLawChecks(facts: RunFacts): Warning[] {
  const misfit = powerMisfit(facts);
  if (misfit === null || misfit.kind === "none" || facts.power === null) return [];
  const trend = misfit.kind === "trend";
  return [
    warning({
      code: trend ? "bench.power-exponent" : "bench.power-scatter",
      where: "power fit",
      found: trend
        ? `${powerTrendInWords(misfit)}; one C_P is then a mean over the range that holds at none of its speeds`
        : `the plateaus scatter by ${formatPercent(misfit.scatter)} about the power fit, ${formatNumber(facts.power.fit.scatterRatio, 2)} times more than their readings explain; the uncertainty was widened by that factor`,
      needed: trend
        ? "the same C_P at all speeds: power that grows with the cube of the rotation rate"
        : "scatter that the readings explain",
      mend: powerMisfitMend(misfit, facts),
    }),
  ];
}

/** "C_P falls from 0.429 at 900 rpm to 0.254 at 2501 rpm, by 41 %". */
export function powerTrendInWords({ slowest, fastest, atSlowest, atFastest, change }: PowerMisfit): string {
  const rpm = ({ measured }: PowerMisfit["slowest"]) => `${formatNumber(60 * measured.rotationRate.mean)}\u202frpm`;
  const ends = `from ${formatNumber(atSlowest)} at ${rpm(slowest)} to ${formatNumber(atFastest)} at ${rpm(fastest)}`;
  return `C_P ${change > 0 ? "rises" : "falls"} ${ends}, by ${formatPercent(Math.abs(change))}`;
}

/**
 * Likely causes, and what to do. A power that is too great by the same torque at all speeds, as by no-load current, offset
 * or friction, adds to C_P as 1/n²; the loss in the winding grows faster than the power of the propeller.
 */
export function powerMisfitMend({ kind, change }: PowerMisfit, { powerSource }: RunFacts): string {
  const byMotor = powerSource === "motorConstants";
  if (kind === "scatter") {
    return byMotor
      ? "Look for a trend in the residuals of the power fit: friction that comes and goes, a motor that heats, or a current meter that jumps; measure again, up and down through the steps"
      : "Look for a trend in the residuals of the power fit: friction that comes and goes, or a torque cell whose zero moves; log a rest between the steps too";
  }
  if (!byMotor) {
    return `Likely: a zero of the torque cell that is off, ${change < 0 ? "friction of bearing or seal, or low Reynolds numbers at the slow end" : "blades that bend, or air drawn in or walls at the fast end"}. Compare the torque at rest before and after the run, and turn the shaft without propeller`;
  }
  const causes =
    change < 0
      ? "no-load current stated too small, a current meter that reads too much by the same amount all along, or friction of bearing or seal"
      : "no-load current or winding resistance stated wrong, a current meter that reads too little by the same amount all along, or a motor that heats";
  return `Likely: constants that are not this motor's: ${causes}; a wrong speed constant K_v moves C_P at all speeds. Identify the motor from runs of its own and take these constants, and check what the current meter shows at rest`;
}

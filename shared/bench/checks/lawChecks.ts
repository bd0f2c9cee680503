import { chiSquareUpperTail } from "../../numeric/chiSquare.ts";
import { formatNumber, formatPercent, formatUncertain } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { thrustTrend } from "../misfit.ts";
import type { RunFacts } from "../runFacts.ts";
import { unseenZero } from "../unseenZero.ts";

/** Departures smaller than this part of the thrust do not matter to anyone who builds a vehicle. */
const RELEVANT = 0.02;
/** Chance of so much scatter below which it is told. */
const TOO_RARE = 0.01;
/** Widening from which on it is told. */
const TELLING_WIDENING = 1.5;

/** Does thrust grow with the square of the rotation rate, from zero, within the doubts? */
export function lawChecks(facts: RunFacts): Warning[] {
  return [exponentCheck(facts), interceptCheck(facts), scatterCheck(facts)].filter((found) => found !== null);
}

function exponentCheck(facts: RunFacts): Warning | null {
  const change = thrustTrend(facts);
  if (change === null) return null;
  const { exponent } = facts.law!.ifZeroStood;
  return warning({
    code: "bench.exponent",
    where: "thrust fit",
    found: `thrust grows with the power ${formatUncertain(exponent)} of the rotation rate: the thrust coefficient ${change > 0 ? "rises" : "falls"} by ${formatPercent(Math.abs(change))} from the slowest to the fastest plateau`,
    needed: "the power 2, as far as the blade Reynolds number changes nothing",
    mend: "Likely: a tare that is off, a pivot that rubs, ventilation or walls at high thrust, blades that bend, or low Reynolds numbers at the slow end; one coefficient is then a mean over the range",
  });
}

function interceptCheck({ law, used }: RunFacts): Warning | null {
  if (law === null) return null;
  const { intercept } = law.ifZeroStood;
  const [low, high] = intercept.interval95;
  const greatest = Math.max(...used.map(({ thrustPoint }) => Math.abs(thrustPoint.y)));
  if ((low <= 0 && high >= 0) || Math.abs(intercept.value) < RELEVANT * greatest) return null;
  return warning({
    code: "bench.intercept",
    where: "thrust fit",
    found: `a line through the plateaus meets zero speed at ${formatUncertain(intercept, { symbol: "N", factor: 1 })}, ${formatNumber((100 * Math.abs(intercept.value)) / greatest, 2)} % of the greatest thrust`,
    needed: "0 N: a propeller at rest does not push",
    mend: "Likely: a tare that is off, or a pivot that sticks; compare the rest before with the rest after the run",
  });
}

function scatterCheck({ thrust: { fit }, used, singleReadings, law }: RunFacts): Warning | null {
  if (law === null) return null;
  const degreesOfFreedom = used.length - 1;
  if (singleReadings || degreesOfFreedom < 1 || fit.scatterRatio < TELLING_WIDENING) return null;
  if (chiSquareUpperTail(fit.chiSquared, degreesOfFreedom) > TOO_RARE) return null;
  const unseen = unseenZero(
    used.map(({ thrustPoint }) => thrustPoint),
    fit,
  );
  const relative = used.map(({ thrustPoint: { x, y } }) => y / (fit.coefficient * x) - 1);
  const spread = Math.sqrt(relative.reduce((sum, value) => sum + value * value, 0) / degreesOfFreedom);
  return warning({
    code: "bench.scatter",
    where: "thrust fit",
    found: `the plateaus scatter by ${formatPercent(spread)} about the fit, ${formatNumber(fit.scatterRatio, 2)} times more than their readings explain; the uncertainty was widened by that factor`,
    needed: "scatter that the readings explain",
    mend: unseen
      ? `A zero that is off by ${formatNumber(Math.abs(unseen.zero), 2)} N during the run would explain most of it, and the uncertainties of K_T, exponent and intercept allow for that: log a rest between the steps too, so that a zero that wanders out and back is seen`
      : "Look for a trend in the residuals: friction in the pivot, heating, a tank that starts to circulate, or a coefficient that changes with speed",
  });
}

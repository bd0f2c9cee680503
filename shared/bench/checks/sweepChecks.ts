import { combined } from "../../numeric/combined.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { fitThroughOrigin, weighingUncertainty, withoutSpread } from "../coefficientFit.ts";
import { type JudgedPlateau, plateauName } from "../judgedPlateau.ts";
import type { RunFacts } from "../runFacts.ts";

/** Changes of the rotation rate from plateau to plateau below this part are not a climb. */
const SAME_RATE = 0.02;
/** Chance below which a difference between the ways up and down is told, and the part of the coefficient it must reach. */
const TOO_RARE = 0.01;
const RELEVANT = 0.005;

/** Thrust that falls as the propeller speeds up, and a way up that differs from the way down. */
export function sweepChecks(facts: RunFacts): Warning[] {
  return [thrustFalls(facts), upAgainstDown(facts)].filter((found) => found !== null);
}

function thrustFalls({ used, thrust }: RunFacts): Warning | null {
  const sign = Math.sign(thrust.fit.coefficient);
  const byRate = used.toSorted((a, b) => a.measured.rotationRate.mean - b.measured.rotationRate.mean);
  for (let i = 1; i < byRate.length; i++) {
    const [slow, fast] = [byRate[i - 1]!, byRate[i]!];
    const faster = fast.measured.rotationRate.mean > (1 + SAME_RATE) * slow.measured.rotationRate.mean;
    const doubt = Math.hypot(weighingUncertainty(slow.thrustPoint), weighingUncertainty(fast.thrustPoint));
    if (faster && sign * (slow.thrustPoint.y - fast.thrustPoint.y) > 3 * doubt) return fallTold(slow, fast);
  }
  return null;
}

function fallTold(slow: JudgedPlateau, fast: JudgedPlateau): Warning {
  const state = ({ measured: { thrust, rotationRate } }: JudgedPlateau) =>
    `${formatNumber(thrust.mean)} N at ${formatNumber(rotationRate.mean * 60)} rpm`;
  return warning({
    code: "bench.thrust-falls",
    where: plateauName(fast),
    found: `thrust falls as the propeller speeds up: ${state(slow)}, ${state(fast)}`,
    needed: "more thrust at more rotation rate",
    mend: "Likely: air drawn down from the surface (ventilation), cavitation, a blade or hub that slips, or a load cell at its end stop",
  });
}

/** Reduces the climbing and the falling part of the run each for itself. */
function upAgainstDown({ used, singleReadings, thrust }: RunFacts): Warning | null {
  const rates = used.map(({ measured }) => measured.rotationRate.mean);
  const up = used.filter((_, i) => isPartOf(rates, i, 1));
  const down = used.filter((_, i) => isPartOf(rates, i, -1));
  if (up.length < 2 || down.length < 2) return null;
  const [upFit, downFit] = [up, down].map((part) =>
    fitThroughOrigin(
      part.map((p) => withoutSpread(p.thrustPoint)),
      singleReadings,
    ),
  );
  const difference = upFit!.coefficient - downFit!.coefficient;
  const doubts = [upFit!, downFit!].map((fit) => ({
    standardUncertainty: fit.independent,
    degreesOfFreedom: fit.degreesOfFreedom,
  }));
  const { standardUncertainty, degreesOfFreedom } = combined(doubts);
  const t = difference / standardUncertainty;
  const part = difference / thrust.fit.coefficient;
  if (twoSidedPValue(t, Math.min(1e6, degreesOfFreedom)) > TOO_RARE || Math.abs(part) < RELEVANT) return null;
  return warning({
    code: "bench.up-down",
    where: "thrust fit",
    found: `the way up gives a thrust coefficient of ${formatNumber(upFit!.coefficient, 4)} (${up.length} plateaus), the way down ${formatNumber(downFit!.coefficient, 4)} (${down.length}): ${formatPercent(Math.abs(part))} ${part > 0 ? "less" : "more"} on the way down`,
    needed: "the same both ways",
    mend: "Likely: friction in the pivot, a scale that creeps, heating, or water that was set moving; the mean of both is fitted",
  });
}

/** Whether plateau `i` was reached by a step of this direction, or, being the first, is left by one. */
function isPartOf(rates: readonly number[], i: number, direction: 1 | -1): boolean {
  const [from, to] = i === 0 ? [rates[0]!, rates[1] ?? rates[0]!] : [rates[i - 1]!, rates[i]!];
  return direction * (to / from - 1) > SAME_RATE;
}

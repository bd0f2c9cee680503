import type { AdvanceFit } from "../../model/advance.ts";
import type { ReverseFit } from "../../model/reduction.ts";
import { chiSquareUpperTail } from "../../numeric/chiSquare.ts";
import { formatNumber, formatUncertain } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { RunFacts } from "../runFacts.ts";

/** Chance of so much scatter below which it is told, and widening from which on. */
const TOO_RARE = 0.01;
const TELLING_WIDENING = 1.5;

/** What a reader should know of the curves against the advance ratio, and of plateaus that turn astern. */
export function advanceChecks({ advance, reverse, recipe, channels, singleReadings }: RunFacts): Warning[] {
  const ofCurves = advance
    ? [
        continued(advance),
        fewPoints(advance),
        scatter(advance, singleReadings),
        noSpeedUncertainty(advance, (channels.advanceSpeed ?? recipe.advanceSpeeds)?.relativeUncertainty ?? 0),
        zeroBeyond(advance),
        notConverged(advance),
      ]
    : [];
  return [...ofCurves, reverse && astern(reverse)].filter((found) => found !== null);
}

function continued({ bollard, range: [low, high], samples }: AdvanceFit): Warning | null {
  if (bollard === "plateaus") return null;
  const atRest = samples.find(({ advanceRatio }) => advanceRatio === 0)?.thrustCoefficient;
  return warning({
    code: "bench.bollard-continued",
    where: "thrust coefficient",
    found: `no plateau is at rest in the water: the thrust coefficient ${atRest ? `${formatUncertain(atRest)} ` : ""}at bollard is the curve of advance ratios ${formatNumber(low)} to ${formatNumber(high)} continued to 0`,
    needed: "a plateau with the propeller at rest in the water",
    mend: "Add a bollard step to the run: how a curve goes on beyond its points is a matter of its order",
  });
}

function fewPoints({ thrustCurve: { orderFrom, points } }: AdvanceFit): Warning | null {
  if (orderFrom !== "fewPoints") return null;
  return warning({
    code: "bench.advance-few-points",
    where: "curve of the thrust coefficient",
    found: `${points} plateaus make a straight line and no more`,
    needed: "six plateaus or more at different advance ratios: thrust and power bend with the advance ratio",
    mend: "",
  });
}

function scatter({ thrustCurve }: AdvanceFit, singleReadings: boolean): Warning | null {
  const { chiSquared, degreesOfFreedom, scatterRatio, order } = thrustCurve;
  if (singleReadings || degreesOfFreedom < 1 || scatterRatio < TELLING_WIDENING) return null;
  if (chiSquareUpperTail(chiSquared, degreesOfFreedom) > TOO_RARE) return null;
  return warning({
    code: "bench.advance-scatter",
    where: "curve of the thrust coefficient",
    found: `the plateaus scatter ${formatNumber(scatterRatio, 2)} times more about the curve of order ${order} than their readings explain; the uncertainty was widened by that factor`,
    needed: "scatter that the readings explain",
    mend: "Likely: a speed that wanders during the plateau, waves left over from the run before, different rotation rates at low Reynolds numbers, or an order that is too low",
  });
}

function noSpeedUncertainty({ speedFrom }: AdvanceFit, relative: number): Warning | null {
  if (relative > 0) return null;
  return warning({
    code: "bench.no-speed-uncertainty",
    where: "advance speed",
    found: "no uncertainty is given for the calibration of the advance speed, so no advance ratio contains it",
    needed: "the relative standard uncertainty of the speeds",
    mend: `Time the carriage over a measured distance, or compare the flow meter with a float${speedFrom === "recipe" ? ", and state it with the speed" : ""}; often 1 to 3 %`,
  });
}

function zeroBeyond({ zeroThrust, range: [, high] }: AdvanceFit): Warning | null {
  if (!zeroThrust?.isExtrapolated) return null;
  return warning({
    code: "bench.zero-thrust-continued",
    where: "curve of the thrust coefficient",
    found: `zero thrust at the advance ratio ${formatUncertain(zeroThrust.advanceRatio)} is the curve continued beyond the last plateau at ${formatNumber(high)}`,
    needed: "plateaus on both sides of zero thrust",
    mend: "Add a faster step, or a slower rotation rate at the greatest speed",
  });
}

function notConverged({ thrustCurve, powerCurve }: AdvanceFit): Warning | null {
  if (thrustCurve.converged && (powerCurve?.converged ?? true)) return null;
  return warning({
    code: "bench.advance-not-converged",
    where: "curves against the advance ratio",
    found: "the weights of the points still changed when the search for the curve ended",
    needed: "",
    mend: "State a lower order, and look at the doubts of the speeds",
  });
}

const TOLD_BY = {
  rotationRate: "the sign of the rotation rate",
  command: "the command below its idle value",
  thrust:
    "the sign of the thrust, for the log holds neither a signed rotation rate nor a command on both sides of idle",
} as const;

function astern({ plateaus, foundBy, thrustCoefficient, toForward }: ReverseFit): Warning {
  const [percent, half] = [toForward.value, toForward.value - toForward.interval95[0]].map((part) => 100 * part);
  return warning({
    code: "bench.reverse",
    where: "plateaus",
    found: `${plateaus.length} plateaus turn astern, told by ${TOLD_BY[foundBy]}, and were reduced apart: the thrust coefficient astern is ${formatUncertain(thrustCoefficient)}, ${formatNumber(percent!, 3)} ± ${formatNumber(half!, 2)} % of that ahead`,
    needed: "",
    mend: "",
  });
}

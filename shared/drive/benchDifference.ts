import type { BenchDifference, BenchDifferencePoint } from "../model/benchDifference.ts";
import type { DriveRequest, UncertainInput } from "../model/drive.ts";
import type { Plateau } from "../model/reduction.ts";
import { chiSquareUpperTail } from "../numeric/chiSquare.ts";
import { formatNumber, formatUncertain } from "../quantity/format.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { electricalPowerOf } from "./bus.ts";
import { chainOf } from "./chain.ts";
import { emptyLimits } from "./limitNumbers.ts";
import { solveAtSpeed } from "./solveFull.ts";
import { emptyState } from "./steadyState.ts";
import { inputValue, withInput } from "./uncertainInput.ts";

type Reading = Pick<Plateau, "rotationRate" | "voltage" | "electricalPower" | "thrust" | "used">;

/** Relative step of the slopes: see driveUncertainties. */
const STEP = 1e-5;
/** What was measured was reached, whatever the parts allow. */
const NO_LIMITS = emptyLimits();

/**
 * Electrical power that was measured on the stand over what the drive model gives at the same rotation rate and the same
 * voltage at the controller, so that neither the throttle map nor the supply of the stand has a part in it.
 *
 *   r_i = P_measured/P_model(n_i, U_i),   r = Σ w_i r_i/Σ w_i,   w = 1/u²(r_i)
 *
 * `request` is the drive on the stand: its density that of the fluid there, its coefficients those measured.
 *
 * One ratio says what the drive draws only where it holds at all points: chi-square of the ratios about their mean, by
 * the doubt of the readings alone. A gain that all readings share counts there too, which errs towards agreement.
 *
 * Source   law of propagation, JCGM 100:2008, 5.1.2; chi-square test of fit, e.g. Bevington & Robinson, Data Reduction
 *          and Error Analysis (2003), ch. 4.4; the inputs of the model are common to all points and are added after
 *          the mean.
 * Assumes  readings of the points independent of each other; a gain of the meters that all share is not averaged down
 *          where it is the greater part, but that is not known here: the doubt of a point is taken whole for the mean.
 * Returns  null as ratio where no point has voltage and power.
 */
export function benchDifference(request: DriveRequest, readings: readonly Reading[]): BenchDifference {
  const points = readings.flatMap((reading) => comparedPoint(request, reading));
  if (points.length === 0) return { points, ratio: null, spread: 0, agreement: null, sentence: NONE };
  const weights = points.map(({ ratio }) => 1 / Math.max(ratio.standardUncertainty, 1e-6) ** 2);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = points.reduce((sum, { ratio }, at) => sum + weights[at]! * ratio.value, 0) / whole;
  const spread = Math.sqrt(
    points.reduce((sum, { ratio }) => sum + (ratio.value - mean) ** 2, 0) / Math.max(1, points.length - 1),
  );
  const ofReadings = Math.min(...points.map(({ ratio }) => ratio.standardUncertainty));
  const ofModel = mean * modelDoubt(request, points[points.length - 1]!);
  const ratio = uncertain(mean, Math.hypot(ofReadings, ofModel, spread / Math.sqrt(points.length)));
  const agreement = agreementOf(points, mean);
  return { points, ratio, spread, agreement, sentence: sentenceOf({ ratio, points, agreement }) };
}

/** Whether one ratio holds for all points; null for a single point. */
function agreementOf(points: readonly BenchDifferencePoint[], mean: number): BenchDifference["agreement"] {
  const degreesOfFreedom = points.length - 1;
  if (degreesOfFreedom < 1) return null;
  const chiSquare = points.reduce(
    (sum, { ratio }) => sum + ((ratio.value - mean) / Math.max(ratio.standardUncertainty, 1e-6)) ** 2,
    0,
  );
  return { chiSquare, degreesOfFreedom, probability: chiSquareUpperTail(chiSquare, degreesOfFreedom) };
}

const NONE = "No plateau of this propeller and motor has voltage and current, so there is nothing to compare with.";

/** Below this chance the points do not share one ratio. */
const UNLIKELY = 0.05;

interface Told extends Pick<BenchDifference, "points" | "agreement"> {
  readonly ratio: Uncertain;
}

function sentenceOf({ ratio, points, agreement }: Told): string {
  const drew = `On the bench it drew ${formatUncertain(ratio)} times the power that the model gives at the same speed and voltage, over ${points.length} plateau${points.length === 1 ? "" : "s"}`;
  return agreement !== null && agreement.probability < UNLIKELY
    ? `${drew} on average, but no one ratio holds for all: ${trendText(points, agreement)}`
    : `${drew}: ${verdictOf(ratio)}.`;
}

/** Where the ratio is least and greatest, and what makes it change. */
function trendText(
  points: readonly BenchDifferencePoint[],
  { chiSquare, degreesOfFreedom }: NonNullable<BenchDifference["agreement"]>,
): string {
  const byRatio = [...points].sort((a, b) => a.ratio.value - b.ratio.value);
  const [least, most] = [byRatio[0]!, byRatio.at(-1)!];
  const at = ({ ratio, rotationRate }: BenchDifferencePoint) =>
    `${formatUncertain(ratio)} at ${formatNumber(60 * rotationRate, 4)} rpm`;
  const cause =
    most.rotationRate < least.rotationRate
      ? "More than the model at low speed points to a loss without load that is set too low (no-load current, its rise with speed, standby of the controller), or to a voltage or current that is off at low throttle; less at high speed, to a resistance or torque coefficient that is too great."
      : "More than the model at high speed points to a resistance or torque coefficient that is too small, or to a winding hotter than it is taken to be; less at low speed, to a no-load current that is set too high.";
  return `it goes from ${at(least)} to ${at(most)}, more than the readings explain (chi-square ${formatNumber(chiSquare)} at ${degreesOfFreedom} degree${degreesOfFreedom === 1 ? "" : "s"} of freedom). ${cause} Measure the motor's constants before the average is believed.`;
}

function verdictOf(ratio: Uncertain): string {
  const [low, high] = ratio.interval95;
  if (low <= 1 && high >= 1) return "no difference beyond the doubt of both";
  return ratio.value > 1
    ? "more than the doubt of both explains: the model leaves out a loss, or a constant is off"
    : "less than the doubt of both explains: a loss of the model is too great, or a constant is off";
}

function comparedPoint(request: DriveRequest, { rotationRate, voltage, electricalPower, thrust, used }: Reading) {
  if (!used || voltage === null || electricalPower === null || !(rotationRate.value > 0)) return [];
  const at = { rate: rotationRate.value, voltage: voltage.value };
  const model = modelPower(request, at);
  if (model === null || !(electricalPower.value > 0)) return [];
  const slope = (there: typeof at, by: number) =>
    ((modelPower(request, there)?.power ?? model.power) - model.power) / by;
  const perRate = slope({ ...at, rate: at.rate * (1 + STEP) }, STEP);
  const relative = Math.hypot(
    electricalPower.standardUncertainty / electricalPower.value,
    (perRate / model.power) * (rotationRate.standardUncertainty / rotationRate.value),
  );
  const ratio = electricalPower.value / model.power;
  const point: BenchDifferencePoint = {
    ...{ rotationRate: at.rate, voltage: at.voltage, thrust: thrust.value },
    ...{ measuredPower: electricalPower, predictedPower: model.power, throttle: model.throttle },
    ratio: uncertain(ratio, ratio * relative),
  };
  return [point];
}

/** Power into the controller at a rotation rate (rev/s) and voltage (V); null where the model has no such point. */
function modelPower(request: DriveRequest, { rate, voltage }: { readonly rate: number; readonly voltage: number }) {
  const held = { ...request, supplyVoltage: voltage, supplyResistance: 0, hotelPower: 0, thrusters: 1 };
  const chain = chainOf(held);
  const state = emptyState();
  const reach = solveAtSpeed(chain, NO_LIMITS, 2 * Math.PI * rate * request.gearRatio, state);
  if (reach === "runaway" || reach === "beyondSupply" || reach === "beyondCurve") return null;
  return { power: electricalPowerOf(chain, state), throttle: state.throttle };
}

/** Relative standard uncertainty of the model's power at one point, from all inputs that state a doubt. */
function modelDoubt(request: DriveRequest, point: BenchDifferencePoint): number {
  const at = { rate: point.rotationRate, voltage: point.voltage };
  let variance = 0;
  const effects = new Map<UncertainInput, number>();
  for (const [input, u] of Object.entries(request.uncertainties) as [UncertainInput, number][]) {
    // What feeds the stand is measured there: voltage and resistance of the vehicle's supply have no part in it.
    if (input === "supplyVoltage" || input === "supplyResistance" || input === "hotelPower") continue;
    const x = inputValue(request, input);
    if (x === null || u === 0) continue;
    const step = x === 0 ? STEP * u : STEP * x;
    const changed = modelPower(withInput(request, input, x + step), at);
    if (changed === null) continue;
    const effect = (((changed.power - point.predictedPower) / step) * u) / point.predictedPower;
    effects.set(input, effect);
    variance += effect ** 2;
  }
  for (const { of, and, coefficient } of request.correlations) {
    if (of !== and) variance += 2 * coefficient * (effects.get(of) ?? 0) * (effects.get(and) ?? 0);
  }
  return Math.sqrt(Math.max(0, variance));
}

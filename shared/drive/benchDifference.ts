import type { BenchDifference, BenchDifferencePoint } from "../model/benchDifference.ts";
import type { DriveRequest, UncertainInput } from "../model/drive.ts";
import type { Plateau } from "../model/reduction.ts";
import { formatUncertain } from "../quantity/format.ts";
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
 * Source   law of propagation, JCGM 100:2008, 5.1.2; the inputs of the model are common to all points and are added after
 *          the mean.
 * Assumes  readings of the points independent of each other; a gain of the meters that all share is not averaged down
 *          where it is the greater part, but that is not known here: the doubt of a point is taken whole for the mean.
 * Returns  null as ratio where no point has voltage and power.
 */
export function benchDifference(request: DriveRequest, readings: readonly Reading[]): BenchDifference {
  const points = readings.flatMap((reading) => comparedPoint(request, reading));
  if (points.length === 0) return { points, ratio: null, spread: 0, sentence: NONE };
  const weights = points.map(({ ratio }) => 1 / Math.max(ratio.standardUncertainty, 1e-6) ** 2);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = points.reduce((sum, { ratio }, at) => sum + weights[at]! * ratio.value, 0) / whole;
  const spread = Math.sqrt(
    points.reduce((sum, { ratio }) => sum + (ratio.value - mean) ** 2, 0) / Math.max(1, points.length - 1),
  );
  const ofReadings = Math.min(...points.map(({ ratio }) => ratio.standardUncertainty));
  const ofModel = mean * modelDoubt(request, points[points.length - 1]!);
  const ratio = uncertain(mean, Math.hypot(ofReadings, ofModel, spread / Math.sqrt(points.length)));
  return { points, ratio, spread, sentence: sentenceOf(ratio, points.length) };
}

const NONE = "No plateau of this propeller and motor has voltage and current, so there is nothing to compare with.";

function sentenceOf(ratio: Uncertain, points: number): string {
  const [low, high] = ratio.interval95;
  const verdict =
    low <= 1 && high >= 1
      ? "no difference beyond the doubt of both"
      : ratio.value > 1
        ? "more than the doubt of both explains: the model leaves out a loss, or a constant is off"
        : "less than the doubt of both explains: a loss of the model is too great, or a constant is off";
  return `On the bench it drew ${formatUncertain(ratio)} times the power that the model gives at the same speed and voltage, over ${points} plateau${points === 1 ? "" : "s"}: ${verdict}.`;
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

import type { AdvanceSource, ThrustAtSpeed, ThrustAtSpeedRequest } from "../../../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { discArea } from "../../../../shared/propeller/coefficients.ts";
import { idealThrust } from "../../../../shared/propeller/momentum.ts";
import { predictedOpenWater } from "../../../../shared/propeller/prediction/predictedCurves.ts";
import type { Predictor } from "../../../../shared/propeller/prediction/predictor.ts";
import { rateForPower } from "../../../../shared/propeller/prediction/rateForPower.ts";
import { formatQuantity } from "../../../../shared/quantity/format.ts";
import { plainMessage } from "../../../app/plainMessage.ts";
import { together } from "../../../app/together.ts";
import { capitalised, joined } from "../../../app/words.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { RPM, WATT } from "../../bench/shownUnits.ts";
import { meanThrustCoefficient, meanTorqueCoefficient } from "../../variants/variantMean.ts";
import { correlationOf } from "../describedBlade.ts";
import { predictionSeries, type ShownPrediction } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant, TheoryInputs } from "../theoryModel.ts";
import { limitCurves } from "./limitCurves.ts";

export type Held = ThrustAtSpeedRequest["fixed"];

export interface SpeedInputs {
  readonly variants: readonly MeasuredVariant[];
  readonly predictions: readonly ShownPrediction[];
  readonly inputs: TheoryInputs;
  /** What stays the same while the speed grows. */
  readonly held: Held;
  /** Prediction whose fall with speed the measured variants are given; null: momentum theory alone. */
  readonly shape: ShownPrediction | null;
  /** Speed the picture ends at, m/s. */
  readonly topSpeed: number;
}

/** A variant carried to speed, for the picture and for the words under it. */
export interface VariantAtSpeed {
  readonly variant: MeasuredVariant;
  readonly result: ThrustAtSpeed;
}

/** Where the fall with speed of each comes from: variants of which the same is to be said are named together. */
export function speedReasons(known: readonly VariantAtSpeed[]): string[] {
  return byVariants(known, ({ result }) => [result.reason]).map(([reason, names]) => `${names}: ${reason}`);
}

/** What to know of the curves beyond what is said of the predictions: of all of them without names, else of those it holds for. */
export function speedWarnings(known: readonly VariantAtSpeed[], predictions: readonly ShownPrediction[]) {
  const told = predictions.flatMap(({ predictor }) => predictor?.warnings ?? []).map(plainMessage);
  const said = byVariants(known, ({ result }) =>
    result.warnings.map(plainMessage).filter((text) => !told.includes(text)),
  );
  const all = capitalised(joined(known.map(({ variant }) => variant.name)));
  return said.map(([message, names]) => ({ code: message, message: names === all ? message : `${names}: ${message}` }));
}

/** Each text once, with the names of the variants it belongs to. */
function byVariants(known: readonly VariantAtSpeed[], textsOf: (one: VariantAtSpeed) => readonly string[]) {
  return together(known, ({ variant }) => variant.name, textsOf).map(
    ([text, of]) => [text, capitalised(joined(of))] as const,
  );
}

const SPEED_STEPS = 40;
const CURVE_STEPS = 40;

/** Every variant whose thrust and power at rest are known, at speeds up to where its thrust ends. */
export function variantsAtSpeed(speed: SpeedInputs): VariantAtSpeed[] {
  return speed.variants.flatMap((variant) => {
    const request = requestOf(variant, speed);
    return request === null ? [] : [{ variant, result: overSpeeds(request, speed.topSpeed) }];
  });
}

/** Thrust against speed through the water: measured variants with their band, predictions, and the momentum limit of a fixed power. */
export function speedPicture(speed: SpeedInputs, known: readonly VariantAtSpeed[]): ChartSpec {
  const { held } = speed;
  const predicted = speed.predictions.flatMap((shown) => predictedSeries(shown, speed));
  const measured = known.map(({ variant, result }) => variantSeries(variant, result));
  return {
    title: `Thrust against speed at ${heldWords(held)}`,
    x: { label: "Speed through the water", unit: "m/s", min: 0 },
    y: { label: "Thrust", unit: "N", min: 0 },
    numbered: true,
    series: [...limitSeries(speed), ...predicted, ...measured],
  };
}

function heldWords(held: Held): string {
  return held.given === "rotationRate"
    ? formatQuantity(held.rotationRate, RPM)
    : `${formatQuantity(held.shaftPower, WATT)} at the shaft`;
}

/** Where the fall with speed comes from, as a phrase. */
const SOURCE_WORDS: Readonly<Record<AdvanceSource, string>> = {
  openWater: "its own run at speed",
  series: "a series propeller scaled to its bollard point",
  bladeElements: "blade elements scaled to its bollard point",
  momentum: "momentum theory alone",
};

function requestOf(
  { reductions, staticMerit }: MeasuredVariant,
  { shape, held: fixed, inputs }: SpeedInputs,
): Omit<ThrustAtSpeedRequest, "speeds"> | null {
  const [thrust, torque] = [meanThrustCoefficient(reductions), meanTorqueCoefficient(reductions)];
  const [first] = reductions;
  if (first === undefined || thrust === null || torque === null || thrust.value <= 0 || torque.value <= 0) return null;
  const openWater = reductions.map(({ advance }) => advance).find((fit) => fit?.powerCurve);
  return {
    bollard: {
      thrustCoefficient: thrust,
      torqueCoefficient: torque,
      correlation: correlationOf({ thrustCoefficient: thrust, torqueCoefficient: torque, staticMerit }),
    },
    diameter: first.diameter.value,
    density: first.fluid.density,
    nozzleAreaRatio: inputs.nozzleAreaRatio,
    fixed,
    outsideRange: true,
    ...(openWater?.powerCurve
      ? {
          openWater: { range: openWater.range, thrustCurve: openWater.thrustCurve, powerCurve: openWater.powerCurve },
        }
      : {}),
    ...(shape === null ? {} : shapeOf(shape, fixed, first.fluid.density)),
  };
}

/** The curve of a prediction in the form `thrustAtSpeed` takes it. */
function shapeOf(
  { prediction: { source }, predictor }: ShownPrediction,
  fixed: Held,
  density: number,
): Partial<ThrustAtSpeedRequest> {
  if (source.kind === "series") return { series: source.series };
  if (predictor === null) return {};
  return { bladeElements: predictedOpenWater(predictor, rateOf(fixed, predictor, density), CURVE_STEPS) };
}

/** Rotation rate (rev/s) whose Reynolds number blade elements take: the one held, or that which takes the power at rest. */
function rateOf(fixed: Held, predictor: Predictor, density: number): number {
  if (fixed.given === "rotationRate") return fixed.rotationRate;
  return rateForPower(predictor, density, fixed.shaftPower) || UNKNOWN_RATE;
}

/** Where the prediction takes no power at rest, rev/s. */
const UNKNOWN_RATE = 50;

/** The request at speeds from rest to where the thrust or the picture ends. */
function overSpeeds(request: Omit<ThrustAtSpeedRequest, "speeds">, topSpeed: number): ThrustAtSpeed {
  const end = endSpeed(request, topSpeed);
  const speeds = Array.from({ length: SPEED_STEPS + 1 }, (_, step) => (end * step) / SPEED_STEPS);
  return thrustAtSpeed({ ...request, speeds });
}

/** Greatest speed up to `topSpeed` that the curve has an answer for, found by halving. */
function endSpeed(request: Omit<ThrustAtSpeedRequest, "speeds">, topSpeed: number): number {
  const has = (speed: number) => thrustAtSpeed({ ...request, speeds: [speed] }).points[0]!.state === "solved";
  if (has(topSpeed)) return topSpeed;
  let [low, high] = [0, topSpeed];
  for (let step = 0; step < 12; step++) {
    const middle = (low + high) / 2;
    if (has(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function pointsOf({ points }: ThrustAtSpeed, banded: boolean): ChartPoint[] {
  return points.flatMap((point): ChartPoint[] => {
    if (point.state === "failed") return [];
    const { advanceSpeed: x, thrust } = point;
    return [{ x, y: thrust.value, ...(banded ? { yInterval: thrust.interval95 } : {}) }];
  });
}

function variantSeries({ name, style }: MeasuredVariant, result: ThrustAtSpeed): ChartSeries {
  const isMeasured = result.source === "openWater";
  return {
    id: `speed-${name}`,
    name: `${name}, by ${SOURCE_WORDS[result.source]}`,
    kind: isMeasured ? "fit" : "prediction",
    style,
    points: pointsOf(result, true),
  };
}

/** A prediction is a yardstick: it is drawn without a band. */
function predictedSeries(shown: ShownPrediction, speed: SpeedInputs): ChartSeries[] {
  const { held: fixed, topSpeed, inputs } = speed;
  const { predictor } = shown;
  if (predictor === null) return [];
  const rotationRate = rateOf(fixed, predictor, inputs.density);
  const rest = predictor.at({ rotationRate, advanceSpeed: 0 });
  if (rest.state === "unknown" || rest.thrustCoefficient <= 0 || rest.torqueCoefficient <= 0) return [];
  const exact = (value: number) => ({ value, standardUncertainty: 0 });
  const result = overSpeeds(
    {
      bollard: {
        thrustCoefficient: exact(rest.thrustCoefficient),
        torqueCoefficient: exact(rest.torqueCoefficient),
      },
      diameter: predictor.diameter,
      density: inputs.density,
      nozzleAreaRatio: null,
      fixed,
      outsideRange: true,
      ...shapeOf(shown, fixed, inputs.density),
    },
    topSpeed,
  );
  return [...predictionSeries(shown, pointsOf(result, false))];
}

/** What momentum theory allows at the power held; a rotation rate alone has no such limit. */
function limitSeries({ held, inputs, predictions, topSpeed }: SpeedInputs): ChartSeries[] {
  if (held.given === "rotationRate") return [];
  const { shaftPower } = held;
  const points = ({ diameter, density, nozzleAreaRatio }: TheoryInputs) =>
    Array.from({ length: SPEED_STEPS + 1 }, (_, step): ChartPoint => {
      const advanceSpeed = (topSpeed * step) / SPEED_STEPS;
      const disc = { discArea: discArea(diameter), density, nozzleAreaRatio };
      return { x: advanceSpeed, y: idealThrust({ shaftPower, advanceSpeed, ...disc }) };
    });
  return limitCurves({ inputs, predictions }, points, ` at ${heldWords(held)}`);
}

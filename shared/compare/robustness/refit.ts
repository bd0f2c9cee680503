import type { Plateau, Reduction } from "../../model/reduction.ts";
import { lineThroughOrigin } from "../../numeric/lineThroughOrigin.ts";
import { median, medianAbsoluteDeviation } from "../../numeric/median.ts";
import { type RunQuantity, thrustCoefficientOf } from "../runQuantity.ts";

/** Another way to a thrust coefficient from the plateaus of a run; null where they do not carry it. */
export type Refit = (run: Reduction) => RunQuantity | null;

/** Fewest plateaus that another fit is made of. */
const FEWEST = 3;

/** The plateaus that count, in the order of the log. */
const used = ({ plateaus }: Reduction) => plateaus.filter((plateau) => plateau.used);

/** Plateaus in the upper half of the range of rotation rates. */
export function upperHalf(run: Reduction): readonly Plateau[] {
  const rates = used(run).map(({ rotationRate }) => rotationRate.value);
  const middle = (Math.min(...rates) + Math.max(...rates)) / 2;
  return used(run).filter(({ rotationRate }) => rotationRate.value >= middle);
}

/** Plateaus up to the fastest one. */
export function wayUp(run: Reduction): readonly Plateau[] {
  const own = used(run);
  const rates = own.map(({ rotationRate }) => rotationRate.value);
  return own.slice(0, rates.indexOf(Math.max(...rates)) + 1);
}

/** Plateaus that were left out too, as far as they push ahead. */
export function everyPlateau({ plateaus, reverse }: Reduction): readonly Plateau[] {
  const astern = new Set(reverse?.plateaus);
  return plateaus.filter(({ thrustCoefficient }, i) => thrustCoefficient.value > 0 && !astern.has(i + 1));
}

/** Weighted line through the origin over chosen plateaus, T = K_T ρ n² D⁴. */
export function fitOver(choose: (run: Reduction) => readonly Plateau[]): Refit {
  return (run) => {
    const chosen = choose(run);
    if (chosen.length < FEWEST) return null;
    const { slope, standardErrorFromScatter, degreesOfFreedom } = lineThroughOrigin(pointsOf(run, chosen));
    return refitted(run, { value: slope, u: standardErrorFromScatter!, degreesOfFreedom });
  };
}

/** Median of the coefficients of the plateaus: half of them may be wild. */
export const medianOfPlateaus: Refit = (run) => {
  const values = used(run).map(({ thrustCoefficient }) => thrustCoefficient.value);
  if (values.length < FEWEST) return null;
  // Asymptotic standard error of a median of normal numbers: sqrt(π/2) of that of the mean.
  const u = Math.sqrt(Math.PI / 2 / values.length) * medianAbsoluteDeviation(values);
  return refitted(run, { value: median(values), u, degreesOfFreedom: values.length - 1 });
};

/** Huber's constant: as good as least squares in 95 of 100 parts where nothing is wild. */
const HUBER = 1.345;
const MAXIMUM_STEPS = 200;
const TOLERANCE = 1e-10;

/**
 * Line through the origin by Huber's M-estimator, weighted as the plain fit; plateaus far from it count less, by
 * iteratively reweighted least squares with the scale of the residuals by their median absolute deviation.
 *
 * Source   Huber, Robust Statistics (1981), ch. 7; Annals of Mathematical Statistics 35 (1964) 73. Null where it does not
 *          settle.
 */
export const huberFit: Refit = (run) => {
  const chosen = used(run);
  if (chosen.length < FEWEST) return null;
  const plain = pointsOf(run, chosen);
  let weights = chosen.map(() => 1);
  let before = Number.NaN;
  for (let step = 0; step < MAXIMUM_STEPS; step++) {
    const uncertaintyY = plain.uncertaintyY.map((u, i) => u / Math.sqrt(weights[i]!));
    const { slope, standardErrorFromScatter, degreesOfFreedom } = lineThroughOrigin({ ...plain, uncertaintyY });
    if (Math.abs(slope - before) <= TOLERANCE * Math.abs(slope)) {
      return refitted(run, { value: slope, u: standardErrorFromScatter!, degreesOfFreedom });
    }
    before = slope;
    const distances = plain.y.map((y, i) => (y - slope * plain.x[i]!) / plain.uncertaintyY[i]!);
    const scale = medianAbsoluteDeviation(distances);
    weights = distances.map((distance) => Math.min(1, (HUBER * scale) / Math.abs(distance) || 1));
  }
  return null;
};

function pointsOf({ fluid, diameter }: Reduction, plateaus: readonly Plateau[]) {
  const perRate = fluid.density * diameter.value ** 4;
  const x = plateaus.map(({ rotationRate }) => perRate * rotationRate.value ** 2);
  // The doubt of a plateau's own coefficient, as a thrust: what all plateaus share must not level the weights.
  const uncertaintyY = plateaus.map(
    ({ thrustCoefficient }, i) =>
      Math.max(thrustCoefficient.standardUncertainty, LEAST * thrustCoefficient.value) * x[i]!,
  );
  return { x, y: plateaus.map(({ thrust }) => thrust.value), uncertaintyY };
}

/** Least relative doubt a plateau is weighed with, so that a typed row without any does not rule. */
const LEAST = 1e-4;

/** The common causes act as on the coefficient of the run; they do not hang on how the plateaus are put together. */
function refitted(
  run: Reduction,
  { value, u, degreesOfFreedom }: { value: number; u: number; degreesOfFreedom: number },
): RunQuantity | null {
  if (!(value > 0)) return null;
  return { ...thrustCoefficientOf(run), value, independent: u / value, degreesOfFreedom };
}

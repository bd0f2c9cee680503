import type { FitPoint, OriginFit } from "./coefficientFit.ts";
import { asOneInput, type DoubtInput } from "./doubtInput.ts";

/** What is measured at the plateaus, for the words of the budget. */
export interface MeasuredAt {
  readonly what: string;
  readonly unit: string;
}

/** What differs between the plateaus of a fit: their own doubts, and what they scatter about the line beyond those. */
export interface PlateauInputs {
  readonly own: readonly DoubtInput[];
  readonly beyond: readonly DoubtInput[];
}

/** The parts of `fit.independent`; in squares they add up to it. `points` are those of the fit, in its order. */
export function plateauInputs(points: readonly FitPoint[], fit: OriginFit, { what, unit }: MeasuredAt): PlateauInputs {
  const { influences } = fit;
  const perReading = { sensitivities: influences };
  const own = [
    ...asOneInput({
      ...perReading,
      uncertainties: points.map((point) => point.scatter),
      degreesOfFreedom: points.map((point) => point.scatterDegreesOfFreedom),
      commonDegreesOfFreedom: points.map((point) => point.scatterCommonDegreesOfFreedom),
      words: {
        name: `scatter of the ${what} within the plateaus`,
        source: "plateauScatter",
        kind: "A",
        distribution: "student",
        unit,
      },
    }),
    ...asOneInput({
      ...perReading,
      uncertainties: points.map((point) => point.spread?.uncertainty ?? 0),
      degreesOfFreedom: points.map((point) => point.spread?.degreesOfFreedom ?? Infinity),
      words: {
        name: `${what} of the plateaus differing by more than their own doubts`,
        source: "plateauSpread",
        kind: "A",
        distribution: "student",
        unit,
      },
    }),
    ...asOneInput({
      ...perReading,
      uncertainties: points.map((point) => point.rounding),
      words: {
        name: `steps of the ${what} reading`,
        source: "plateauResolution",
        kind: "B",
        distribution: "rectangular",
        unit,
      },
    }),
    ...asOneInput({
      ...perReading,
      uncertainties: points.map((point) => point.repeatability),
      words: {
        name: `repeatability of the ${what} that no stand betters`,
        source: "repeatability",
        kind: "B",
        distribution: "normal",
        unit,
      },
    }),
    ...asOneInput({
      sensitivities: points.map((point, i) => influences[i]! * fit.coefficient * point.x),
      uncertainties: points.map((point) => point.roundingX / point.x),
      words: {
        name: `steps of the rotation rate, as the ${what} feels them`,
        source: "rateResolution",
        kind: "B",
        distribution: "rectangular",
        unit: "1",
      },
    }),
  ];
  return { own, beyond: beyondOwn(own, points.length, fit, { what, unit }) };
}

/** Below this part of the doubt the rest is rounding of the computation. */
const NOTHING = 1e-6;

function beyondOwn(
  own: readonly DoubtInput[],
  points: number,
  fit: OriginFit,
  { what, unit }: MeasuredAt,
): DoubtInput[] {
  const promised = own.reduce((sum, input) => sum + (input.sensitivity * input.standardUncertainty) ** 2, 0);
  const beyond = Math.sqrt(Math.max(0, fit.independent ** 2 - promised));
  if (!(beyond > NOTHING * fit.independent)) return [];
  const sensitivity = Math.hypot(...fit.influences) || 1;
  const degreesOfFreedom = Math.max(1, points - 1);
  return [
    {
      name: `${what} of the plateaus off the line by more than their own doubts`,
      source: "plateauSpread",
      kind: "A",
      distribution: "student",
      standardUncertainty: beyond / sensitivity,
      unit,
      sensitivity,
      degreesOfFreedom,
      pieces: [{ change: beyond, degreesOfFreedom }],
    },
  ];
}

import type { FitPoint, OriginFit } from "./coefficientFit.ts";
import { asOneInput, type DoubtInput, type SeveralInputs } from "./doubtInput.ts";

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

/** What the doubts that differ between plateaus are called in the budget, and how each is known. */
const wordsOf = ({ what, unit }: MeasuredAt) =>
  ({
    scatter: {
      ...{ name: `scatter of the ${what} within the plateaus`, source: "plateauScatter", unit },
      ...{ kind: "A", distribution: "student" },
    },
    spread: {
      ...{ name: `${what} of the plateaus differing by more than their own doubts`, source: "plateauSpread", unit },
      ...{ kind: "A", distribution: "student" },
    },
    rounding: {
      ...{ name: `steps of the ${what} reading`, source: "plateauResolution", unit },
      ...{ kind: "B", distribution: "rectangular" },
    },
    repeatability: {
      ...{ name: `repeatability of the ${what} that no stand betters`, source: "repeatability", unit },
      ...{ kind: "B", distribution: "normal" },
    },
    roundingOfRate: {
      ...{ name: `steps of the rotation rate, as the ${what} feels them`, source: "rateResolution", unit: "1" },
      ...{ kind: "B", distribution: "rectangular" },
    },
  }) as const satisfies Record<string, SeveralInputs["words"]>;

/** The parts of `fit.independent`; in squares they add up to it. `points` are those of the fit, in its order. */
export function plateauInputs(points: readonly FitPoint[], fit: OriginFit, measured: MeasuredAt): PlateauInputs {
  const words = wordsOf(measured);
  const { influences: sensitivities } = fit;
  const own = [
    ...asOneInput({
      sensitivities,
      uncertainties: points.map((point) => point.scatter),
      degreesOfFreedom: points.map((point) => point.scatterDegreesOfFreedom),
      commonDegreesOfFreedom: points.map((point) => point.scatterCommonDegreesOfFreedom),
      words: words.scatter,
    }),
    ...asOneInput({
      sensitivities,
      uncertainties: points.map((point) => point.spread?.uncertainty ?? 0),
      degreesOfFreedom: points.map((point) => point.spread?.degreesOfFreedom ?? Infinity),
      words: words.spread,
    }),
    ...asOneInput({ sensitivities, uncertainties: points.map((point) => point.rounding), words: words.rounding }),
    ...asOneInput({
      sensitivities,
      uncertainties: points.map((point) => point.repeatability),
      words: words.repeatability,
    }),
    ...asOneInput({
      sensitivities: points.map((point, i) => sensitivities[i]! * fit.coefficient * point.x),
      uncertainties: points.map((point) => point.roundingX / point.x),
      words: words.roundingOfRate,
    }),
  ];
  return { own, beyond: beyondOwn(own, points.length, fit, measured) };
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

import { limitThrust } from "../../../../shared/propeller/bollardEstimate.ts";
import { formatQuantity } from "../../../../shared/quantity/format.ts";
import type { ChartPoint, ChartSeries } from "../../../charts/chartSpec.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";
import type { ShownPrediction } from "../predictions/shownPrediction.ts";
import type { TheoryInputs } from "../theoryModel.ts";

/** The disc that a prediction is held against, with its own nozzle where it has one; null where it is not computed. */
export function discOfPrediction(
  { prediction: { source }, predictor }: ShownPrediction,
  inputs: TheoryInputs,
): TheoryInputs | null {
  if (source.kind === "staticMerit")
    return { ...inputs, isExample: false, diameter: source.diameter, nozzleAreaRatio: source.nozzleAreaRatio };
  if (predictor === null) return null;
  const isDucted = source.kind === "series" && source.series.family !== "wageningen-b";
  return {
    ...inputs,
    isExample: false,
    diameter: predictor.diameter,
    nozzleAreaRatio: isDucted ? (inputs.nozzleAreaRatio ?? EVEN_NOZZLE) : null,
  };
}

/** Exit area over disc area of a nozzle that ends as wide as the disc. */
const EVEN_NOZZLE = 1;

/**
 * What momentum theory rules out: the region beyond the highest limit of the discs on show, so that nothing possible is drawn
 * inside it; and as a line the limit of the disc that was measured, where a prediction of another disc or with a nozzle goes
 * beyond that.
 */
export function limitCurves(
  { inputs, predictions }: { readonly inputs: TheoryInputs; readonly predictions: readonly ShownPrediction[] },
  pointsOf: (disc: TheoryInputs) => readonly ChartPoint[],
  where = "",
): ChartSeries[] {
  const discs = [inputs, ...predictions.flatMap((one) => discOfPrediction(one, inputs) ?? [])];
  const highest = discs.reduce((a, b) => (limitThrust(1, b) > limitThrust(1, a) ? b : a));
  const name = (disc: TheoryInputs) => `Momentum limit of ${discWords(disc)}${where}`;
  const region: ChartSeries = {
    id: "limit",
    name: name(highest),
    kind: "limit",
    style: 0,
    points: pointsOf(highest),
  };
  if (highest === inputs) return [region];
  return [region, { id: "measured-limit", name: name(inputs), kind: "fit", style: INK, points: pointsOf(inputs) }];
}

/** The last of the styles is drawn in ink. */
const INK = 4;

function discWords({ diameter, nozzleAreaRatio, isExample }: TheoryInputs): string {
  return `${isExample ? "an example" : "a"} ${formatQuantity(diameter, MILLIMETRE)} disc${nozzleAreaRatio === null ? " without nozzle" : " in its nozzle"}`;
}

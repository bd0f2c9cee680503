import type { Prediction } from "../../../../shared/model/prediction.ts";
import type { Predictor } from "../../../../shared/propeller/prediction/predictor.ts";
import type { ChartSeries } from "../../../charts/chartSpec.ts";

/** A prediction as the pictures use it. */
export interface ShownPrediction {
  readonly prediction: Prediction;
  /** Style number of everything drawn of it. */
  readonly style: number;
  /** Null for a stated static merit, which tells power but no rotation rate, and where it can not be computed. */
  readonly predictor: Predictor | null;
  /** Why it can not be computed; empty where it can. */
  readonly problem: string;
}

/** Codes of what is outside the tests of a series. */
const OUTSIDE_TESTS = ["propeller.series-range", "propeller.series-member"];

/** Its name wherever its numbers stand, which says so when they lie outside what the series was tested for. */
export function shownName({
  prediction: { name },
  predictor,
}: Pick<ShownPrediction, "prediction" | "predictor">): string {
  return predictor?.warnings.some(({ code }) => OUTSIDE_TESTS.includes(code)) ? `${name} (outside the tests)` : name;
}

/** A dashed line of a prediction; left out where it has no points. */
export function predictionSeries(shown: ShownPrediction, points: ChartSeries["points"]): readonly ChartSeries[] {
  if (points.length === 0) return [];
  const { prediction, style } = shown;
  return [{ id: `prediction-${prediction.name}`, name: shownName(shown), kind: "prediction", style, points }];
}

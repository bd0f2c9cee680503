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

/** A dashed line of a prediction; left out where it has no points. */
export function predictionSeries(
  { prediction, style }: ShownPrediction,
  points: ChartSeries["points"],
): readonly ChartSeries[] {
  if (points.length === 0) return [];
  return [{ id: `prediction-${prediction.name}`, name: prediction.name, kind: "prediction", style, points }];
}

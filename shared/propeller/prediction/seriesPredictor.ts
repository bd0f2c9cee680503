import type { SeriesPropeller } from "../../model/seriesPropeller.ts";
import { polynomialsAt } from "../series/openWaterOfSeries.ts";
import { coefficientAt } from "../series/pitchPlane.ts";
import { seriesWarnings } from "../series/seriesRange.ts";
import type { Predictor } from "./predictor.ts";

/**
 * A propeller of a published series at the Reynolds number of its tests. Outside the tested pitch, area or blades it is
 * computed and says so; astern, where the series has no tests, it gives nothing.
 *
 * Source   as `openWaterOfSeries`.
 */
export function seriesPredictor(series: SeriesPropeller, diameter: number): Predictor {
  const { thrust, torque } = polynomialsAt({ series });
  return {
    diameter,
    warnings: seriesWarnings({ series, outsideRange: true }),
    at: ({ rotationRate, advanceSpeed }) => {
      if (!(rotationRate > 0) || advanceSpeed < 0)
        return { state: "unknown", reason: "The series was tested only turning and moving ahead." };
      const J = advanceSpeed / (rotationRate * diameter);
      return {
        state: "known",
        thrustCoefficient: coefficientAt(thrust, J),
        torqueCoefficient: coefficientAt(torque, J),
        warnings: [],
      };
    },
  };
}

import { pairFromMerit } from "../../../shared/drive/coefficientPair.ts";
import { seriesPropellerCurve } from "../../../shared/drive/propellerCurves.ts";
import type { Prediction } from "../../../shared/model/prediction.ts";
import type { TypedPropeller } from "./driveChoices.ts";
import type { PropellerInHand } from "./measuredPropeller.ts";

/** A prediction by a published series; the others have no curve of their own. */
export function ofSeries({ name, source }: Prediction, style: number): PropellerInHand[] {
  if (source.kind !== "series") return [];
  const { series, diameter } = source;
  const open = series.family === "wageningen-b";
  return [
    {
      ...{ name, style, torqueSource: "series", runs: 0 },
      propeller: {
        ...{ name, source: "series", from: "a smooth, well-made propeller of the series" },
        diameter: { value: diameter, standardUncertainty: 0 },
        ahead: seriesPropellerCurve({ series, outsideRange: true }).curve,
        pitchRatio: series.pitchRatio,
        ...(open && { bladeCount: series.blades, areaRatio: series.areaRatio }),
        nozzle: !open,
      },
    },
  ];
}

/** Coefficients written by hand; a torque that was left open follows from the stated merit. */
export function typedPropeller(given: TypedPropeller, merit: number, style: number): PropellerInHand {
  const thrustCoefficient = { value: given.thrustCoefficient, standardUncertainty: 0 };
  const { name, torqueCoefficient } = given;
  const pair =
    torqueCoefficient === null
      ? pairFromMerit(thrustCoefficient, { value: merit, standardUncertainty: 0 })
      : { thrustCoefficient, torqueCoefficient: { value: torqueCoefficient, standardUncertainty: 0 }, correlation: 0 };
  return {
    ...{ name, style, runs: 0, torqueSource: torqueCoefficient === null ? "statedMerit" : "typed" },
    propeller: {
      ...{ name, source: "typed", from: "coefficients as typed", nozzle: false },
      diameter: { value: given.diameter, standardUncertainty: 0 },
      ahead: pair,
    },
  };
}

import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { FinishFitRequest, type MeasuredPoint } from "../../shared/model/finishFit.ts";
import { bladeResponse } from "../../shared/propeller/finish/bladeResponse.ts";
import { bladesInHand } from "../../shared/propeller/finish/bladesInHand.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

export const FRESH = fluidProperties({ kind: "fresh", temperature: 291.15 });
export const ROTATION_RATE = 50;

/** Blades of a B screw, 76 mm, as sections. */
export const GEOMETRY = seriesGeometry({
  series: { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 },
  diameter: 0.076,
  outsideRange: false,
});

/** These blades tied to the tests of their series. */
export const BLADES = bladesInHand({
  blade: { given: "geometry", geometry: GEOMETRY },
  modelUncertainty: { thrust: 0.04, torque: 0.05 },
});

/** What these blades make at given advance ratios. */
export const responseAt = (advanceRatios: readonly number[]) =>
  bladeResponse({ ...BLADES, fluid: FRESH, rotationRate: ROTATION_RATE, advanceRatios }).response;

export interface Doubt {
  /** Relative standard uncertainty of each number. */ readonly whole: number;
  /** Part of it that all share. */ readonly common: number;
  readonly correlation: number;
}

export function measuredPoint(
  { advanceRatio, thrust, torque }: { readonly advanceRatio: number; readonly thrust: number; readonly torque: number },
  { whole, common, correlation }: Doubt = { whole: 0.02, common: 0.01, correlation: 0 },
): MeasuredPoint {
  const of = (value: number) => ({
    value,
    standardUncertainty: whole * value,
    commonUncertainty: common * value,
  });
  return { advanceRatio, thrustCoefficient: of(thrust), torqueCoefficient: of(torque), correlation };
}

/** A request for these blades. */
export function finishRequest(finishes: FinishFitRequest["finishes"], more: Partial<FinishFitRequest> = {}) {
  const request = FinishFitRequest.parse({
    blade: { given: "geometry", geometry: GEOMETRY },
    fluid: { kind: "fresh", temperature: 291.15 },
    rotationRate: ROTATION_RATE,
    finishes,
    ...more,
  });
  return { ...request, fluid: FRESH };
}

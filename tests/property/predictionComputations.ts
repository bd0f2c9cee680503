import type { z } from "zod";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { BladeElementsRequest, BladeGeometryRequest } from "../../shared/model/bladeElements.ts";
import { BladeStrengthRequest } from "../../shared/model/bladeStrength.ts";
import { BollardEstimateRequest } from "../../shared/model/bollardEstimate.ts";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { FinishFitRequest } from "../../shared/model/finishFit.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { LossReportRequest } from "../../shared/model/lossReport.ts";
import { SeriesCurveRequest, SeriesGeometryRequest } from "../../shared/model/seriesPropeller.ts";
import { SurfaceState } from "../../shared/model/surfaceState.ts";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { bladeElementsSweep } from "../../shared/propeller/blade/bladeElements.ts";
import { bollardEstimate } from "../../shared/propeller/bollardEstimate.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { surfaceOf } from "../../shared/propeller/finish/surfaceOf.ts";
import { lossReport } from "../../shared/propeller/losses/lossReport.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import { predictedStrength } from "../../shared/propeller/strength/predictedStrength.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { bladeGeometryOf } from "../../shared/sections/bladeGeometryOf.ts";

export const FRESH = { kind: "fresh", temperature: 291.15 };

export const SERIES = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 } as const;

export const GEOMETRY = seriesGeometry({ series: SERIES, diameter: 0.076, outsideRange: false });

export const MEASURED = {
  thrustCoefficient: { value: 0.28, standardUncertainty: 0.006, commonUncertainty: 0.004 },
  torqueCoefficient: { value: 0.0475, standardUncertainty: 0.0008, commonUncertainty: 0.0005 },
};

export const REST = {
  thrustCoefficient: { value: 0.28, standardUncertainty: 0.006 },
  torqueCoefficient: { value: 0.0475, standardUncertainty: 0.0008 },
};

export const POLARS = {
  blocks: [
    {
      reynolds: 4e4,
      points: [
        { angle: -0.2, lift: -0.6, drag: 0.08 },
        { angle: 0, lift: 0.3, drag: 0.02 },
        { angle: 0.2, lift: 1.1, drag: 0.06 },
      ],
    },
    {
      reynolds: 9e4,
      points: [
        { angle: -0.2, lift: -0.7, drag: 0.07 },
        { angle: 0.2, lift: 1.2, drag: 0.05 },
      ],
    },
  ],
};

export const inFluid = <T extends { readonly fluid: FluidState }>(request: T) => ({
  ...request,
  fluid: fluidProperties(request.fluid),
});

export interface Computation {
  readonly name: string;
  readonly valid: object;
  readonly run: (input: unknown) => unknown;
}

/** A computation behind its schema, as a route has it; null where the schema refuses. */
export function behind<S extends z.ZodType>(
  name: string,
  schema: S,
  valid: object,
  compute: (request: z.output<S>) => unknown,
) {
  const run = (input: unknown) => {
    const parsed = schema.safeParse(input);
    return parsed.success ? compute(parsed.data) : null;
  };
  return { name, valid, run } satisfies Computation;
}

export const COMPUTATIONS: readonly Computation[] = [
  behind("series", SeriesCurveRequest, { series: SERIES, reynolds: 3e6, points: 9, outsideRange: true }, seriesCurve),
  behind(
    "series-geometry",
    SeriesGeometryRequest,
    { series: SERIES, diameter: 0.076, outsideRange: true },
    seriesGeometry,
  ),
  behind(
    "best-pitch",
    BestPitchRequest,
    {
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.5 },
      duty: { given: "thrust", thrust: 20 },
      fixed: { given: "diameter", diameter: 0.076 },
      ...{ advanceSpeed: 1.2, density: 998, kinematicViscosity: 1e-6, outsideRange: true },
    },
    bestPitch,
  ),
  behind(
    "cavitation",
    CavitationRequest,
    {
      ...{ thrust: 30, nozzleThrust: 3, advanceSpeed: 1, rotationRate: 50, diameter: 0.076, blades: 3 },
      ...{ areaRatio: 0.5, pitchRatio: 0.9, shaftImmersion: 0.3, fluid: FRESH },
    },
    cavitation,
  ),
  behind(
    "carry-over",
    CarryOverRequest,
    {
      measured: {
        fluid: { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 },
        ...{
          rotationRate: 90,
          diameter: 0.2,
          ...REST,
          advanceRatio: 0,
          shaftImmersion: 0.2,
          tankWidth: 1,
          tankDepth: 0.6,
        },
      },
      target: {
        fluid: { kind: "sea", temperature: 285.15, salinity: 33 },
        rotationRate: 40,
        diameter: 0.1,
        nozzle: true,
      },
      shape: { geometry: GEOMETRY, surface: { roughness: 1e-5, liftFactor: 1, dragFactor: 1 } },
    },
    carryOver,
  ),
  behind(
    "thrust-at-speed",
    ThrustAtSpeedRequest,
    {
      bollard: REST,
      ...{ diameter: 0.1, density: 1000, nozzleAreaRatio: 1, series: SERIES, outsideRange: true },
      openWater: {
        range: [0.1, 0.6],
        thrustCurve: {
          coefficients: [0.28, -0.2, -0.1],
          covariance: [
            [1e-5, 0, 0],
            [0, 1e-5, 0],
            [0, 0, 1e-5],
          ],
        },
        powerCurve: {
          coefficients: [0.3, -0.1],
          covariance: [
            [1e-5, 0],
            [0, 1e-5],
          ],
        },
      },
      bladeElements: [0, 0.4, 0.8].map((J) => ({
        advanceRatio: J,
        thrustCoefficient: 0.3 - 0.3 * J,
        torqueCoefficient: 0.05 - 0.04 * J,
      })),
      fixed: { given: "shaftPower", shaftPower: 100 },
      speeds: [0, 1, 2],
    },
    thrustAtSpeed,
  ),
  behind(
    "blade-elements",
    BladeElementsRequest,
    {
      geometry: GEOMETRY,
      surface: { roughness: 1e-5, liftFactor: 1, dragFactor: 1 },
      fluid: FRESH,
      points: [
        { rotationRate: 50, advanceSpeed: 0 },
        { rotationRate: -40, advanceSpeed: -1 },
      ],
    },
    (request) => bladeElementsSweep(inFluid(request)),
  ),
  behind(
    "blade-elements by polars",
    BladeElementsRequest,
    { geometry: GEOMETRY, polars: POLARS, fluid: FRESH, points: [{ rotationRate: 50, advanceSpeed: 1 }] },
    (request) => bladeElementsSweep(inFluid(request)),
  ),
  behind(
    "blade-geometry",
    BladeGeometryRequest,
    {
      ...{ from: "outline", outline: "elliptic", bladeCount: 3, diameter: 0.08, hubDiameter: 0.016 },
      ...{ pitchRatio: 0.9, areaRatio: 0.4, thicknessRatio: 0.1, camberRatio: 0.03 },
    },
    bladeGeometryOf,
  ),
  behind(
    "blade-strength",
    BladeStrengthRequest,
    {
      geometry: GEOMETRY,
      surface: { roughness: 1e-4 },
      fluid: FRESH,
      rotationRate: 50,
      material: PRINTED_MATERIALS[0],
    },
    (request) => predictedStrength(inFluid(request)),
  ),
  behind(
    "finish-fit",
    FinishFitRequest,
    {
      blade: { given: "geometry", geometry: GEOMETRY },
      ...{ fluid: FRESH, rotationRate: 50, finishes: [{ name: "sanded", measured: [MEASURED] }] },
    },
    (request) => finishFit(inFluid(request)),
  ),
  behind(
    "loss-report",
    LossReportRequest,
    {
      name: "sanded",
      blade: { given: "geometry", geometry: GEOMETRY },
      fluid: FRESH,
      rotationRate: 50,
      measured: MEASURED,
    },
    (request) => lossReport(inFluid(request)),
  ),
  behind(
    "surface-state",
    SurfaceState,
    { state: "printed", layerHeight: 2e-4, flow: "acrossLayers", slope: 0.35 },
    surfaceOf,
  ),
  behind(
    "bollard-estimate",
    BollardEstimateRequest,
    { duty: { given: "shaftPower", shaftPower: 100 }, diameter: 0.076, density: 998, staticMerit: 0.5 },
    bollardEstimate,
  ),
];

import { CavitationRequest, type CavitationResult } from "../../shared/model/cavitation.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import type { OpenWaterPoint, SeriesPropeller } from "../../shared/model/seriesPropeller.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { screwOf } from "../../shared/propeller/series/screwOf.ts";
import { checked } from "./checked.ts";
import type { Options } from "./options.ts";

/** The option of `predict` that asks for cavitation and air. */
export const DEPTH_OPTIONS: Options = {
  depth: {
    value: "QUANTITY",
    text: "with --series: depth of the shaft; tells cavitation, air drawn in and the depth free of both",
  },
};

/** A propeller of a series at work. */
export interface SeriesAtWork {
  readonly series: SeriesPropeller;
  readonly point: OpenWaterPoint;
  /** N, nozzle included. */ readonly thrust: number;
  /** m */ readonly diameter: number;
  /** rev/s */ readonly rotationRate: number;
  /** m/s */ readonly advanceSpeed: number;
}

/** What the water allows the propeller with its shaft `shaftImmersion` (m) deep. */
export function atDepth(work: SeriesAtWork, shaftImmersion: number, fluid: FluidState): CavitationResult {
  const { series, point, thrust, ...running } = work;
  // Cavitation is a matter of what the blades carry; a nozzle that drags makes that more than the whole.
  const ofNozzle = thrust * ((point.nozzleThrustCoefficient ?? 0) / point.thrustCoefficient);
  const request = {
    ...running,
    ...screwOf(series),
    pitchRatio: series.pitchRatio,
    thrust: thrust - ofNozzle,
    nozzleThrust: Math.max(0, ofNozzle),
    shaftImmersion,
    fluid,
  };
  const options: Record<string, string> = { shaftImmersion: "depth", fluid: "water", thrust: "advance-speed" };
  return cavitation(checked(CavitationRequest, request, (field) => options[field] ?? field));
}

type Row = readonly [name: string, value: number | string | null, unit: string];

/** The numbers behind the answer, by name. */
export function depthRows({ cavitationNumber, loading, lines, leastAreas, ...depths }: CavitationResult): Row[] {
  // A depth above the surface is none: the propeller is free of it wherever it is under water.
  const offChart = (value: number | null) => (value === null ? "off the chart" : Math.max(0, value));
  const row = (name: string, value: number | null, unit = ""): Row => {
    const shown = offChart(value);
    return [name, shown, typeof shown === "string" ? "" : unit];
  };
  const [even] = leastAreas;
  return [
    ["Cavitation number at 0.7 R", cavitationNumber, ""],
    ["Blade loading", loading, ""],
    row("Loading at about 5 % back cavitation", lines.find(({ line }) => line === "merchant")?.limit ?? null),
    ["Least area ratio in even inflow (Keller)", even!.areaRatio, even!.isMet ? "met" : "not met"],
    row("Depth free of cavitation", depths.depthFreeOfCavitation, "m"),
    row("Depth free of air drawn in", depths.depthFreeOfVentilation, "m"),
    row("Depth against air vortices", depths.ventilation.depthAgainstVortices, "m"),
  ];
}

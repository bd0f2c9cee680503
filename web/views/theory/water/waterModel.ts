import { fluidProperties } from "../../../../shared/fluid/fluidProperties.ts";
import type { CavitationRequest, CavitationResult } from "../../../../shared/model/cavitation.ts";
import type { FluidState } from "../../../../shared/model/fluid.ts";
import { cavitation } from "../../../../shared/propeller/cavitation/cavitation.ts";
import { areaRatioOf } from "../../../../shared/propeller/series/areaRatioOf.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { METRE, RPM } from "../../bench/shownUnits.ts";
import type { Subject } from "../subject.ts";

/** How deep and how fast the propeller is asked to work. */
export interface Working {
  readonly fluid: FluidState;
  /** Depth of the shaft, m. */
  readonly depth: number;
  /** Nobody stated the depth. */
  readonly isExample?: boolean;
  /** rev/s */
  readonly rotationRate: number;
}

/** Depth of the shaft that stands in until one is stated, m. */
export const EXAMPLE_DEPTH = 1;
export const exampleNote = `Not stated: ${formatQuantity(EXAMPLE_DEPTH, METRE)} is taken as an example.`;

/** Whether it cavitates or draws air; at an example of a depth it says so. */
export function waterAnswer({ answer }: Pick<CavitationResult, "answer">, { isExample, depth }: Working): string {
  return isExample ? `At an example depth of ${formatQuantity(depth, METRE)}, as none is stated: ${answer}` : answer;
}

/** What has to be known of the propeller and is not; empty when the limits can be told. */
export function missingOf({ propeller }: Subject): string {
  const missing = [
    propeller.bladeCount === undefined ? "number of blades" : "",
    propeller.chordAt07 === undefined ? "chord at 0.7 R" : "",
    propeller.pitchRatio === undefined ? "pitch ratio" : "",
  ].filter((one) => one !== "");
  if (missing.length === 0) return "";
  return `Add ${missing.join(" and ")} to ${propeller.name} on the Parts screen: cavitation depends on the area of the blades.`;
}

/** What the limits of a propeller in a nozzle leave open; empty for an open one. */
export function nozzleNote({ propeller }: Pick<Subject, "propeller">): string {
  if (!propeller.nozzle) return "";
  return "All of the thrust is taken as carried by the blades. At rest a nozzle carries about half of it (Oosterveld 1970), so the blades cavitate later than told here; the faster flow through the disc draws air somewhat earlier.";
}

/** The limits at one depth and rotation rate, of the mean thrust coefficient that was measured. */
export function waterLimits(subject: Subject, { fluid, depth, rotationRate }: Working): CavitationResult {
  return cavitation(requestOf(subject, { fluid, depth, rotationRate }));
}

function requestOf(
  { propeller, thrustCoefficient }: Subject,
  { fluid, depth, rotationRate }: Working,
): CavitationRequest {
  const { density } = fluidProperties(fluid);
  return {
    thrust: thrustCoefficient.value * density * rotationRate ** 2 * propeller.diameter ** 4,
    nozzleThrust: 0,
    advanceSpeed: 0,
    rotationRate,
    diameter: propeller.diameter,
    blades: Math.max(2, propeller.bladeCount!),
    areaRatio: areaRatioOf(propeller)!,
    pitchRatio: propeller.pitchRatio!,
    shaftImmersion: depth,
    fluid,
    atmosphericPressure: 101325,
  };
}

/** Warnings, but for the one that the sentence of the answer says in other words. */
export function untold({ answer, warnings }: CavitationResult): CavitationResult["warnings"] {
  return answer.includes("beyond the chart")
    ? warnings.filter(({ code }) => code !== "propeller.off-burrill-chart")
    : warnings;
}

const STEPS = 30;

/** Depth that is needed against rotation rate, and the depth there is. */
export function depthPicture(subject: Subject, working: Working): ChartSpec {
  const top = Math.max(subject.topRate, working.rotationRate) * 1.5;
  const results = Array.from({ length: STEPS }, (_, step) => {
    const rotationRate = (top * (step + 1)) / STEPS;
    return { rotationRate, limits: waterLimits(subject, { ...working, rotationRate }) };
  });
  const line = (depthOf: (limits: CavitationResult) => number | null): ChartPoint[] =>
    results.flatMap(({ rotationRate, limits }): ChartPoint[] => {
      const depth = depthOf(limits);
      return depth === null ? [] : [{ x: rotationRate / RPM.factor, y: Math.max(0, depth) }];
    });
  return {
    title: `Depth of the shaft that ${subject.name} needs at bollard`,
    x: { label: "Rotation rate", unit: "rpm", min: 0 },
    y: { label: "Depth of the shaft", unit: "m", min: 0 },
    numbered: true,
    series: drawn([
      {
        id: "cavitation",
        name: "Less than about 5 % of the back cavitates from here down",
        kind: "prediction",
        style: 0,
        points: line(({ depthFreeOfCavitation }) => depthFreeOfCavitation),
      },
      {
        id: "flatFaced",
        name: "Less than about 10 % of the back of flat-faced blades cavitates from here down",
        kind: "prediction",
        style: 2,
        points: line(({ lines }) => lines.find((one) => one.line === "segmental")?.depthNeeded ?? null),
      },
      {
        id: "air",
        name: "No air drawn by the mean flow from here down",
        kind: "prediction",
        style: 1,
        points: line(({ depthFreeOfVentilation }) => depthFreeOfVentilation),
      },
      {
        id: "depth",
        name: working.isExample ? "Depth taken as an example" : "Depth stated",
        kind: "fit",
        style: 4,
        points: [0, top / RPM.factor].map((x) => ({ x, y: working.depth })),
      },
    ]),
  };
}

/** A line that lies off the chart all along has nothing to show. */
function drawn(series: readonly ChartSeries[]): ChartSeries[] {
  return series.filter(({ points }) => points.length > 0);
}

/** The numbers behind the answer, in words. */
export function waterRows({ cavitationNumber, loading, lines, leastAreas, ventilation }: CavitationResult) {
  const merchant = lines.find(({ line }) => line === "merchant");
  const depth = (value: number | null) =>
    value === null ? "off the chart" : formatQuantity(Math.max(0, value), METRE);
  return [
    { name: "Cavitation number at 0.7 R", value: formatNumber(cavitationNumber), how: "pressure over vapour pressure" },
    { name: "Blade loading", value: formatNumber(loading), how: "thrust over projected area and dynamic pressure" },
    {
      name: "Loading at about 5 % back cavitation",
      value: merchant?.limit === null || merchant === undefined ? "off the chart" : formatNumber(merchant.limit),
      how: "limit line of Burrill and Emerson, from memory, within 10 %",
    },
    {
      name: "Depth free of cavitation",
      value: depth(merchant?.depthNeeded ?? null),
      how: "where the loading falls under that line",
    },
    ...leastAreas.map(({ meaning, areaRatio, isMet }) => ({
      name: `Least area ratio, ${meaning}`,
      value: `${formatNumber(areaRatio)}${isMet ? ", met" : ", not met"}`,
      how: "Keller's rule",
    })),
    {
      name: "Immersion over diameter",
      value: formatNumber(ventilation.immersionRatio),
      how: "1.5 or more in open-water tests",
    },
    {
      name: "Depth against drawdown of the surface",
      value: depth(ventilation.depthAgainstDrawdown),
      how: "the mean flow can not reach the air",
    },
    {
      name: "Depth against air vortices",
      value: depth(ventilation.depthAgainstVortices),
      how: "practice of pump intakes",
    },
    {
      name: "Thrust left near the surface",
      value: `${formatNumber(100 * ventilation.thrustRatio)}\u202f%`,
      how: "of the deep thrust, without air drawn in",
    },
  ];
}

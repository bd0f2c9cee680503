import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { PropellerCurve } from "../model/drivePropeller.ts";
import type { DriveTrain } from "../model/driveTrain.ts";
import type { DriveGround } from "../model/driveTrainPoint.ts";
import { BURRILL_LINES, CHART_END } from "../propeller/cavitation/burrill.data.ts";
import { burrillCavitationNumber } from "../propeller/cavitation/burrill.ts";
import { cavitationNumber, projectedArea, sectionSpeed } from "../propeller/cavitation/cavitationNumber.ts";
import { OPEN_WATER_IMMERSION, ventilation } from "../propeller/cavitation/ventilation.ts";
import { STANDARD_ATMOSPHERE } from "../quantity/constants.ts";
import { formatNumber } from "../quantity/format.ts";
import { leastPushingRate, type RunningCurve, rateWhere, thrustOfRate } from "./thrustOfRate.ts";

/** Rotation rates that the water allows, and what they rest on. */
export interface WaterLimits {
  readonly limits: Pick<DriveRequest["limits"], "cavitation" | "ventilation">;
  readonly grounds: readonly DriveGround[];
}

/** Line that the depth free of cavitation is told by too. */
const LINE = BURRILL_LINES.find(({ line }) => line === "merchant")!;

/**
 * Rotation rates, rev/s, at which the propeller of a drive train reaches the limit line of cavitation, and at which the
 * mean flow can pull the surface down to its tips, at its depth and advance speed.
 *
 *   σ_0.7(n) = σ_needed(τ_c(n));   D/2 + Δh(n) = h for shafts less than 1.5 D deep
 *
 * Source   as `cavitation` and `ventilation`: Burrill & Emerson 1963, line of 5 % back cavitation; Bernoulli along the
 *          surface.
 * Assumes  as they; standard atmosphere. A loading beyond the chart is held against the chart's end, the safe side.
 * Error    the line is known to 10 % in loading: some 5 % in rotation rate.
 * Returns  no rate where a number is not stated, in a nozzle (what part of the thrust the blades carry is not known), in
 *          air, or where it is not reached; the ground says which.
 */
export function waterLimits(train: DriveTrain, curve: PropellerCurve, advanceSpeed: number): WaterLimits {
  const { water, depth, propeller } = train;
  if (water.kind === "air") return { limits: {}, grounds: leftOut("the propeller runs in air") };
  if (depth === undefined) return { limits: {}, grounds: leftOut("the depth is not stated") };
  if (propeller.nozzle) return { limits: {}, grounds: leftOut("in a nozzle the share of the blades is not known") };
  if (advanceSpeed > 0 && curve.openWater === undefined) {
    return { limits: {}, grounds: leftOut("the coefficients are known at rest only") };
  }
  const { density, vapourPressure } = fluidProperties(water);
  const running: RunningCurve = { curve, diameter: propeller.diameter.value, density, advanceSpeed };
  const cavitating = cavitationRate(running, { depth, vapourPressure, propeller });
  const airDrawing = ventilationRate(running, depth);
  return {
    limits: {
      ...(cavitating.rate !== null && { cavitation: cavitating.rate }),
      ...(airDrawing.rate !== null && { ventilation: airDrawing.rate }),
    },
    grounds: [
      { about: "cavitation", text: cavitating.text },
      { about: "ventilation", text: airDrawing.text },
    ],
  };
}

/** The straight line of the projected area is for usual propellers, and comes to nothing at 4.7. Common practice, no source. */
const GREATEST_PITCH_RATIO = 2;

interface Rate {
  /** rev/s; null: no limit. */ readonly rate: number | null;
  readonly text: string;
}

interface CavitatingAt extends Pick<DriveTrain, "propeller"> {
  readonly depth: number;
  readonly vapourPressure: number;
}

function cavitationRate(running: RunningCurve, { depth, vapourPressure, propeller }: CavitatingAt): Rate {
  const { areaRatio, pitchRatio } = propeller;
  if (areaRatio === undefined || pitchRatio === undefined) {
    return { rate: null, text: "Cavitation is left out: area ratio or pitch ratio of the propeller is not stated." };
  }
  if (pitchRatio > GREATEST_PITCH_RATIO) {
    const pitch = `pitch ratio ${formatNumber(pitchRatio)}, above ${GREATEST_PITCH_RATIO}`;
    return { rate: null, text: `Cavitation is left out: at a ${pitch}, the projected area is not known.` };
  }
  const { diameter, density, advanceSpeed } = running;
  const area = projectedArea({ areaRatio, pitchRatio, diameter });
  const thrust = thrustOfRate(running);
  const excess = (rotationRate: number) => {
    const section = { diameter, rotationRate, advanceSpeed };
    const loading = thrust(rotationRate) / (0.5 * density * area * sectionSpeed(section) ** 2);
    const needed = burrillCavitationNumber(LINE, Math.max(loading, Number.MIN_VALUE)) ?? CHART_END;
    const at = { shaftImmersion: depth, density, vapourPressure, atmosphericPressure: STANDARD_ATMOSPHERE };
    return needed - cavitationNumber({ ...section, ...at });
  };
  const rate = rateWhere(excess, leastPushingRate(running));
  const at = `${formatNumber(depth)} m deep`;
  return rate === null
    ? { rate, text: `Cavitation is not reached ${at}.` }
    : {
        rate,
        text: `Cavitation at ${rpm(rate)}, ${at}: ${LINE.meaning} (Burrill & Emerson 1963, known to 10 % in loading; rough printed blades can cavitate earlier).`,
      };
}

function ventilationRate(running: RunningCurve, depth: number): Rate {
  const { diameter: D } = running;
  const deep = `${formatNumber(depth / D, 2)} diameters deep`;
  if (depth >= OPEN_WATER_IMMERSION * D) {
    return { rate: null, text: `Air drawn in is no limit: the shaft lies ${deep}, ${OPEN_WATER_IMMERSION} or more.` };
  }
  const thrust = thrustOfRate(running);
  const { density, advanceSpeed } = running;
  const excess = (rotationRate: number) =>
    ventilation({
      ...{ density, advanceSpeed, diameter: D, nozzleThrust: 0, shaftImmersion: depth },
      thrust: Math.max(thrust(rotationRate), Number.MIN_VALUE),
    }).depthAgainstDrawdown - depth;
  const rate = rateWhere(excess, leastPushingRate(running));
  if (depth <= D / 2) {
    const text = `Air is drawn in at any rotation rate: the shaft lies ${deep}, so that the blade tips reach the surface.`;
    return { rate, text };
  }
  if (rate === null) return { rate, text: `Air drawn in is not reached: the shaft lies ${deep}.` };
  return {
    rate,
    text: `Air is drawn in from ${rpm(rate)}: the shaft lies ${deep}, and the mean flow can pull the surface down to the tips there (Bernoulli; common practice, no source, as a limit). Vortices may draw air earlier.`,
  };
}

const rpm = (rate: number) => `${formatNumber(60 * rate)} rpm`;

function leftOut(because: string): DriveGround[] {
  return [
    { about: "cavitation", text: `Cavitation is left out: ${because}.` },
    { about: "ventilation", text: `Air drawn in is left out: ${because}.` },
  ];
}

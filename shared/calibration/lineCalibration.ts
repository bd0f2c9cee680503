import type { CalibrationPoint } from "../model/instrument.ts";
import type { Calibration, FactorPart, LineFindings } from "./calibration.ts";
import { calibrationLine } from "./calibrationLine.ts";
import { present, rectangular, together } from "./factorParts.ts";
import { hysteresisOf } from "./hysteresis.ts";
import { nonlinearityOf } from "./nonlinearity.ts";
import { outliersOf } from "./outliers.ts";

export interface LineRequest {
  readonly points: readonly CalibrationPoint[];
  readonly appliedUnit: string;
  readonly readingUnit: string;
  /** SI of the channel by one unit applied. */
  readonly perApplied: number;
  /** Doubts that all points share. */
  readonly shared: readonly FactorPart[];
  readonly readingFactor: number | null;
  readonly resolution: number | undefined;
}

/** Chance below which friction and curvature are taken as real. */
export const TOO_RARE = 0.05;

/**
 * A straight line turned round: true = (reading - intercept) × (SI by one applied) / slope.
 *
 * Friction and curvature that show are not corrected; each counts as rectangular, friction with half the difference of the
 * two ways and curvature with its greatest distance from the line, as parts of the span. Common practice, no source.
 * No scatter smaller than the rounding of single readings is believed: step/√12 (JCGM 100:2008, F.2.2.1).
 */
export function lineCalibration(request: LineRequest): Calibration {
  const { points, perApplied, readingFactor, appliedUnit, readingUnit } = request;
  const line = calibrationLine(points);
  const hysteresis = hysteresisOf(line);
  const nonlinearity = nonlinearityOf(line);
  const findings: LineFindings = {
    ...{ line, hysteresis, nonlinearity, outliers: outliersOf(line), appliedUnit, readingUnit, perApplied },
  };
  const resolution = request.resolution ?? stepOf(points.map(({ reading }) => reading));
  const about = points.reduce((sum, { applied }) => sum + (applied - line.meanApplied) ** 2, 0);
  const rounding = resolution / Math.sqrt(12);
  const s = Math.max(line.residualStandardDeviation, rounding);
  const lineUncertainty = s / Math.sqrt(about) / Math.abs(line.slope);
  const scale = present([...request.shared, ...shapeParts(findings)]);
  const factor = perApplied / line.slope;
  const scaleUncertainty = together(scale);
  const pivot = line.meanApplied * perApplied;
  const levelUncertainty = (s / Math.sqrt(points.length)) * Math.abs(factor);
  const ends = line.range.map((end) => end * perApplied);
  return {
    factor,
    offset: line.intercept,
    readingFactor,
    lineUncertainty,
    degreesOfFreedom: line.residualStandardDeviation >= rounding ? line.degreesOfFreedom : Infinity,
    scaleUncertainty,
    relativeUncertainty: Math.hypot(lineUncertainty, scaleUncertainty),
    pivot,
    levelUncertainty,
    zeroUncertainty: Math.hypot(levelUncertainty, pivot * lineUncertainty),
    scaleParts: scale,
    range: [Math.min(...ends), Math.max(...ends)],
    findings,
    resolution,
  };
}

function shapeParts({ hysteresis, nonlinearity }: LineFindings): FactorPart[] {
  const friction = hysteresis && hysteresis.pValue < TOO_RARE ? Math.abs(hysteresis.partOfSpan) / 2 : 0;
  const curvature = nonlinearity && nonlinearity.pValue < TOO_RARE ? nonlinearity.partOfSpan : 0;
  return [
    { name: "difference between the way up and the way down", relative: rectangular(friction) },
    { name: "curvature", relative: rectangular(curvature) },
  ];
}

/** Smallest decimal step that all readings are whole multiples of, 1 to 10⁻⁶; 0 for finer ones, where none can be told. */
function stepOf(readings: readonly number[]): number {
  for (let decimals = 0; decimals <= 6; decimals++) {
    const whole = readings.every((reading) => Number(reading.toFixed(decimals)) === reading);
    if (whole) return 10 ** -decimals;
  }
  return 0;
}

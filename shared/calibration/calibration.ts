import type { CalibrationLine } from "./calibrationLine.ts";
import type { Hysteresis } from "./hysteresis.ts";
import type { Nonlinearity } from "./nonlinearity.ts";

/** One cause of doubt of the factor. */
export interface FactorPart {
  /** In words. */
  readonly name: string;
  /** Part of the relative standard uncertainty of the factor. */
  readonly relative: number;
}

/** What the points themselves say, where there are points. */
export interface LineFindings {
  readonly line: CalibrationLine;
  readonly hysteresis: Hysteresis | null;
  readonly nonlinearity: Nonlinearity | null;
  /** Indices of points that do not belong to the line of the others. */
  readonly outliers: readonly number[];
  readonly appliedUnit: string;
  readonly readingUnit: string;
  /** SI of the channel by one unit applied, arms included. */
  readonly perApplied: number;
}

/**
 * An instrument as it is used: true value = (reading - offset) × factor, SI of its channel.
 * Always worked out of the raw data of the instrument, never stored.
 */
export interface Calibration {
  /** SI of the channel by one unit of the reading. */
  readonly factor: number;
  /** Reading at a true zero, unit of the reading. */
  readonly offset: number;
  /** SI by one unit of the reading before calibration; null: the numbers of the log are taken as they are written. */
  readonly readingFactor: number | null;
  /** Relative standard uncertainty of the slope that the scatter of the points leaves; it turns about `pivot`. */
  readonly lineUncertainty: number;
  readonly degreesOfFreedom: number;
  /** Relative standard uncertainty that all points share: weights, arms, curvature, friction. It turns about zero. */
  readonly scaleUncertainty: number;
  /** Both together. */
  readonly relativeUncertainty: number;
  /** Value at which slope and level of the line are independent, SI. */
  readonly pivot: number;
  /** Standard uncertainty of the level there, SI. */
  readonly levelUncertainty: number;
  /** Standard uncertainty of a true zero, SI; null where no zero was measured. */
  readonly zeroUncertainty: number | null;
  /** What `scaleUncertainty` is made of. */
  readonly scaleParts: readonly FactorPart[];
  /** Values that were applied, SI; null where there is no table. */
  readonly range: readonly [number, number] | null;
  readonly findings: LineFindings | null;
  /** Smallest step of the reading, unit of the reading; 0 where none is known. */
  readonly resolution: number;
}

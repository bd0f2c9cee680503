import type { Calibration } from "../calibration/calibration.ts";
import type { Instrument, UsedInstrument } from "../model/instrument.ts";

/** The calibration of an instrument as a channel carries it. */
export interface AppliedCalibration extends Calibration {
  /** Identity of the instrument: runs that share it share the error. */
  readonly id: string;
  readonly instrument: Instrument;
}

/** The calibration of an instrument, with the instrument it came from. */
export function appliedCalibration({ id, instrument }: UsedInstrument, calibration: Calibration): AppliedCalibration {
  return { ...calibration, id, instrument };
}

/** What a channel carries of its calibration. */
export interface Calibrated {
  readonly relativeUncertainty: number;
  readonly calibration: AppliedCalibration | null;
}

/**
 * Standard uncertainties that the calibration of a channel puts on the `value` it gives, SI, independent of each other.
 * With a tare only the slope counts: it takes off whatever the zero is wrong by. Without, the line turns about its pivot
 * and its level is in doubt as well.
 *
 * Source   JCGM 100:2008 (GUM), H.3.5: slope and level at the mean of the points are not correlated.
 */
export function calibrationDoubts(channel: Calibrated | undefined, value: number, tared: boolean): number[] {
  if (!channel) return [];
  const { calibration, relativeUncertainty } = channel;
  if (calibration === null || tared) return [relativeUncertainty * value];
  const { lineUncertainty, scaleUncertainty, pivot, levelUncertainty } = calibration;
  return [scaleUncertainty * value, lineUncertainty * (value - pivot), levelUncertainty];
}

/** The same together in squares, relative to `value`, 1: JCGM 100:2008, eq. 10. For a value of 0 that of the slope alone. */
export function relativeDoubt(channel: Calibrated | undefined, value: number): number {
  const doubts = calibrationDoubts(channel, value, false);
  return value === 0 ? (channel?.relativeUncertainty ?? 0) : Math.hypot(...doubts) / Math.abs(value);
}

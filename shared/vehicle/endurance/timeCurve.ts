import { monotoneCubic } from "../../numeric/monotoneCubic.ts";

export interface TimedSpeed {
  /** m/s. */ readonly speed: number;
  /** s. */ readonly time: number;
}

/**
 * How long a battery lasts over speed, s, between points at which it is known: the logarithm of the time is smooth where
 * the time itself falls steeply, and a monotone curve does not swing where a limit is met.
 */
export function timeCurve(points: readonly TimedSpeed[]): (speed: number) => number {
  const curve = monotoneCubic(
    points.map(({ speed }) => speed),
    points.map(({ time }) => Math.log(time)),
  );
  return (speed) => Math.exp(curve(speed));
}

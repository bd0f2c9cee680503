import type { Channel } from "./channels.ts";
import { type CommonPart, calibrationPart } from "./commonParts.ts";

/** A point of a fit as one channel sees it. */
export interface ChannelPull {
  /** Value of the channel there, SI. */
  readonly value: number;
  /** Change of the coefficient by a relative change of that value. */
  readonly pull: number;
}

/**
 * What the calibration of a channel puts on a coefficient: with an instrument, what its points share (weights, arms),
 * the slope of its line and, where no tare takes it off, its level, each under a key of the instrument, so that it cancels
 * between runs that share the instrument. Else the uncertainty that was typed.
 */
export function calibrationParts(
  channel: Channel | undefined,
  words: string,
  { pulls, coefficient, tared }: { pulls: readonly ChannelPull[]; coefficient: number; tared: boolean },
): CommonPart[] {
  if (channel === undefined) return [];
  const sum = (of: (pull: ChannelPull) => number) => pulls.reduce((total, pull) => total + of(pull), 0);
  const whole = sum(({ pull }) => pull);
  const { calibration, role } = channel;
  if (calibration === null) return calibrationPart(channel, words, coefficient, whole / coefficient);
  const { id, lineUncertainty, scaleUncertainty, pivot, levelUncertainty, degreesOfFreedom } = calibration;
  // Without the tare a change by Δ of the level moves each value by Δ / value of itself.
  const perSi = sum(({ pull, value }) => (value === 0 ? 0 : pull / value));
  const line = tared ? whole : whole - pivot * perSi;
  const key = (what: string) => `${role}-instrument:${id}:${what}`;
  const parts = [
    { what: "scale", name: `calibration of the ${words}: weights, arms, tolerances`, change: whole * scaleUncertainty },
    { what: "line", name: `calibration of the ${words}: slope of its line`, change: line * lineUncertainty },
    { what: "level", name: `calibration of the ${words}: its zero`, change: tared ? 0 : perSi * levelUncertainty },
  ];
  return parts
    .filter(({ change }) => change !== 0)
    .map(({ what, name, change }) => ({
      name,
      key: key(what),
      change,
      degreesOfFreedom: what === "scale" ? Infinity : degreesOfFreedom,
    }));
}

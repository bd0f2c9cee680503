import { ROLE_UNITS } from "../calibration/calibrationWords.ts";
import type { AppliedCalibration } from "./appliedCalibration.ts";
import type { Channel } from "./channels.ts";
import { type CommonPart, calibrationPart } from "./commonParts.ts";
import type { DoubtInput } from "./doubtInput.ts";

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
  // Without the tare a change by Δ of the level moves each value by Δ / value of itself.
  const perSi = sum(({ pull, value }) => (value === 0 ? 0 : pull / value));
  const line = tared ? whole : whole - calibration.pivot * perSi;
  const of = { role, words, calibration };
  return [...scalePart(of, whole), ...linePart(of, line), ...(tared ? [] : levelPart(of, perSi))];
}

interface Of {
  readonly role: string;
  readonly words: string;
  readonly calibration: AppliedCalibration;
}

const keyOf = ({ role, calibration }: Of, what: string) => `${role}-instrument:${calibration.id}:${what}`;

/** Weights, arms, curvature and friction, each a line of the budget. */
function scalePart(of: Of, sensitivity: number): CommonPart[] {
  const { words, calibration } = of;
  const change = sensitivity * calibration.scaleUncertainty;
  if (change === 0) return [];
  const inputs = calibration.scaleParts.map(({ name, relative }) =>
    inputOf({ name: `${words}: ${name}`, unit: "1", distribution: "rectangular" }, relative, sensitivity),
  );
  const name = `calibration of the ${words}: weights, arms, tolerances`;
  return [{ name, key: keyOf(of, "scale"), change, degreesOfFreedom: Infinity, inputs }];
}

function linePart(of: Of, sensitivity: number): CommonPart[] {
  const { words, calibration } = of;
  return measuredPart(of, "line", { name: `calibration of the ${words}: slope of its line`, unit: "1" }, [
    calibration.lineUncertainty,
    sensitivity,
  ]);
}

function levelPart(of: Of, sensitivity: number): CommonPart[] {
  const { words, calibration } = of;
  const unit = ROLE_UNITS[calibration.instrument.role];
  return measuredPart(of, "level", { name: `calibration of the ${words}: its zero`, unit }, [
    calibration.levelUncertainty,
    sensitivity,
  ]);
}

/** What the scatter of the calibration points leaves open. */
function measuredPart(
  of: Of,
  what: string,
  words: { readonly name: string; readonly unit: string },
  [standardUncertainty, sensitivity]: readonly [number, number],
): CommonPart[] {
  const change = sensitivity * standardUncertainty;
  if (change === 0) return [];
  const { degreesOfFreedom } = of.calibration;
  const inputs = [inputOf({ ...words, distribution: "student" }, standardUncertainty, sensitivity, degreesOfFreedom)];
  return [{ name: words.name, key: keyOf(of, what), change, degreesOfFreedom, inputs }];
}

function inputOf(
  words: Pick<DoubtInput, "name" | "unit" | "distribution">,
  standardUncertainty: number,
  sensitivity: number,
  degreesOfFreedom = Infinity,
): DoubtInput {
  const kind = words.distribution === "student" ? "A" : "B";
  const pieces = [{ change: sensitivity * standardUncertainty, degreesOfFreedom }];
  return { ...words, source: "calibration", kind, standardUncertainty, sensitivity, degreesOfFreedom, pieces };
}

import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { formatQuantity, formatUncertain } from "../quantity/format.ts";
import { operatingPoint } from "./operatingPoint.ts";
import { actualInWords, allowedInWords, limitedInWords, passedLimits } from "./passedLimits.ts";

/** A point that passes stated limits, and the most that stays within them. */
export interface WithinLimits {
  /** Throttle at which the first of the limits passed is reached. */
  readonly throttle: number;
  /** The point there; null where a limit is passed before anything turns. */
  readonly point: OperatingPoint | null;
  /** Which limits are passed, and what is left within them: whole sentences. */
  readonly sentence: string;
}

/**
 * What a drive gives within the limits that its parts state, where the point of `request` passes some; null where it passes none.
 *
 * Assumes  the quantities limited grow with the throttle up to the first limit, as `throttleLimits`.
 * Throws   as `operatingPoint`.
 */
export function withinLimits(name: string, request: DriveRequest, point: OperatingPoint): WithinLimits | null {
  const passed = passedLimits(point.limits);
  if (passed.length === 0) return null;
  // One that is passed, and yet reached at no throttle, is passed with nothing drawn.
  const throttle = Math.min(...passed.map(({ reachedAtThrottle }) => reachedAtThrottle ?? 0));
  const inside = throttle > 0 ? operatingPoint({ ...request, throttle }) : null;
  const listed = passed.map(
    (state) => `${limitedInWords(state.name)} ${actualInWords(state, point.uncertainties)} (${allowedInWords(state)})`,
  );
  const left =
    inside === null ? "No throttle stays within the limits" : `Within the limits ${withinText(inside, throttle)}`;
  const sentence = `“${name}” at ${percent(request.throttle)} throttle is past what its parts allow: ${listed.join("; ")}. ${left}.`;
  return { throttle, point: inside, sentence };
}

const percent = (throttle: number) => `${Math.round(100 * throttle)}\u202f%`;

function withinText(point: OperatingPoint, throttle: number): string {
  const told = (key: "thrust" | "supplyCurrent", symbol: string) => {
    const doubt = point.uncertainties?.[key];
    const unit = { symbol, factor: 1 };
    return doubt && doubt.standardUncertainty > 0 ? formatUncertain(doubt, unit) : formatQuantity(point[key], unit);
  };
  return `it pulls ${told("thrust", "N")} at ${percent(throttle)} throttle, drawing ${told("supplyCurrent", "A")}`;
}

import type { EnduranceAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { EnduranceFound, EnduranceUnknown } from "./demands.ts";

/**
 * How long a vehicle works for its requirement: at its mission where it has one, else at the speed that is asked for
 * through the water, else at its best speed; why not where it is not known.
 */
export function enduranceFound(
  { requirement }: Vehicle,
  { charge, mission, speeds }: EnduranceAnswer,
): EnduranceFound | EnduranceUnknown {
  if (charge === null) return { unknown: "the charge of the pack is not stated" };
  if (mission !== null) {
    return mission.lasts === null
      ? { unknown: "its mission can not be done, whatever the charge" }
      : { ...mission.lasts, text: "by its mission" };
  }
  if (speeds === null) return { unknown: "it makes no way ahead on this charge" };
  const best = speeds.bestRange;
  if (requirement?.speed === undefined) {
    return best === null
      ? { unknown: "no best speed was found; state a mission or a speed" }
      : { ...best.time, text: `at its best speed, ${formatNumber(best.speed)} m/s` };
  }
  const through = requirement.speed + requirement.againstCurrent;
  const next = speeds.points.findIndex(({ speed }) => speed >= through);
  if (next < 0) return { unknown: `it does not reach ${formatNumber(through)} m/s through the water` };
  const [a, b] = [speeds.points[Math.max(0, next - 1)]!, speeds.points[next]!];
  // Power goes with a power of the speed: its logarithm is straight enough between neighbours.
  const part = b.speed === a.speed ? 1 : (through - a.speed) / (b.speed - a.speed);
  const value = a.time * (b.time / a.time) ** part;
  // The doubt is told at the best speed; relative to the time it is taken for this one too.
  const relative = best ? best.time.standardUncertainty / best.time.value : 0;
  return { value, standardUncertainty: relative * value, text: `at ${formatNumber(through)} m/s through the water` };
}

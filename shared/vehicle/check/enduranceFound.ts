import type { CutOff, EnduranceAnswer, MissionAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import type { LimitingPart } from "../../model/vehicle/motionAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { formatNumber } from "../../quantity/format.ts";
import { hasInterval, notBelowZero, type Told, withoutInterval } from "../../quantity/told.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { CUT_OFF_WORDS } from "../endurance/words.ts";
import type { EnduranceFound, EnduranceUnknown } from "./solvedDemand.ts";

const CHARGE: LimitingPart = {
  ...{ part: "pack", drive: null, limit: "charge" },
  text: "The charge of the pack limits it: more charge, or less power.",
};

const PART_OF: Readonly<Partial<Record<CutOff, LimitingPart["part"]>>> = {
  ...{ fuseCurrent: "fuse", tetherCurrent: "tether", thrust: "voltage" },
};

/** What ends a mission, as the part that would have to grow. */
function endedBy({ endsAt, legs }: MissionAnswer): LimitingPart {
  const known = endsAt && legs[endsAt.leg]?.shortfall?.limitedBy;
  if (known) return known;
  if (endsAt === null || endsAt.by === "reserve" || endsAt.by === "curve") return CHARGE;
  const text = `It ends because ${CUT_OFF_WORDS[endsAt.by]}.`;
  return { part: PART_OF[endsAt.by] ?? "pack", drive: null, limit: endsAt.by, text };
}

/**
 * How long a vehicle works for its requirement: at its mission where it has one, else at the speed that is asked for
 * through the water, else at its best speed; why not where it is not known.
 */
export function enduranceFound(
  { requirement }: Vehicle,
  { charge, mission, speeds }: EnduranceAnswer,
): EnduranceFound | EnduranceUnknown {
  if (charge === null) return { unknown: "the charge of the pack is not stated", limitedBy: null };
  if (mission !== null) {
    const limitedBy = endedBy(mission);
    return mission.lasts === null
      ? { unknown: "its mission can not be done, whatever the charge", limitedBy }
      : { time: mission.lasts, text: "by its mission", limitedBy };
  }
  if (speeds === null) return { unknown: "it makes no way ahead on this charge", limitedBy: null };
  const best = speeds.bestRange;
  if (requirement?.speed === undefined) {
    return best === null
      ? { unknown: "no best speed was found; state a mission or a speed", limitedBy: null }
      : { time: best.time, text: `at its best speed, ${formatNumber(best.speed)} m/s`, limitedBy: CHARGE };
  }
  const through = requirement.speed + requirement.againstCurrent;
  const next = speeds.points.findIndex(({ speed }) => speed >= through);
  if (next < 0) return { unknown: `it does not reach ${formatNumber(through)} m/s through the water`, limitedBy: null };
  const [a, b] = [speeds.points[Math.max(0, next - 1)]!, speeds.points[next]!];
  // Power goes with a power of the speed: its logarithm is straight enough between neighbours.
  const part = b.speed === a.speed ? 1 : (through - a.speed) / (b.speed - a.speed);
  const value = a.time * (b.time / a.time) ** part;
  // The doubt is told at the best speed; relative to the time it is taken for this one too.
  return {
    time: best === null ? uncertain(value, 0) : timesAs(best.time, value),
    text: `at ${formatNumber(through)} m/s through the water`,
    limitedBy: CHARGE,
  };
}

/** Another time as doubtful, relative to itself. */
const timesAs = (known: Told, value: number): Told =>
  hasInterval(known)
    ? notBelowZero(uncertain(value, (known.standardUncertainty / known.value) * value))
    : withoutInterval(value, known.why);

import type { BodyDirection } from "../../../../../shared/model/vehicle/layoutRequest.ts";

/** Which way a thruster pushes the vehicle, as a person measures it, rad. */
export interface PushAngles {
  /** From the bow, to starboard: 0 ahead, a quarter turn to starboard, a half turn astern. */
  readonly heading: number;
  /** Below the level: a quarter turn straight down, negative upwards. */
  readonly dip: number;
}

/** Numbers this small beside the others are rounding of a sine. */
const ROUNDING = 1e-12;

/**
 * Direction of a push from its angles: (cos d cos h, cos d sin h, sin d) with x forward, y to starboard, z down.
 *
 * @example directionOf({ heading: Math.PI / 4, dip: 0 }) // { x: 0.7071, y: 0.7071, z: 0 }
 */
export function directionOf({ heading, dip }: PushAngles): BodyDirection {
  const tidy = (part: number) => (Math.abs(part) < ROUNDING ? 0 : part);
  return {
    x: tidy(Math.cos(dip) * Math.cos(heading)),
    y: tidy(Math.cos(dip) * Math.sin(heading)),
    z: tidy(Math.sin(dip)),
  };
}

/** Angles of a direction, whatever its length; straight up or down has the heading 0. */
export function anglesOf({ x, y, z }: BodyDirection): PushAngles {
  const level = Math.hypot(x, y);
  return {
    heading: level < ROUNDING * Math.abs(z) ? 0 : Math.atan2(y, x),
    dip: Math.atan2(z, level),
  };
}

const WORDS: readonly (readonly [BodyDirection, string])[] = [
  [{ x: 1, y: 0, z: 0 }, "ahead"],
  [{ x: -1, y: 0, z: 0 }, "astern"],
  [{ x: 0, y: 1, z: 0 }, "to starboard"],
  [{ x: 0, y: -1, z: 0 }, "to port"],
  [{ x: 0, y: 0, z: 1 }, "down"],
  [{ x: 0, y: 0, z: -1 }, "up"],
];

/** A part of a push below this share of it is not worth a word. */
const WORTH_A_WORD = 0.05;

/** A direction in words: "ahead and to port". */
export function pushInWords(direction: BodyDirection): string {
  const { x, y, z } = direction;
  const size = Math.hypot(x, y, z);
  if (size === 0) return "nowhere";
  return WORDS.map(([way, word]) => ({ word, part: (way.x * x + way.y * y + way.z * z) / size }))
    .filter(({ part }) => part > WORTH_A_WORD)
    .sort((one, other) => other.part - one.part)
    .map(({ word }) => word)
    .join(" and ");
}

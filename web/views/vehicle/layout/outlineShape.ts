import type { ForceOutline } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";
import { AXIS_WORDS } from "../../../../shared/vehicle/layout/axes.ts";

type Corner = readonly [number, number];

export interface OutlineShape {
  readonly title: string;
  /** Path of the outline by the limits of the thrusters, and within the current of the bus. */
  readonly free: string;
  readonly bus: string | null;
  /** Circles of equal force, drawing units and N. */
  readonly rings: readonly { readonly radius: number; readonly text: string }[];
  /** Words at the right, left, top and bottom. */
  readonly ends: readonly [string, string, string, string];
  readonly sentence: string;
}

const TITLES: Readonly<Record<ForceOutline["plane"], string>> = {
  horizontal: "Level: ahead and sideways",
  lengthwise: "Seen from starboard: ahead and up",
  crosswise: "Seen from astern: sideways and up",
};

/** Half the width of the drawing that the greatest force takes. */
export const OUTLINE_HALF = 40;
const RING_STEPS = [1, 2, 5];

/**
 * An outline of force as it is drawn: ahead up in the level plane and to the right in the lengthwise one, up is up.
 * Pure geometry; the outline itself is that of the answer.
 */
export function outlineShape(outline: ForceOutline): OutlineShape {
  const { plane, axes, corners, cornersWithBusLimit } = outline;
  const place = ([a, b]: Corner): Corner => (plane === "horizontal" ? [b, -a] : [a, b]);
  const greatest = Math.max(...corners.flat().map(Math.abs), 1e-9);
  const scale = OUTLINE_HALF / greatest;
  const path = (points: readonly Corner[]) =>
    `${points
      .map(place)
      .map(([x, y], i) => `${i === 0 ? "M" : "L"}${(scale * x).toFixed(2)} ${(scale * y).toFixed(2)}`)
      .join("")}Z`;
  const step = ringStep(greatest);
  const rings = [1, 2, 3, 4]
    .map((n) => n * step)
    .filter((force) => force <= greatest * 1.05)
    .map((force) => ({ radius: scale * force, text: `${Number(force.toPrecision(2))} N` }));
  const [first, second] = [AXIS_WORDS[axes[0]], AXIS_WORDS[axes[1]]];
  return {
    title: TITLES[plane],
    free: path(corners),
    bus: cornersWithBusLimit === null ? null : path(cornersWithBusLimit),
    rings,
    ends:
      plane === "horizontal"
        ? [second.positive, second.negative, first.positive, first.negative]
        : [first.positive, first.negative, second.negative, second.positive],
    sentence: outlineSentence(outline),
  };
}

/** A round step so that two to four rings fit. */
function ringStep(greatest: number): number {
  const power = 10 ** Math.floor(Math.log10(greatest / 2));
  return RING_STEPS.map((one) => one * power).findLast((one) => one <= greatest / 2) ?? power;
}

/** The greatest of each way in the plane, as a text alternative. */
function outlineSentence({ axes, corners }: ForceOutline): string {
  const ends = axes.flatMap((axis, k) => {
    const values = corners.map((corner) => corner[k]!);
    const { positive, negative } = AXIS_WORDS[axis];
    return [
      `${formatNumber(Math.max(0, ...values))} N ${positive}`,
      `${formatNumber(Math.max(0, ...values.map((one) => -one)))} N ${negative}`,
    ];
  });
  return `At its farthest: ${ends.join(", ")}.`;
}

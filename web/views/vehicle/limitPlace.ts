import type { LimitingPart } from "../../../shared/model/vehicle/motionAnswer.ts";

/** A stage of the way from what a vehicle must do back to its pack, and the section that describes it. */
export interface LimitStage {
  readonly name: string;
  readonly section: string;
}

type Part = LimitingPart["part"];

/** From the water back to the pack, as the power comes. */
const STAGES: readonly (LimitStage & { readonly parts: readonly Part[] })[] = [
  { name: "layout", section: "build-thrusters", parts: ["layout"] },
  { name: "propeller", section: "build-drives", parts: ["propeller"] },
  { name: "motor", section: "build-drives", parts: ["motor"] },
  { name: "controller", section: "build-drives", parts: ["controller"] },
  { name: "voltage", section: "build-supply", parts: ["voltage"] },
  { name: "tether", section: "build-tether", parts: ["tether"] },
  { name: "fuse", section: "build-supply", parts: ["fuse"] },
  { name: "pack", section: "build-supply", parts: ["pack"] },
];

/** The stages up to the part that limits, that part last; empty where nothing limits. */
export function wayToLimit({ part }: LimitingPart): LimitStage[] {
  const at = STAGES.findIndex(({ parts }) => parts.includes(part));
  const isPassed = ({ parts }: (typeof STAGES)[number], place: number) =>
    place === at || (place < at && parts.every((one) => ALWAYS.includes(one)));
  return STAGES.filter(isPassed).map(({ name, section }) => ({ name, section }));
}

/** Stages that every thrust passes; a fuse, a tether or a gap of voltage is named only where it is the limit. */
const ALWAYS: readonly Part[] = ["layout", "propeller", "motor", "controller"];

/** The section that describes the limiting part; null where nothing limits. */
export const limitSection = (limit: LimitingPart | null): string | null =>
  limit === null ? null : (wayToLimit(limit).at(-1)?.section ?? null);

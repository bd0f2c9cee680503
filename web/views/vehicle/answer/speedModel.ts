import type { MotionWay, SteadyMotion } from "../../../../shared/model/vehicle/motionAnswer.ts";
import { atMostWords, isAtMost } from "../../../../shared/vehicle/motion/wayWarnings.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { METRE_PER_SECOND, shownUncertain } from "./units.ts";

export const WAY_WORDS: Readonly<Record<MotionWay, string>> = {
  ahead: "ahead",
  astern: "astern",
  starboard: "to starboard",
  port: "to port",
  up: "up",
  down: "down",
};

/** Steady speed one way, as page and report tell it: an upper bound is called one. */
export const speedText = ({ state, speed, warnings }: Pick<SteadyMotion, "state" | "speed" | "warnings">): string =>
  state === "notCommanded"
    ? "not commanded"
    : atMostWords(shownUncertain(speed, METRE_PER_SECOND), speed !== null && isAtMost(warnings));

/** Force of the thrusters and what stands against it, over the speed; they cross at the steady speed. */
export function forcePicture({ way, curve, speed }: SteadyMotion): ChartSpec {
  const line = (id: string, name: string, style: number, of: (point: SteadyMotion["curve"][number]) => number) => ({
    ...{ id, name, style },
    kind: "prediction" as const,
    points: curve.map((point) => ({ x: point.speed, y: of(point) })),
  });
  const against = (point: SteadyMotion["curve"][number]) => point.drag + point.tether + point.weight;
  const hasTether = curve.some(({ tether }) => tether !== 0);
  const hasWeight = curve.some(({ weight }) => weight !== 0);
  return {
    title: `Force ${WAY_WORDS[way]} against speed`,
    x: { label: "Speed through the water", unit: "m/s", min: 0 },
    y: { label: "Force on the hull", unit: "N", min: 0 },
    series: [
      line("available", "Thrusters can give", 0, ({ available }) => available),
      line("against", hasTether || hasWeight ? "All that stands against it" : "Drag of the hull", 1, against),
      ...(hasTether ? [line("tether", "Of that the tether", 3, ({ tether }) => tether)] : []),
      ...(hasWeight ? [line("weight", "Of that weight or buoyancy", 2, ({ weight }) => weight)] : []),
    ],
    markers: speed === null ? [] : [{ x: speed.value, label: `${speed.value.toPrecision(3)} m/s` }],
  };
}

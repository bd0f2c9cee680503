import { Axis } from "../../model/vehicle/layoutRequest.ts";

/** The six motions in the order of the rows of a wrench matrix. */
export const AXES: readonly Axis[] = Axis.options;

/** What a person calls an axis and its two ways. */
interface AxisWords {
  readonly unit: "N" | "N·m";
  /** Symbol of its force or moment (SNAME, Technical and Research Bulletin 1-5, 1952). */
  readonly symbol: string;
  readonly positive: string;
  readonly negative: string;
}

export const AXIS_WORDS: Readonly<Record<Axis, AxisWords>> = {
  surge: { unit: "N", symbol: "X", positive: "ahead", negative: "astern" },
  sway: { unit: "N", symbol: "Y", positive: "to starboard", negative: "to port" },
  heave: { unit: "N", symbol: "Z", positive: "down", negative: "up" },
  roll: { unit: "N·m", symbol: "K", positive: "starboard side down", negative: "port side down" },
  pitch: { unit: "N·m", symbol: "M", positive: "bow up", negative: "bow down" },
  yaw: { unit: "N·m", symbol: "N", positive: "bow to starboard", negative: "bow to port" },
};

export const rowOf = (axis: Axis): number => AXES.indexOf(axis);

/** "surge", "surge and sway", "surge, sway and yaw". */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** The same as the start of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

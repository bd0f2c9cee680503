import type { Step } from "./thruster.ts";

export interface StairPlan {
  /** Throttles going up, 0 to 1; coming down the top one is left out. */
  readonly levels: readonly number[];
  /** Seconds at each level and at each rest. */
  readonly hold: number;
  readonly rest: number;
}

export interface TowPlan {
  /** Throttle while the carriage goes through its speeds. */
  readonly throttle: number;
  /** m/s, in order; the carriage stands before and after. */
  readonly speeds: readonly number[];
  /** Seconds at each speed, from speed to speed, and at each rest. */
  readonly hold: number;
  readonly change: number;
  readonly rest: number;
}

/** A throttle held while a carriage steps through its speeds, and the speed of the carriage at a time. */
export function tow({ throttle, speeds, hold, change, rest }: TowPlan): {
  readonly schedule: Step[];
  readonly speedAt: (time: number) => number;
} {
  const step = hold + change;
  const pause: Step = { duration: rest, throttle: 0 };
  const speedAt = (time: number) => {
    const index = Math.floor((time - rest) / step);
    const [from, to] = [speeds[index - 1] ?? 0, speeds[index] ?? 0];
    return from + (to - from) * Math.min(1, (time - rest - index * step) / change);
  };
  return { schedule: [pause, { duration: speeds.length * step, throttle }, pause], speedAt };
}

/** Rest, stairs up, rest, stairs down, rest. */
export function stairs({ levels, hold, rest }: StairPlan): Step[] {
  const pause: Step = { duration: rest, throttle: 0 };
  const up: Step[] = levels.map((throttle) => ({ duration: hold, throttle }));
  return [pause, ...up, pause, ...up.slice(0, -1).reverse(), pause];
}

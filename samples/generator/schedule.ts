import type { Step } from "./thruster.ts";

export interface StairPlan {
  /** Throttles going up, 0 to 1; coming down the top one is left out. */
  readonly levels: readonly number[];
  /** Seconds at each level and at each rest. */
  readonly hold: number;
  readonly rest: number;
  /** Where the rest between lies: after this many levels, counted up and down; absent: after the top. */
  readonly restAfter?: number;
}

/** Rest, stairs up, stairs down with one rest between, rest. */
export function stairs({ levels, hold, rest, restAfter = levels.length }: StairPlan): Step[] {
  const pause: Step = { duration: rest, throttle: 0 };
  const stair: Step[] = [...levels, ...levels.slice(0, -1).reverse()].map((throttle) => ({ duration: hold, throttle }));
  return [pause, ...stair.slice(0, restAfter), pause, ...stair.slice(restAfter), pause];
}

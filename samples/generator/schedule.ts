import type { Step } from "./thruster.ts";

export interface StairPlan {
  /** Throttles going up, 0 to 1; coming down the top one is left out. */
  readonly levels: readonly number[];
  /** Seconds at each level and at each rest. */
  readonly hold: number;
  readonly rest: number;
}

/** Rest, stairs up, rest, stairs down, rest. */
export function stairs({ levels, hold, rest }: StairPlan): Step[] {
  const pause: Step = { duration: rest, throttle: 0 };
  const up: Step[] = levels.map((throttle) => ({ duration: hold, throttle }));
  return [pause, ...up, pause, ...up.slice(0, -1).reverse(), pause];
}

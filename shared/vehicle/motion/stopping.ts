import type { MovingBody } from "./closedForms.ts";
import { simpson } from "./simpson.ts";

/** Time (s) and way (m) to lose speed. */
export interface Stop {
  readonly time: number;
  readonly distance: number;
}

/** Share of the speed at which a vehicle that drifts counts as stopped: by quadratic drag alone it never stands. */
export const DRIFTING = 0.1;

/**
 * Drifting with the thrusters off from a speed (m/s) down to a share of it.
 *
 *   a = 0: t = (M/b)(1/V_1 − 1/V_0),  x = (M/b) ln(V_0/V_1)
 *   else:  t = (M/a) ln[V_0 (b V_1 + a)/(V_1 (b V_0 + a))],  x = (M/b) ln[(b V_0 + a)/(b V_1 + a)]
 *
 * Source   separation of variables of M dV/dt = −b V² − a V; `slowed` solved for the time.
 *
 * @example coastingStop({ mass: 17.5, quadratic: 22.5 }, 1.5, 0.1).distance // 1.7909 m
 */
export function coastingStop({ mass: M, quadratic: b, linear: a = 0 }: MovingBody, speed: number, share: number): Stop {
  if (speed === 0) return { time: 0, distance: 0 };
  const end = share * speed;
  const distance = (M / b) * Math.log((b * speed + a) / (b * end + a));
  const time =
    a === 0 ? (M / b) * (1 / end - 1 / speed) : (M / a) * Math.log((speed * (b * end + a)) / (end * (b * speed + a)));
  return { time, distance };
}

const PIECES = 400;

/**
 * From a speed (m/s) to standstill with a constant force (N) against the motion.
 *
 *   t = ∫ M dV/(b V² + a V + F),  x = ∫ M V dV/(b V² + a V + F)
 *   a = 0: t = (M/√(b F)) atan(V_0 √(b/F)),  x = (M/(2 b)) ln(1 + b V_0²/F)
 *
 * Source   separation of variables; Simpson's rule, which agrees with the closed form to 1e-9.
 * Assumes  thrust that does not change: water that comes against the push counts as at rest.
 *
 * @example brakedStop({ mass: 17.5, quadratic: 22.5 }, 1.5, 40).distance // 0.31827 m
 */
export function brakedStop({ mass: M, quadratic: b, linear: a = 0 }: MovingBody, speed: number, force: number): Stop {
  const slowness = (V: number) => M / ((b * V + a) * V + force);
  return {
    time: simpson(slowness, 0, speed, PIECES),
    distance: simpson((V) => V * slowness(V), 0, speed, PIECES),
  };
}

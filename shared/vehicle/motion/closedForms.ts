import { nonNegative, positive } from "../../quantity/domain.ts";

/** A body that moves along one axis through still water. */
export interface MovingBody {
  /** M: mass of the body, the water it encloses and its added mass, kg. */ readonly mass: number;
  /** b = ½ ρ C_D A, N·s²/m². */ readonly quadratic: number;
  /** a, N·s/m; 0 if absent. */ readonly linear?: number;
}

export interface MotionAt {
  /** m/s. */ readonly speed: number;
  /** Way since the start, m. */ readonly distance: number;
}

/** Slowing by drag, all over the mass. */
export interface Slowing {
  /** b/M, 1/m. */ readonly quadratic: number;
  /** a/M, 1/s. */ readonly linear: number;
}

/**
 * Closed form of dV/dt = −k V² − r V without any check, for fits that try values on both sides of 0.
 *
 *   g = V_0 (1 − e^(−r t))/r,   V = V_0 e^(−r t)/(1 + k g),   x = ln(1 + k g)/k;   r → 0: g = V_0 t,   k → 0: x = g
 */
export function slowed({ quadratic: k, linear: r }: Slowing, startSpeed: number, time: number): MotionAt {
  const q = r * time;
  const g = startSpeed * time * (q === 0 ? 1 : -Math.expm1(-q) / q);
  return {
    speed: (startSpeed * Math.exp(-q)) / (1 + k * g),
    distance: k === 0 ? g : Math.log1p(k * g) / k,
  };
}

/**
 * Speed and way of a body without thrust, `time` (s) after it had `startSpeed` (m/s).
 *
 *   M dV/dt = −b V² − a V;   E = exp(−a t/M)
 *   V = V_0 E / [1 + (b V_0/a)(1 − E)],   x = (M/b) ln[1 + (b V_0/a)(1 − E)];   a → 0: (1 − E)/a → t/M
 *
 * Source   separation of variables; checked against scipy 1.17.1 solve_ivp.
 * Assumes  drag coefficient and added mass that do not change with speed.
 * Range    any time from 0.
 * Error    none within the assumptions.
 * Throws   OutOfDomain for a mass or b not greater than 0, a negative a, speed or time.
 *
 * @example coastDown({ mass: 17.5, quadratic: 22.5 }, 1.5, 1).speed // 0.5122 m/s
 */
export function coastDown(body: MovingBody, startSpeed: number, time: number): MotionAt {
  const M = positive(body.mass, "mass with added mass", "kg");
  const b = positive(body.quadratic, "quadratic drag", "N·s²/m²");
  const a = nonNegative(body.linear ?? 0, "linear drag", "N·s/m");
  const V0 = nonNegative(startSpeed, "start speed", "m/s");
  return slowed({ quadratic: b / M, linear: a / M }, V0, nonNegative(time, "time", "s"));
}

/**
 * Speed and way of a body that a constant force (N) pushes from rest, after `time` (s).
 *
 *   V_∞ = [√(a² + 4 b F) − a]/(2 b),   s = √(a² + 4 b F)/(2 M)
 *   u = s t:  V = (2 F/M) · tanh u / (2 s + (a/M) tanh u),   x = (M/b) {ln[cosh u + (a/(2 M s)) sinh u] − a t/(2 M)}
 *   a = 0: V = √(F/b) tanh(t √(F b)/M),   x = (M/b) ln cosh(t √(F b)/M)
 *
 * Source   separation of variables (Riccati equation); a = 0 as in values of textbooks; checked against scipy 1.17.1
 *          solve_ivp.
 * Assumes  thrust that does not fall with speed.
 * Range    any time from 0.
 * Error    none within the assumptions.
 * Throws   OutOfDomain for a mass, b or force not greater than 0, a negative a or time.
 *
 * @example startUp({ mass: 17.5, quadratic: 22.5 }, 40, 1).speed // 1.2496 m/s
 */
export function startUp(body: MovingBody, force: number, time: number): MotionAt {
  const M = positive(body.mass, "mass with added mass", "kg");
  const b = positive(body.quadratic, "quadratic drag", "N·s²/m²");
  const a = nonNegative(body.linear ?? 0, "linear drag", "N·s/m");
  const F = positive(force, "force", "N");
  const t = nonNegative(time, "time", "s");
  const root = Math.sqrt(a * a + 4 * b * F);
  const u = (root * t) / (2 * M);
  const tanh = Math.tanh(u);
  // ln cosh u = u + ln[(1 + e^(−2u))/2] does not overflow.
  const logCosh = u + Math.log1p(Math.exp(-2 * u)) - Math.LN2;
  const distance = (M / b) * (logCosh + Math.log1p((a / root) * tanh) - (a * t) / (2 * M));
  return { speed: (2 * F * tanh) / (root + a * tanh), distance };
}

export interface SteadyForce {
  /** Size of the force that drives the body: thrust, or net weight, N. */ readonly force: number;
  /** b = ½ ρ C_D A, N·s²/m². */ readonly quadratic: number;
  /** a, N·s/m; 0 if absent. */ readonly linear?: number;
}

/**
 * Speed at which drag balances a constant force, m/s.
 *
 *   V = [√(a² + 4 b F) − a]/(2 b) = 2 F/[a + √(a² + 4 b F)];   a = 0: √(2 W/(ρ C_D A))
 *
 * Source   b V² + a V = F; the second form does not cancel where a is large.
 * Throws   OutOfDomain for b not greater than 0, a negative a or force.
 *
 * @example terminalSpeed({ force: 40, quadratic: 22.5 }) // 1.3333 m/s
 */
export function terminalSpeed({ force, quadratic, linear = 0 }: SteadyForce): number {
  const F = nonNegative(force, "driving force", "N");
  const b = positive(quadratic, "quadratic drag", "N·s²/m²");
  const a = nonNegative(linear, "linear drag", "N·s/m");
  return F === 0 ? 0 : (2 * F) / (a + Math.sqrt(a * a + 4 * b * F));
}

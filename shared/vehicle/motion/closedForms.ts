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
 *
 * Source   separation of variables; checked against scipy 1.17.1 solve_ivp.
 *
 * @example slowed({ quadratic: 22.5 / 17.5, linear: 0 }, 1.5, 1).speed // 0.5122 m/s
 */
export function slowed({ quadratic: k, linear: r }: Slowing, startSpeed: number, time: number): MotionAt {
  const q = r * time;
  const g = startSpeed * time * (q === 0 ? 1 : -Math.expm1(-q) / q);
  return {
    speed: (startSpeed * Math.exp(-q)) / (1 + k * g),
    distance: k === 0 ? g : Math.log1p(k * g) / k,
  };
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

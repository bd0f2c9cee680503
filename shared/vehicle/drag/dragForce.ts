import { finite, nonNegative, positive } from "../../quantity/domain.ts";

/** Drag of one direction as two numbers, for loops that ask often. */
export interface DragLaw {
  /** b = ½ ρ C_D A, N·s²/m². */ readonly quadratic: number;
  /** a, N·s/m. */ readonly linear: number;
}

export interface DragLawInput {
  /** C_D A, m². */ readonly dragArea: number;
  /** a, N·s/m; 0 if absent. */ readonly linear?: number;
  /** Density of the water, kg/m³. */ readonly density: number;
}

/**
 * The law D = b V|V| + a V of a direction.
 *
 *   b = ½ ρ C_D A
 *
 * Throws   OutOfDomain for a drag area or density not greater than 0, or a linear term below 0.
 *
 * @example dragLaw({ dragArea: 0.045, density: 1000 }).quadratic // 22.5 N·s²/m²
 */
export function dragLaw({ dragArea, linear = 0, density }: DragLawInput): DragLaw {
  return {
    quadratic: 0.5 * positive(density, "density", "kg/m³") * positive(dragArea, "drag area", "m²"),
    linear: nonNegative(linear, "linear term", "N·s/m"),
  };
}

/**
 * Force of the water on the body along its axis, N: against the speed (m/s, signed).
 *
 *   F = −(b |V| + a) V
 *
 * Throws   OutOfDomain for a speed that is not finite.
 *
 * @example dragForce({ quadratic: 22.5, linear: 0 }, -2) // 90 N
 */
export function dragForce({ quadratic: b, linear: a }: DragLaw, speed: number): number {
  const V = finite(speed, "speed", "m/s");
  return 0 - (b * Math.abs(V) + a) * V;
}

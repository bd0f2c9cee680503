import { positive, within } from "../../quantity/domain.ts";

/**
 * Turbulent friction coefficient on wetted area by the line of the International Towing Tank Conference of 1957.
 *
 *   C_F = 0.075 / (log10 Re − 2)²
 *
 * Source   ITTC, Proceedings of the 8th ITTC, Madrid (1957).
 * Assumes  smooth surface, turbulent from the nose on.
 * Range    Re from 1e3 (below, the line runs away towards Re = 100) to 1e11; meant for 1e6 and more.
 * Error    at small Re a few percent above flat plates without the shape of a ship.
 * Throws   OutOfDomain outside the range.
 *
 * @example ittcFriction(1e6) // 0.0046875
 */
export function ittcFriction(reynolds: number): number {
  const Re = within(reynolds, 1e3, 1e11, "Reynolds number", "");
  return 0.075 / (Math.log10(Re) - 2) ** 2;
}

/**
 * Friction coefficient of a flat plate with a laminar boundary layer, one side, on wetted area.
 *
 *   C_F = 1.328 / √Re
 *
 * Source   Blasius (1908); e.g. White, Fluid Mechanics, ch. 7.
 * Range    Re to about 5e5 in quiet water, on a smooth plate.
 * Throws   OutOfDomain for Re not greater than 0.
 *
 * @example laminarFriction(1e4) // 0.01328
 */
export function laminarFriction(reynolds: number): number {
  return 1.328 / Math.sqrt(positive(reynolds, "Reynolds number", ""));
}

/**
 * What the shape of a streamlined body of revolution adds to the friction of a plate with its wetted area.
 *
 *   1 + k = 1 + 1.5 (d/l)^1.5 + 7 (d/l)³
 *
 * Source   Hoerner, Fluid-Dynamic Drag (1965), ch. 6, streamlined bodies.
 * Assumes  no separation but at the tail.
 * Range    l/d 2 to 10.
 * Throws   OutOfDomain for l/d not greater than 0.
 *
 * @example formFactor(6) // 1.1345
 */
export function formFactor(fineness: number): number {
  const ratio = 1 / positive(fineness, "length over diameter", "");
  return 1 + 1.5 * ratio ** 1.5 + 7 * ratio ** 3;
}

export interface StreamlinedBody {
  /** Length along the flow, m. */ readonly length: number;
  /** Greatest diameter, m. */ readonly diameter: number;
  /** Wetted area, m²; absent: 0.75 π l d. */ readonly wettedArea?: number | undefined;
  /** Kinematic viscosity of the water, m²/s. */ readonly kinematicViscosity: number;
}

/** Wetted area that goes with the form factor, m²: three times l/d the frontal area, as Hoerner's frontal form has it. */
export const streamlinedWettedArea = (length: number, diameter: number) => 0.75 * Math.PI * length * diameter;

/**
 * Drag area of a streamlined body of revolution at a speed, m²: D = ½ ρ V² C_D A.
 *
 *   C_D A = C_F(V l/ν) (1 + k) S
 *
 * Source   Hoerner, Fluid-Dynamic Drag (1965), ch. 6; ITTC-57 line.
 * Assumes  turbulent boundary layer; no fins, no openings.
 * Range    l/d 2 to 10, Re 5e5 and more.
 * Error    some 15 %; common practice, no source.
 * Throws   OutOfDomain for sizes not greater than 0 or Re outside the friction line.
 *
 * @example streamlinedDragArea({ length: 1.2, diameter: 0.2, wettedArea: 2.6, kinematicViscosity: 1.139e-6 }, 1.5) // 0.012548
 */
export function streamlinedDragArea(body: StreamlinedBody, speed: number): number {
  const l = positive(body.length, "length", "m");
  const d = positive(body.diameter, "diameter", "m");
  const S = positive(body.wettedArea ?? streamlinedWettedArea(l, d), "wetted area", "m²");
  const nu = positive(body.kinematicViscosity, "kinematic viscosity", "m²/s");
  return ittcFriction((positive(speed, "speed", "m/s") * l) / nu) * formFactor(l / d) * S;
}

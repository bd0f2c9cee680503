import { nonNegative, positive } from "../../quantity/domain.ts";
import { laminarFloor } from "./laminarFloor.ts";
import { PEAK_OF_TURBULENT_LINE, TRANSITION_FACTOR } from "./sectionModel.data.ts";

export interface DragOfSection {
  /** Reynolds number of the chord. */
  readonly reynolds: number;
  /** Greatest thickness over chord. */
  readonly thicknessRatio: number;
  /** Chord, m. */
  readonly chord: number;
  /** Roughness height k_p, m; 0 is smooth. */
  readonly roughness: number;
}

/**
 * Drag coefficient of a blade section at the lift where it is least, both sides, on the chord.
 *
 *   smooth   C_D = (1 + 2 t/c) [(τ 2.656/√Re)⁴ + (2 C_turb)⁴]^¼
 *            C_turb = 0.044/Re^(1/6) - 5/Re^(2/3), and below its peak at Re 2.07e5 the value of the peak
 *   rough    C_D = 2 (1 + 2 t/c) [1.89 + 1.62 log₁₀(c/k_p)]^(-2.5)
 *   C_D is the larger of the two
 *
 * 2.656/√Re is the laminar friction of a plate on both sides; τ is `TRANSITION_FACTOR`. The printed turbulent line bends
 * down below its peak and turns negative at Re 1.3e4, so it is not followed there. The fourth powers round the corner
 * between the two lines; the drag falls with Re everywhere.
 *
 * Source   laminar: Blasius, e.g. Schlichting, Boundary-Layer Theory; turbulent and rough: ITTC Recommended Procedure
 *          7.5-02-03-01.4 (1978 performance prediction method); τ fitted to Deters, Ananda & Selig, AIAA 2014-2151.
 * Range    Reynolds number and chord greater than 0, thickness ratio and roughness 0 or more. The rough line is made for
 *          c/k_p above 50; rougher blades hold its value there.
 * Error    15 to 30 % below Re 1e5, where transition is a matter of the last scratch on the blade.
 * Throws   OutOfDomain for other input.
 *
 * @example sectionDrag({ reynolds: 2e6, thicknessRatio: 0.05, chord: 0.3, roughness: 30e-6 }) // 0.01085
 */
export function sectionDrag(section: DragOfSection): number {
  positive(section.reynolds, "Reynolds number", "");
  positive(section.chord, "chord", "m");
  nonNegative(section.roughness, "roughness", "m");
  nonNegative(section.thicknessRatio, "thickness ratio", "");
  return profileDrag(section);
}

/** `sectionDrag` of numbers that are known to be in range. */
export function profileDrag({ reynolds, thicknessRatio, chord, roughness }: DragOfSection): number {
  const smooth = smoothDrag(reynolds);
  return (1 + 2 * thicknessRatio) * (roughness > 0 ? Math.max(smooth, roughDrag(chord / roughness)) : smooth);
}

/** Both sides of a thin smooth plate. Squares and roots instead of powers: this is computed for each piece of each flow. */
function smoothDrag(Re: number): number {
  const laminar = TRANSITION_FACTOR * laminarFloor(Re);
  const sixth = Math.cbrt(Math.sqrt(Math.max(Re, PEAK_OF_TURBULENT_LINE)));
  const turbulent = 2 * (0.044 / sixth - 5 / (sixth * sixth) ** 2);
  return Math.sqrt(Math.sqrt((laminar * laminar) ** 2 + (turbulent * turbulent) ** 2));
}

/** c/k_p below which the rough line is not followed: the grains are then no roughness but shape. */
export const ROUGHEST = 50;

/** Both sides of a thin plate of chord over roughness height c/k_p. */
function roughDrag(smoothness: number): number {
  return 2 * (1.89 + 1.62 * Math.log10(Math.max(smoothness, ROUGHEST))) ** -2.5;
}

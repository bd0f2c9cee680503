import { finite, positive } from "../../quantity/domain.ts";

export interface ScaleEffect {
  /** ΔK_T. */ readonly thrust: number;
  /** ΔK_Q. */ readonly torque: number;
}

/**
 * Change of thrust and torque coefficient by a change of the drag of the section at 0.75 of the radius; what is left of
 * the first state is K_T - ΔK_T and K_Q - ΔK_Q.
 *
 *   ΔK_T = -0.3 ΔC_D (P/D)(c Z/D),   ΔK_Q = 0.25 ΔC_D (c Z/D),   ΔC_D = C_D(first) - C_D(second)
 *
 * Source   ITTC Recommended Procedure 7.5-02-03-01.4 (1978 performance prediction method); the factors 0.3 and 0.25
 *          from memory.
 * Assumes  equal J; lift does not change.
 * Range    a drag change of either sign; pitch ratio, chord ratio and number of blades greater than 0.
 * Throws   OutOfDomain for other input.
 *
 * @example ittcScaleEffect({ dragChange: 0.001, pitchRatio: 1, chordRatio: 0.36, bladeCount: 4 }) // ΔK_T -0.000432, ΔK_Q 0.00036
 */
export function ittcScaleEffect({
  dragChange,
  pitchRatio,
  chordRatio,
  bladeCount,
}: {
  readonly dragChange: number;
  readonly pitchRatio: number;
  readonly chordRatio: number;
  readonly bladeCount: number;
}): ScaleEffect {
  const change = finite(dragChange, "drag change", "");
  const solidity = positive(chordRatio, "chord ratio", "") * positive(bladeCount, "number of blades", "");
  return {
    thrust: -0.3 * change * positive(pitchRatio, "pitch ratio", "") * solidity,
    torque: 0.25 * change * solidity,
  };
}

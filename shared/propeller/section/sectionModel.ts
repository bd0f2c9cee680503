import { roughDrag, smoothDrag } from "./sectionDrag.ts";
import type { SectionLaw } from "./sectionLaw.ts";
import {
  CAMBER_LIFT_GAIN,
  EDGE_SUCTION,
  GREATEST_LIFT,
  GREATEST_LIFT_GROWTH,
  LIFT_LOSS,
  LIFT_SLOPE_THICKNESS,
  REVERSED_LIFT,
  STRAIGHT_PART,
} from "./sectionModel.data.ts";
import { type StallPoint, viternaDrag, viternaLift, viternaOf } from "./viterna.ts";

export interface ModelledSection {
  /** t/c. */ readonly thicknessRatio: number;
  /** f/c, positive towards the back. */ readonly camberRatio: number;
  /** c, m. */ readonly chord: number;
  /** Re of the chord. */ readonly reynolds: number;
  /** k_p, m. */ readonly roughness: number;
  /** Factor on the lift. */ readonly liftFactor: number;
  /** Factor on the profile drag. */ readonly dragFactor: number;
  /** Length of the blade over its mean chord. */ readonly aspectRatio: number;
}

/** What the flow that follows the section does, before the blade stalls on either side. */
export interface AttachedFlow {
  /** Per rad. */ readonly liftSlope: number;
  /** α_0, rad. */ readonly zeroLiftAngle: number;
  /** Drag coefficient where it is least. */ readonly leastDrag: number;
  /** Lift coefficient at which the drag is least. */ readonly liftOfLeastDrag: number;
  /** Growth of the drag with (C_L - that lift)². */ readonly dragOfLift: number;
  /** Greatest lift coefficient, back and face. */ readonly greatestLift: number;
  readonly leastLift: number;
}

/**
 * Lift and drag of a small, printed blade section before it stalls.
 *
 *   a = 2π (1 + 0.77 t/c) (1 - λ/√Re),   α_0 = -2 f/c,   C_L = a (α - α_0)
 *   C_D = C_D0 + (1 - s)/a (C_L - a |α_0|)²
 *   C_L,max = C_1 + C_2 log₁₀(Re/1e5) ± ½ a |α_0|
 *
 * Thin-aerofoil theory with the loss that the boundary layer takes, which falls with Re as its thickness does.
 *
 * Source   thin-aerofoil theory of the circular arc: Abbott & von Doenhoff, Theory of Wing Sections, ch. 4; thickness:
 *          Joukowski; friction: `sectionDrag`; λ, s, C_1 fitted and C_2 taken as in `sectionModel.data.ts`.
 * Error    the least certain part of a prediction: see `residuals` in `researchPropellers.data.ts`.
 */
export function attachedFlow(section: ModelledSection): AttachedFlow {
  const { thicknessRatio, camberRatio, chord, reynolds: Re, roughness, liftFactor, dragFactor } = section;
  const viscous = 1 / (1 + LIFT_LOSS / Math.sqrt(Re));
  const liftSlope = liftFactor * 2 * Math.PI * (1 + LIFT_SLOPE_THICKNESS * thicknessRatio) * viscous;
  const zeroLiftAngle = -2 * camberRatio;
  const camberLift = -liftSlope * zeroLiftAngle;
  const plain = liftFactor * (GREATEST_LIFT + GREATEST_LIFT_GROWTH * Math.log10(Re / 1e5));
  const gain = CAMBER_LIFT_GAIN * camberLift;
  return {
    liftSlope,
    zeroLiftAngle,
    leastDrag: dragFactor * (1 + 2 * thicknessRatio) * Math.max(smoothDrag(Re), roughDrag(chord, roughness)),
    liftOfLeastDrag: camberLift,
    dragOfLift: (dragFactor * (1 - EDGE_SUCTION)) / liftSlope,
    greatestLift: plain + gain,
    leastLift: gain - plain,
  };
}

/**
 * The law of a section over the full circle: attached flow, past stall the plate of Viterna & Corrigan, and flow from
 * behind as the mirror image of that from ahead with 0.7 of its lift.
 */
export function modelledLaw(section: ModelledSection): SectionLaw {
  const flow = attachedFlow(section);
  const { liftSlope: a, zeroLiftAngle: alpha0, leastDrag, liftOfLeastDrag, dragOfLift } = flow;
  const dragAt = (lift: number) => leastDrag + dragOfLift * (lift - liftOfLeastDrag) ** 2;
  const roundness = (2 - STRAIGHT_PART) / a;
  const upper = stallPoint(flow.greatestLift, alpha0 + flow.greatestLift * roundness, dragAt);
  const lower = stallPoint(-flow.leastLift, -alpha0 - flow.leastLift * roundness, (lift) => dragAt(-lift));
  const [back, face] = [viternaOf(upper, section.aspectRatio), viternaOf(lower, section.aspectRatio)];
  const [straightTop, straightBottom] = [STRAIGHT_PART * flow.greatestLift, STRAIGHT_PART * flow.leastLift];

  return (alpha, out) => {
    const reversed = alpha > Math.PI / 2 || alpha < -Math.PI / 2;
    const angle = reversed ? (alpha > 0 ? Math.PI : -Math.PI) - alpha : alpha;
    if (angle > upper.angle) {
      out[0] = viternaLift(back, angle);
      out[1] = viternaDrag(back, angle);
    } else if (angle < -lower.angle) {
      out[0] = -viternaLift(face, -angle);
      out[1] = viternaDrag(face, -angle);
    } else {
      const straight = a * (angle - alpha0);
      const lift = rounded(rounded(straight, straightTop, flow.greatestLift), straightBottom, flow.leastLift);
      out[0] = lift;
      out[1] = leastDrag + dragOfLift * (lift - liftOfLeastDrag) ** 2;
    }
    if (reversed) out[0]! *= -REVERSED_LIFT;
  };
}

/** `lift` beyond `straight` on a parabola that is level where it reaches `greatest`. */
function rounded(lift: number, straight: number, greatest: number): number {
  const beyond = (lift - straight) / (greatest - straight);
  return beyond <= 0 ? lift : straight + (greatest - straight) * beyond * (1 - beyond / 4);
}

function stallPoint(lift: number, angle: number, dragAt: (lift: number) => number): StallPoint {
  return { angle, lift, drag: dragAt(lift) };
}

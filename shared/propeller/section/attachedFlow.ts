import { broadBlade } from "./broadBlade.ts";
import { type DragOfSection, profileDrag } from "./sectionDrag.ts";
import {
  CAMBER_LIFT_GAIN,
  GREATEST_LIFT,
  GREATEST_LIFT_GROWTH,
  LIFT_LOSS,
  LIFT_SLOPE_THICKNESS,
  STALL_DRAG,
  STRAIGHT_PART,
  SUCTION_LOST,
} from "./sectionModel.data.ts";

export interface ModelledSection extends DragOfSection {
  /** f/c, positive towards the back. */ readonly camberRatio: number;
  /** Factor on the lift. */ readonly liftFactor: number;
  /** Factor on the profile drag. */ readonly dragFactor: number;
  /** Length of the blade over its mean chord. */ readonly aspectRatio: number;
  /** c/r of the turning section; 0 in straight flow. */ readonly chordToRadius: number;
}

/** A section before it stalls on either side. */
export interface AttachedFlow {
  /** a, per rad. */ readonly liftSlope: number;
  /** α_0, rad. */ readonly zeroLiftAngle: number;
  /** C_D0, where the drag is least. */ readonly leastDrag: number;
  /** C_L0, lift coefficient there: that which the camber makes at zero incidence. */ readonly liftOfLeastDrag: number;
  /** Growth of the drag with (C_L - C_L0)². */ readonly dragOfLift: number;
  /** Drag that separation has added where the lift is greatest. */ readonly dragOfStall: number;
  /** Greatest lift coefficient towards the back, and towards the face (negative). */
  readonly greatestLift: number;
  readonly leastLift: number;
}

/**
 * Lift and drag of a small, printed blade section before it stalls.
 *
 *   C_L = a (α - α_0),   a = 2π k (1 + 0.77 t/c) / (1 + λ/√Re),   α_0 = -2 k f/c
 *   C_D = C_D0 + s/a (C_L - C_L0)² + d/√Re · b²
 *   greatest C_L = C_1 + C_2 log₁₀(Re/1e5) + ½ a |α_0|, towards the face less by the camber instead of more
 *
 * k is `broadBlade`; s the part of the suction on the nose that is lost; b how far the section has come from the end of its
 * straight lift (0) to its greatest lift (1). What the boundary layer takes goes with its thickness, 1/√Re: lift, and the
 * drag where it lets go.
 *
 * Source   thin-aerofoil theory of a circular arc, Abbott & von Doenhoff, Theory of Wing Sections (1959), ch. 4; friction
 *          as `sectionDrag`; numbers as `sectionModel.data.ts`.
 * Range    as `sectionDrag`; camber up to a fifth of the chord.
 * Error    the least certain part of a prediction: `modelEvidence` puts it beside measurements.
 */
export function attachedFlow(section: ModelledSection): AttachedFlow {
  const { thicknessRatio, camberRatio, reynolds, liftFactor, dragFactor } = section;
  const broad = broadBlade(section.aspectRatio);
  const layer = 1 / Math.sqrt(reynolds);
  const slope = (broad * 2 * Math.PI * (1 + LIFT_SLOPE_THICKNESS * thicknessRatio)) / (1 + LIFT_LOSS * layer);
  const zeroLiftAngle = -2 * broad * camberRatio;
  const camberLift = -slope * zeroLiftAngle;
  const plain = GREATEST_LIFT + GREATEST_LIFT_GROWTH * Math.log10(reynolds / 1e5);
  const gain = CAMBER_LIFT_GAIN * camberLift;
  return {
    liftSlope: liftFactor * slope,
    zeroLiftAngle,
    leastDrag: dragFactor * profileDrag(section),
    liftOfLeastDrag: liftFactor * camberLift,
    dragOfLift: (dragFactor * SUCTION_LOST) / (liftFactor * slope),
    dragOfStall: dragFactor * STALL_DRAG * layer,
    greatestLift: liftFactor * (gain + plain),
    leastLift: liftFactor * (gain - plain),
  };
}

/**
 * Writes lift and drag coefficient at `straight`, the lift of the straight line a (α - α_0), up to the greatest lift on
 * either side: straight as far as a part of it, then a parabola that ends level at the greatest lift.
 *
 * Source   the rounding and the drag it brings as in `sectionModel.data.ts`.
 * Range    `straight` up to where the parabola is level; beyond it `ModelledLaw` has the stalled plate.
 */
export function attachedCoefficients(flow: AttachedFlow, straight: number, out: Float64Array): void {
  const limit = straight > 0 ? flow.greatestLift : flow.leastLift;
  const over = (straight / limit - STRAIGHT_PART) / (1 - STRAIGHT_PART);
  const lift = over > 0 ? limit * (STRAIGHT_PART + (1 - STRAIGHT_PART) * over * (1 - over / 4)) : straight;
  out[0] = lift;
  out[1] = leastAndLiftDrag(flow, lift) + (over > 0 ? (flow.dragOfStall * over * over) / 4 : 0);
}

/** Drag without what separation adds. */
export function leastAndLiftDrag({ leastDrag, dragOfLift, liftOfLeastDrag }: AttachedFlow, lift: number): number {
  return leastDrag + dragOfLift * (lift - liftOfLeastDrag) * (lift - liftOfLeastDrag);
}

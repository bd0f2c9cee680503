import {
  type AttachedFlow,
  attachedCoefficients,
  attachedFlow,
  leastAndLiftDrag,
  type ModelledSection,
} from "./attachedFlow.ts";
import type { SectionLaw } from "./sectionLaw.ts";
import { DELAY_ENDS, DELAY_FADES, REVERSED_LIFT, STALL_DELAY, STRAIGHT_PART } from "./sectionModel.data.ts";
import { type Viterna, viternaDrag, viternaLift, viternaOf } from "./viterna.ts";

/**
 * Lift and drag of a modelled section over the full circle: `attachedFlow`, past stall the plate of Viterna & Corrigan with
 * the lift that turning gives back, and flow from behind as the mirror image of that from ahead with 0.7 of its lift.
 *
 * Source   as `attachedFlow`, `viterna.ts` and `STALL_DELAY`.
 */
export function modelledLaw(section: ModelledSection): SectionLaw {
  const flow = attachedFlow(section);
  const { liftSlope, zeroLiftAngle } = flow;
  // The parabola of the lift is level where the straight line has come to 2 - STRAIGHT_PART of the greatest lift.
  const back = zeroLiftAngle + ((2 - STRAIGHT_PART) * flow.greatestLift) / liftSlope;
  const face = zeroLiftAngle + ((2 - STRAIGHT_PART) * flow.leastLift) / liftSlope;
  const backPlate = plateBeyond(flow, back, flow.greatestLift, section.aspectRatio);
  const facePlate = plateBeyond(flow, face, flow.leastLift, section.aspectRatio);
  const delay = Math.tanh(STALL_DELAY * section.chordToRadius * section.chordToRadius);

  const coefficients = (alpha: number, out: Float64Array) => {
    const reversed = alpha > Math.PI / 2 || alpha < -Math.PI / 2;
    const angle = reversed ? (alpha > 0 ? Math.PI : -Math.PI) - alpha : alpha;
    if (angle > back) stalled(backPlate, angle, 1, out);
    else if (angle < face) stalled(facePlate, -angle, -1, out);
    else attachedCoefficients(flow, liftSlope * (angle - zeroLiftAngle), out);
    const whole = delayAt(angle);
    if (whole > 0) out[0]! += delay * whole * (unstalledLift(liftSlope, angle - zeroLiftAngle) - out[0]!);
    if (reversed) out[0]! *= -REVERSED_LIFT;
  };
  return { zeroLiftAngle, coefficients };
}

function plateBeyond(flow: AttachedFlow, angle: number, lift: number, aspectRatio: number): Viterna {
  const drag = leastAndLiftDrag(flow, lift) + flow.dragOfStall;
  return viternaOf({ angle: Math.abs(angle), lift: Math.abs(lift), drag }, aspectRatio);
}

function stalled(plate: Viterna, angle: number, side: 1 | -1, out: Float64Array): void {
  out[0] = side * viternaLift(plate, angle);
  out[1] = viternaDrag(plate, angle);
}

/** Part of the stall delay that is left at an angle of attack. */
function delayAt(angle: number): number {
  const size = Math.abs(angle);
  return size > DELAY_FADES ? (DELAY_ENDS - size) / (DELAY_ENDS - DELAY_FADES) : 1;
}

function unstalledLift(liftSlope: number, beyondZeroLift: number): number {
  return liftSlope * Math.sin(beyondZeroLift) * Math.cos(beyondZeroLift);
}

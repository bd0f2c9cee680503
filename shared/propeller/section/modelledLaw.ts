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
export class ModelledLaw implements SectionLaw {
  readonly zeroLiftAngle: number;
  readonly #flow: AttachedFlow;
  /** Angles of attack of the stall, rad. */
  readonly #back: number;
  readonly #face: number;
  readonly #backPlate: Viterna;
  readonly #facePlate: Viterna;
  readonly #delay: number;

  constructor(section: ModelledSection) {
    const flow = attachedFlow(section);
    const { liftSlope, zeroLiftAngle, greatestLift, leastLift } = flow;
    this.#flow = flow;
    this.zeroLiftAngle = zeroLiftAngle;
    // The parabola of the lift is level where the straight line has come to 2 - STRAIGHT_PART of the greatest lift.
    this.#back = zeroLiftAngle + ((2 - STRAIGHT_PART) * greatestLift) / liftSlope;
    this.#face = zeroLiftAngle + ((2 - STRAIGHT_PART) * leastLift) / liftSlope;
    this.#backPlate = plateBeyond(flow, this.#back, greatestLift, section.aspectRatio);
    this.#facePlate = plateBeyond(flow, this.#face, leastLift, section.aspectRatio);
    this.#delay = Math.tanh(STALL_DELAY * section.chordToRadius * section.chordToRadius);
  }

  coefficients(alpha: number, out: Float64Array): void {
    const reversed = alpha > Math.PI / 2 || alpha < -Math.PI / 2;
    const angle = reversed ? (alpha > 0 ? Math.PI : -Math.PI) - alpha : alpha;
    const { liftSlope, zeroLiftAngle } = this.#flow;
    if (angle > this.#back) stalled(this.#backPlate, angle, 1, out);
    else if (angle < this.#face) stalled(this.#facePlate, -angle, -1, out);
    else attachedCoefficients(this.#flow, liftSlope * (angle - zeroLiftAngle), out);
    const delay = this.#delay * delayLeft(angle);
    if (delay > 0) out[0]! += delay * (unstalledLift(liftSlope, angle - zeroLiftAngle) - out[0]!);
    if (reversed) out[0]! *= -REVERSED_LIFT;
  }
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
function delayLeft(angle: number): number {
  const size = Math.abs(angle);
  return size > DELAY_FADES ? (DELAY_ENDS - size) / (DELAY_ENDS - DELAY_FADES) : 1;
}

function unstalledLift(liftSlope: number, beyondZeroLift: number): number {
  return liftSlope * Math.sin(beyondZeroLift) * Math.cos(beyondZeroLift);
}

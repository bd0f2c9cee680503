import type { BladeElement, BladePower } from "../../model/bladeElements.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { finite } from "../../quantity/domain.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import type { Warning } from "../../quantity/warning.ts";
import { modelledLaw } from "../section/modelledLaw.ts";
import type { SectionLaw } from "../section/sectionLaw.ts";
import { DRAG, HUB_FACTOR, inflowAngle, LIFT, SPEED, TIP_FACTOR, workspace, wrapped } from "./annulus.ts";
import { type BladePiece, type BladeShape, bladeShape } from "./bladeShape.ts";
import { checkedGeometry } from "./checkedGeometry.ts";
import { PowerAccount } from "./powerAccount.ts";

export interface BladeRunning {
  readonly surface: BladeSurface;
  readonly fluid: FluidProperties;
  /** Rotation rate, rev/s; negative turns the propeller against its design direction. */
  readonly rotationRate: number;
  /** Speed through the water, m/s; negative is astern. */
  readonly advanceSpeed: number;
}

export interface BladeElementsRequest extends BladeRunning {
  readonly geometry: BladeGeometry;
}

export interface BladeElementsSolved {
  readonly state: "solved";
  /** N, positive forwards. */ readonly thrust: number;
  /** N·m, positive against the design direction of turning. */ readonly torque: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
  readonly advanceRatio: number;
  /** T V / P; null where the shaft gives no power or the thrust none. */ readonly efficiency: number | null;
  readonly elements: readonly BladeElement[];
  readonly power: BladePower;
  readonly warnings: readonly Warning[];
}

export interface BladeElementsFailed {
  readonly state: "failed";
  readonly reason: string;
  /** Radius of the annulus that has no solution, m. */ readonly radius: number;
}

export type BladeElementsResult = BladeElementsSolved | BladeElementsFailed;

export function bladeElements({ geometry, ...running }: BladeElementsRequest): BladeElementsResult {
  return solvedBlade(bladeShape(checkedGeometry(geometry)), running);
}

/** As `bladeElements`, for a blade that is run in many flows. */
export function solvedBlade(shape: BladeShape, running: BladeRunning): BladeElementsResult {
  const { surface, fluid } = running;
  const n = finite(running.rotationRate, "rotation rate", "rev/s");
  const V = finite(running.advanceSpeed, "advance speed", "m/s");
  if (n === 0) throw new OutOfDomain({ found: "rotation rate is 0 rev/s", needed: "a propeller that turns", mend: "" });
  const omega = 2 * Math.PI * n;
  const elements: BladeElement[] = [];
  const account = new PowerAccount(shape, V);
  const w = workspace();
  for (const piece of shape.pieces) {
    const onset = { tangential: omega * piece.radius, axial: V };
    const speed = Math.hypot(onset.tangential, V);
    const reynolds = (speed * piece.chord) / fluid.kinematicViscosity;
    const law = lawOf(piece, shape, surface, reynolds);
    const phi = inflowAngle(piece, law, -2 * piece.camberRatio, onset, w);
    if (Number.isNaN(phi)) return { state: "failed", reason: "the search for the inflow angle did not end", radius: piece.radius };
    const W = w[SPEED]! * speed;
    const [sin, cos] = [Math.sin(phi), Math.cos(phi)];
    const [lift, drag] = [w[LIFT]!, w[DRAG]!];
    const pressure = 0.5 * fluid.density * W * W * piece.chord;
    const element = {
      radius: piece.radius,
      width: piece.width,
      inflowAngle: phi,
      angleOfAttack: wrapped(piece.pitchAngle - phi),
      liftCoefficient: lift,
      dragCoefficient: drag,
      reynolds,
      thrustPerLength: pressure * (lift * cos - drag * sin),
      tangentialForcePerLength: pressure * (lift * sin + drag * cos),
      axialInduced: W * sin - V,
      tangentialInduced: onset.tangential - W * cos,
    };
    elements.push(element);
    account.add(element, pressure * drag * W, w[TIP_FACTOR]!, w[HUB_FACTOR]!);
  }
  return solution(shape, running, elements, account);
}

function lawOf(piece: BladePiece, shape: BladeShape, surface: BladeSurface, reynolds: number): SectionLaw {
  return modelledLaw({
    thicknessRatio: piece.thicknessRatio,
    camberRatio: piece.camberRatio,
    chord: piece.chord,
    reynolds,
    roughness: surface.roughness,
    liftFactor: surface.liftFactor,
    dragFactor: surface.dragFactor,
    aspectRatio: shape.aspectRatio,
    chordToRadius: piece.chord / piece.radius,
  });
}

function solution(
  shape: BladeShape,
  { fluid, rotationRate: n, advanceSpeed: V }: BladeRunning,
  elements: readonly BladeElement[],
  account: PowerAccount,
): BladeElementsSolved {
  const B = shape.bladeCount;
  let [thrust, torque] = [0, 0];
  for (const { width, radius, thrustPerLength, tangentialForcePerLength } of elements) {
    thrust += B * thrustPerLength * width;
    torque += B * tangentialForcePerLength * radius * width;
  }
  const D = shape.diameter;
  const power = account.close({ thrust, shaft: 2 * Math.PI * n * torque, density: fluid.density });
  return {
    state: "solved",
    thrust,
    torque,
    thrustCoefficient: thrust / (fluid.density * n * n * D ** 4),
    torqueCoefficient: torque / (fluid.density * n * n * D ** 5),
    advanceRatio: V / (n * D),
    efficiency: power.shaft > 0 ? power.useful / power.shaft : null,
    elements,
    power,
    warnings: [],
  };
}

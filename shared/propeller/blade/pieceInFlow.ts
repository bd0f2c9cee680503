import type { BladeElement } from "../../model/bladeElements.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { ModelledLaw } from "../section/modelledLaw.ts";
import { PolarLaw, type PolarTables } from "../section/polarTables.ts";
import type { SectionLaw } from "../section/sectionLaw.ts";
import type { BladePiece, BladeShape } from "./bladeShape.ts";
import type { PowerAccount } from "./powerAccount.ts";
import { DRAG, HUB_FACTOR, LIFT, type Onset, type RingSearch, SPEED, TIP_FACTOR, wrapped } from "./ringSearch.ts";

/** What a blade is run in, in the letters of the equations, SI. */
export interface Flow {
  readonly surface: BladeSurface;
  readonly rho: number;
  readonly nu: number;
  /** rev/s. */ readonly n: number;
  /** rad/s. */ readonly omega: number;
  readonly V: number;
}

/** A blade in a flow, while its pieces are solved one by one. */
export interface BladeRun {
  readonly shape: BladeShape;
  readonly flow: Flow;
  readonly polars: PolarTables | undefined;
  readonly search: RingSearch;
  readonly account: PowerAccount;
}

/**
 * The flow at one piece, entered into the account; or why there is none, in words.
 *
 *   dT/dr = ½ ρ W² c (C_L cos φ − C_D sin φ),   dF/dr = ½ ρ W² c (C_L sin φ + C_D cos φ)   of one blade, N/m
 *
 * Source   blade-element momentum: e.g. Carlton, Marine Propellers and Propulsion, ch. 8, from memory; the angle φ by
 *          `RingSearch`.
 * Range    any onset; Re is that of the undisturbed onset, sqrt(V² + (ω r)²) c/ν.
 */
export function elementOf(
  piece: BladePiece,
  { shape, flow, polars, search, account }: BladeRun,
): BladeElement | string {
  const { surface, rho, nu, omega, V } = flow;
  const onset = { tangential: omega * piece.radius, axial: V };
  const speed = Math.hypot(onset.tangential, V);
  const reynolds = (speed * piece.chord) / nu;
  const law = polars ? new PolarLaw(polars, reynolds, surface) : lawOf(piece, shape.aspectRatio, surface, reynolds);
  const phi = solvedAngle(search, piece, law, onset);
  if (typeof phi === "string") return phi;
  const w = search.found;
  const W = w[SPEED]! * speed;
  const sin = Math.sin(phi);
  const cos = Math.cos(phi);
  const lift = w[LIFT]!;
  const drag = w[DRAG]!;
  const pressure = 0.5 * rho * W * W * piece.chord;
  const element: BladeElement = {
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
  account.add(element, { dragPower: pressure * drag * W, tipFactor: w[TIP_FACTOR]!, hubFactor: w[HUB_FACTOR]! });
  return element;
}

function solvedAngle(search: RingSearch, piece: BladePiece, law: SectionLaw, onset: Onset): number | string {
  try {
    const phi = search.inflowAngle(piece, law, onset);
    return Number.isNaN(phi) ? "the search for the inflow angle ran out of steps" : phi;
  } catch (error) {
    // Only a section law that gives no numbers can bring the search to this.
    if (error instanceof OutOfDomain) return error.message;
    throw error;
  }
}

function lawOf(piece: BladePiece, aspectRatio: number, surface: BladeSurface, reynolds: number): SectionLaw {
  const { thicknessRatio, camberRatio, chord, radius } = piece;
  const { roughness, liftFactor, dragFactor } = surface;
  const chordToRadius = chord / radius;
  return new ModelledLaw({
    thicknessRatio,
    camberRatio,
    chord,
    reynolds,
    roughness,
    liftFactor,
    dragFactor,
    aspectRatio,
    chordToRadius,
  });
}

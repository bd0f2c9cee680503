import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { SectionLaw } from "../section/sectionLaw.ts";
import { carryingStream } from "./discFlow.ts";

/** A ring of the disc with the sections of the blades in it. */
export interface Annulus {
  /** θ, rad. */ readonly pitchAngle: number;
  /** σ = B c / 2πr. */ readonly solidity: number;
  /** B (R - r) / 2r. */ readonly tipExponent: number;
  /** B (r - r_h) / 2r_h; infinite without hub. */ readonly hubExponent: number;
}

/** Flow towards a section as far as the blades induce none: Ωr and V, m/s. */
export interface Onset {
  readonly tangential: number;
  readonly axial: number;
}

/** Places in `RingSearch.found`. The first two are written by the section law. */
export const LIFT = 0;
export const DRAG = 1;
export const TIP_FACTOR = 2;
export const HUB_FACTOR = 3;
/** Speed at the blade over the onset speed. */
export const SPEED = 4;

/**
 * Finds the inflow angle of one ring after the other; made once for a blade, so that the search allocates nothing.
 *
 * The unknown is φ alone. From it follow the force on the blade and, with it parallel, the velocity that the blades
 * induce; so it follows which onset flow a = (H, G) W it takes, and φ is right where a is parallel to b = (Ωr, V):
 *
 *   residual = G Ωr - H V,   G = sin φ - K/m,   H = cos φ + K_t/m,   K = σ c_n / 4F,   K_t = σ c_t / 4F
 *   c_n = C_L cos φ - C_D sin φ,   c_t = C_L sin φ + C_D cos φ,   m from `carryingStream`
 *   F = F_tip F_hub,   F_i = (2/π) arccos exp(-e_i / |sin φ|)
 *
 * The root can not be missed: a · (cos φ, sin φ) = 1 + σ C_D / 4F m is never below 1, so a stays within a right angle of
 * φ, and the residual is negative at β - π/2 and positive at β + π/2, β the angle of b. Where C_L = 0 a has the direction
 * φ itself, so between β and the angle that brings the section to zero lift there is a root as well: the usual one.
 *
 * Source   blade-element momentum: Glauert, Airplane Propellers (1935); one unknown per annulus: Ning (2014, 2021) as in
 *          `discFlow.ts`; tip and hub loss: Prandtl, in Betz, Schraubenpropeller mit geringstem Energieverlust (1919).
 */
export class RingSearch {
  /** Coefficients, loss factors and speed of the last ring. */
  readonly found = new Float64Array(5);
  #ring: Annulus = NO_RING;
  #law: SectionLaw = NO_LAW;
  #onset: Onset = { tangential: 0, axial: 0 };
  readonly #residual = (phi: number) => this.#residualAt(phi);

  /** φ of a ring, rad (-π to π); NaN where the search did not end. */
  inflowAngle(ring: Annulus, law: SectionLaw, onset: Onset): number {
    this.#ring = ring;
    this.#law = law;
    this.#onset = onset;
    const beta = Math.atan2(onset.axial, onset.tangential);
    const direction = this.#residualAt(beta) < 0 ? 1 : -1;
    const toZeroLift = wrapped(ring.pitchAngle - law.zeroLiftAngle - beta);
    // Past stall and in flow from behind the lift may vanish elsewhere; then the whole right angle is searched.
    const isUsual = toZeroLift * direction > LEAST_BRACKET && Math.abs(toZeroLift) < Math.PI / 2;
    const end = beta + (isUsual ? toZeroLift : (direction * Math.PI) / 2);
    const { root, converged } = bracketedRoot(this.#residual, beta, end, SEARCH);
    this.#residualAt(root);
    return converged ? wrapped(root) : Number.NaN;
  }

  #residualAt(phi: number): number {
    const { pitchAngle, solidity, tipExponent, hubExponent } = this.#ring;
    const w = this.found;
    this.#law.coefficients(wrapped(pitchAngle - phi), w);
    const lift = w[LIFT]!;
    const drag = w[DRAG]!;
    const sine = Math.sin(phi);
    const cosine = Math.cos(phi);
    const tip = lossFactor(tipExponent, Math.abs(sine));
    const hub = lossFactor(hubExponent, Math.abs(sine));
    const scale = solidity / (4 * tip * hub);
    const K = scale * (lift * cosine - drag * sine);
    const stream = Math.max(carryingStream(K, sine), LEAST_STREAM);
    const G = sine - K / stream;
    const H = cosine + (scale * (lift * sine + drag * cosine)) / stream;
    w[TIP_FACTOR] = tip;
    w[HUB_FACTOR] = hub;
    w[SPEED] = 1 / Math.sqrt(H * H + G * G);
    return G * this.#onset.tangential - H * this.#onset.axial;
  }
}

const NO_RING: Annulus = { pitchAngle: 0, solidity: 0, tipExponent: 1, hubExponent: 1 };
const NO_LAW: SectionLaw = { zeroLiftAngle: 0, coefficients: () => undefined };

/** rad; in a narrower bracket rounding might hide the change of sign. */
const LEAST_BRACKET = 1e-3;
const SEARCH = { relativeTolerance: 1e-10 };

/** Part of the speed at the blade below which the carrying stream does not sink: swirl at rest and no thrust stays bounded. */
const LEAST_STREAM = 1e-9;

function lossFactor(exponent: number, steep: number): number {
  const decay = exponent / steep;
  // Beyond 36 the factor is 1 to the last digit.
  return decay > 36 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-decay));
}

/** An angle in rad, brought into -π to π by whole turns. */
export function wrapped(angle: number): number {
  return angle > Math.PI || angle < -Math.PI ? angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI)) : angle;
}

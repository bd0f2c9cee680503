import type { BladeElement, BladePower } from "../../model/bladeElements.ts";
import { discArea } from "../coefficients.ts";
import { inducedVelocity } from "../momentum.ts";
import type { BladeShape } from "./bladeShape.ts";

/** Of one blade: power rubbed away per length, W/m, and the loss factors of the ring. */
interface PieceLosses {
  readonly dragPower: number;
  readonly tipFactor: number;
  readonly hubFactor: number;
}

/**
 * Adds up where the power of the shaft goes, piece by piece. For each piece, exactly,
 *
 *   Ω r F_t = T V + T u + F_t v + D W
 *
 * (T, F_t the thrust and the force against the turning, D the drag, u and v the induced velocities): what the blade takes
 * is useful, left in the stream along the shaft, left in it as rotation, or rubbed away. Of T u the part an annulus of
 * endlessly many blades would need for the same thrust, T ū with ū (V + ū) = F u (V + u), counts as induced; the rest is
 * the price of few blades, shared between tip and hub as 1 - F_tip and F_tip (1 - F_hub). Of the induced part what one
 * even disc of the whole diameter would need is `ideal`.
 */
export class PowerAccount {
  readonly #bladeCount: number;
  readonly #area: number;
  readonly #speed: number;
  #axial = 0;
  #swirl = 0;
  #tip = 0;
  #hub = 0;
  #profile = 0;

  constructor({ bladeCount, diameter }: BladeShape, advanceSpeed: number) {
    this.#bladeCount = bladeCount;
    this.#area = discArea(diameter);
    this.#speed = advanceSpeed;
  }

  add(element: BladeElement, { dragPower, tipFactor, hubFactor }: PieceLosses): void {
    const span = this.#bladeCount * element.width;
    const thrust = element.thrustPerLength * span;
    const u = element.axialInduced;
    const even = evenInduced(u, this.#speed, tipFactor * hubFactor);
    const ofFewBlades = thrust * (u - even);
    const missing = 1 - tipFactor * hubFactor;
    const ofTip = missing > 0 ? (ofFewBlades * (1 - tipFactor)) / missing : 0;
    this.#axial += thrust * even;
    this.#tip += ofTip;
    this.#hub += ofFewBlades - ofTip;
    this.#swirl += element.tangentialForcePerLength * span * element.tangentialInduced;
    this.#profile += dragPower * span;
  }

  /** The account of a thrust (N) and shaft power (W) in a fluid of a density (kg/m³). */
  closed({ thrust, shaft, density }: { thrust: number; shaft: number; density: number }): BladePower {
    const V = this.#speed;
    const pushes = thrust * V >= 0;
    const disc = { thrust: Math.abs(thrust), discArea: this.#area, density, advanceSpeed: Math.abs(V) };
    const ideal = pushes ? disc.thrust * inducedVelocity(disc) : 0;
    return {
      shaft,
      useful: thrust * V,
      ideal,
      induced: this.#axial - ideal,
      swirl: this.#swirl,
      tip: this.#tip,
      hub: this.#hub,
      profile: this.#profile,
    };
  }
}

/** ū of the same thrust spread over the ring: ū |V + ū| = F u |V + u| where the stream runs through; F u where it turns. */
function evenInduced(u: number, V: number, F: number): number {
  const through = V + u;
  const s = Math.sign(through);
  const square = (V * V) / 4 + s * F * u * Math.abs(through);
  if (s === 0 || square < 0) return F * u;
  return s * Math.sqrt(square) - V / 2;
}

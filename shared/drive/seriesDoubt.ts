import type { Doubtful, PropellerCurve } from "../model/drivePropeller.ts";
import { decadeBelow } from "../propeller/carryOver/reynoldsFactor.ts";

/**
 * The curve of a published series as a small or printed propeller may be counted on it: the numbers stay those of the
 * series, the doubt is that of a yardstick. What a decade of the Reynolds number took from a small research propeller is
 * an error between none and all of it, to one side, that is not corrected for.
 *
 *   u² = u_fit² + (K δ)²/3,   δ the relative change over the decade;   both changes come together, so u_T u_Q r = −K_T δ_T K_Q δ_Q/3
 *
 * Source   JCGM 100:2008, F.2.4.5 (an error between 0 and a that is not corrected: a/2 and a/(2√3) in quadrature, a/√3) with 4.3.7;
 *          the change by Deters, Ananda & Selig, Reynolds number effects on the performance of small-scale propellers, AIAA
 *          2014-2151, as `reynoldsFactor`.
 * Assumes  a smooth, well-made copy; layers of a printer and blunt edges are not in it.
 */
export function asYardstick(curve: PropellerCurve): PropellerCurve {
  const { thrust, torque } = decadeBelow();
  const [ofThrust, ofTorque] = [Math.abs(thrust - 1) / Math.sqrt(3), Math.abs(torque - 1) / Math.sqrt(3)];
  const thrustCoefficient = widened(curve.thrustCoefficient, ofThrust);
  const torqueCoefficient = widened(curve.torqueCoefficient, ofTorque);
  const shared = ofThrust * thrustCoefficient.value * ofTorque * torqueCoefficient.value;
  const correlation = -shared / (thrustCoefficient.standardUncertainty * torqueCoefficient.standardUncertainty);
  return { ...curve, thrustCoefficient, torqueCoefficient, correlation };
}

function widened({ value, standardUncertainty }: Doubtful, part: number): Doubtful {
  return { value, standardUncertainty: Math.hypot(standardUncertainty, part * value) };
}

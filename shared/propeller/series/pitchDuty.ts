import type { BestPitchRequest, PitchCandidate } from "../../model/bestPitch.ts";
import { discArea } from "../coefficients.ts";
import { advanceRatioOfDuty, REST_SPEED } from "../dutyAdvanceRatio.ts";
import { inducedVelocity } from "../momentum.ts";
import { type AdvancePolynomial, alongAdvance, coefficientAt, POWERS } from "./pitchPlane.ts";
import { type SeriesPlanes, seriesPlanes } from "./seriesPlanes.ts";

/** A duty of a series, ready to be asked for one pitch ratio after the other without making garbage. */
export interface PitchDuty {
  readonly request: BestPitchRequest;
  readonly planes: SeriesPlanes;
  readonly thrust: AdvancePolynomial;
  readonly torque: AdvancePolynomial;
}

/** The duty of a request, with room for the curves of a pitch. Range as `seriesPlanes`. */
export function pitchDuty(request: BestPitchRequest): PitchDuty {
  // The planes do not depend on the pitch; any stands in for it.
  const planes = seriesPlanes({ ...request.series, pitchRatio: 1 });
  return { request, planes, thrust: new Float64Array(POWERS), torque: new Float64Array(POWERS) };
}

/**
 * The propeller of `pitchRatio` (P/D, 1) that does the duty; null where none does.
 *
 *   J = V/(n D),   T = K_T ρ n² D⁴,   Q = K_Q ρ n² D⁵,   P = 2π n Q,   η = T V/P,   merit = T (V + v)/P
 *
 * Source   definitions of the coefficients: ITTC Symbols and Terminology List (2021); v and the merit as `momentum.ts`.
 * Error    that of the series; J to 1e-12 of itself.
 */
export function candidateAt(duty: PitchDuty, pitchRatio: number): PitchCandidate | null {
  const { request, planes, thrust, torque } = duty;
  alongAdvance(planes.thrust, pitchRatio, thrust);
  alongAdvance(planes.torque, pitchRatio, torque);
  const running = runningOf(duty);
  if (running === null) return null;
  const { diameter: D, rotationRate: n } = running;
  const { advanceSpeed: V, density: rho } = request;
  const J = V / (n * D);
  const T = coefficientAt(thrust, J) * rho * n ** 2 * D ** 4;
  const Q = coefficientAt(torque, J) * rho * n ** 2 * D ** 5;
  if (!(T > 0 && Q > 0)) return null;
  const P = 2 * Math.PI * n * Q;
  const idealPower = T * (V + inducedVelocity({ thrust: T, discArea: discArea(D), density: rho, advanceSpeed: V }));
  return {
    ...{ pitchRatio, advanceRatio: J, diameter: D, rotationRate: n, thrust: T, torque: Q, shaftPower: P },
    ...{ efficiency: (T * V) / P, merit: idealPower / P },
  };
}

interface Running {
  readonly diameter: number;
  readonly rotationRate: number;
}

/**
 * Diameter and rotation rate with which the pitch of `duty` meets it. With one of them open, thrust or power becomes a
 * condition on J alone: K(J) = c J^m, with V/(nJ) for D or V/(DJ) for n; at rest it is solved in closed form.
 */
function runningOf({ request, thrust, torque }: PitchDuty): Running | null {
  const { fixed, duty, advanceSpeed: V, density: rho } = request;
  if (fixed.given === "both") return fixed;
  const isThrust = duty.given === "thrust";
  const K = isThrust ? thrust : torque;
  // T = K_T ρ n² D⁴ and P/2π = K_Q ρ n³ D⁵.
  const asked = (isThrust ? duty.thrust : duty.shaftPower / (2 * Math.PI)) / rho;
  const [ofRate, ofDiameter] = isThrust ? [2, 4] : [3, 5];
  const openPower = fixed.given === "diameter" ? ofRate : ofDiameter;
  const known = fixed.given === "diameter" ? fixed.diameter ** ofDiameter : fixed.rotationRate ** ofRate;
  let open: number | null;
  if (V < REST_SPEED) {
    open = K[0]! > 0 ? (asked / (known * K[0]!)) ** (1 / openPower) : null;
  } else {
    const other = fixed.given === "diameter" ? fixed.diameter : fixed.rotationRate;
    const c = (asked / known) * (other / V) ** openPower;
    const J = advanceRatioOfDuty((at) => coefficientAt(K, at), c, openPower);
    open = J === null ? null : V / (other * J);
  }
  if (open === null || !(open > 0 && Number.isFinite(open))) return null;
  return fixed.given === "diameter"
    ? { diameter: fixed.diameter, rotationRate: open }
    : { diameter: open, rotationRate: fixed.rotationRate };
}

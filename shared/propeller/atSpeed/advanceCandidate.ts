import { polynomial } from "../../fluid/polynomial.ts";
import type { AdvanceSource, ThrustAtSpeedRequest } from "../../model/thrustAtSpeed.ts";
import { discArea, TORQUE_OVER_POWER_COEFFICIENT, thrustCoefficient } from "../coefficients.ts";
import { firstZero } from "../firstZero.ts";
import { idealThrust } from "../momentum.ts";
import { polynomialsAt } from "../series/openWaterOfSeries.ts";
import { coefficientAt } from "../series/pitchPlane.ts";
import { requireCurve } from "../series/seriesCurve.ts";
import { staticMerit } from "../staticMerit.ts";

/** K_T(J) and K_Q(J) of a propeller from one source. */
export interface AdvanceCandidate {
  readonly source: AdvanceSource;
  readonly thrust: (J: number) => number;
  readonly torque: (J: number) => number;
  /** Where the thrust ends; null where the curve does not get there. */
  readonly zeroThrust: number | null;
  /** Greatest J the curve is followed to: zero thrust, or its own end. */
  readonly end: number;
}

/** Without a pitch momentum theory does not know where the thrust ends; it is followed no further than this. */
const MOMENTUM_END = 1;

/**
 * The curves a request allows, in order of trust: measured at speed; a series, then blade elements, each scaled by one
 * factor for K_T and one for K_Q to pass through the point at rest; momentum theory alone with the static merit kept.
 *
 * Throws   OutOfDomain for a series outside its range, unless asked for.
 */
export function advanceCandidates(request: ThrustAtSpeedRequest): AdvanceCandidate[] {
  return [measured(request), scaledSeries(request), scaledBlades(request), momentumAlone(request)].filter(
    (candidate) => candidate !== null,
  );
}

function measured({ openWater }: ThrustAtSpeedRequest): AdvanceCandidate | null {
  if (openWater === undefined) return null;
  const { thrustCurve, powerCurve, range } = openWater;
  // Followed half as far again as it was measured, and flagged there.
  return candidate(
    "openWater",
    (J) => polynomial(thrustCurve.coefficients, J),
    (J) => polynomial(powerCurve.coefficients, J) * TORQUE_OVER_POWER_COEFFICIENT,
    1.5 * range[1],
  );
}

function scaledSeries({ series, bollard }: ThrustAtSpeedRequest): AdvanceCandidate | null {
  if (series === undefined) return null;
  const polynomials = polynomialsAt({ series });
  const end = requireCurve(polynomials);
  const { thrust, torque } = polynomials;
  return scaledThrough(
    bollard,
    "series",
    (J) => coefficientAt(thrust, J),
    (J) => coefficientAt(torque, J),
    end,
  );
}

function scaledBlades({ bladeElements, bollard }: ThrustAtSpeedRequest): AdvanceCandidate | null {
  if (bladeElements === undefined) return null;
  const J = bladeElements.map(({ advanceRatio }) => advanceRatio);
  const thrust = interpolated(
    J,
    bladeElements.map((point) => point.thrustCoefficient),
  );
  const torque = interpolated(
    J,
    bladeElements.map((point) => point.torqueCoefficient),
  );
  if (!(thrust(0) > 0 && torque(0) > 0)) return null;
  return scaledThrough(bollard, "bladeElements", thrust, torque, J.at(-1)!);
}

/**
 * Momentum theory with the static merit of the propeller and a torque coefficient that does not fall with speed:
 * K_T = T/(ρ n² D⁴) of the ideal thrust from FM times the shaft power.
 */
function momentumAlone({ bollard, nozzleAreaRatio }: ThrustAtSpeedRequest): AdvanceCandidate {
  const K_Q = bollard.torqueCoefficient.value;
  const unit = { density: 1, rotationRate: 1, diameter: 1 };
  const powerCoefficient = K_Q / TORQUE_OVER_POWER_COEFFICIENT;
  const merit = staticMerit({ thrustCoefficient: bollard.thrustCoefficient.value, powerCoefficient });
  const ideal = { density: 1, discArea: discArea(1), nozzleAreaRatio };
  // A nozzle's own ideal merit is sqrt(2σ), so what the propeller makes of the power is counted against that.
  const used = powerCoefficient * (nozzleAreaRatio === null ? merit : merit / Math.sqrt(2 * nozzleAreaRatio));
  const thrust = (J: number) =>
    thrustCoefficient({ ...unit, thrust: idealThrust({ ...ideal, shaftPower: used, advanceSpeed: J }) });
  return { source: "momentum", thrust, torque: () => K_Q, zeroThrust: null, end: MOMENTUM_END };
}

function scaledThrough(
  { thrustCoefficient, torqueCoefficient }: ThrustAtSpeedRequest["bollard"],
  source: AdvanceSource,
  thrust: (J: number) => number,
  torque: (J: number) => number,
  end: number,
): AdvanceCandidate {
  const ofThrust = thrustCoefficient.value / thrust(0);
  const ofTorque = torqueCoefficient.value / torque(0);
  return candidate(
    source,
    (J) => ofThrust * thrust(J),
    (J) => ofTorque * torque(J),
    end,
  );
}

function candidate(
  source: AdvanceSource,
  thrust: (J: number) => number,
  torque: (J: number) => number,
  last: number,
): AdvanceCandidate {
  const zero = firstZero(thrust);
  const isReached = zero !== null && zero <= last * (1 + 1e-9);
  return { source, thrust, torque, zeroThrust: isReached ? zero : null, end: isReached ? zero : last };
}

/** Straight lines between points in rising order of `x`, carried on level before the first and after the last. */
function interpolated(x: readonly number[], y: readonly number[]): (at: number) => number {
  return (at) => {
    const above = x.findIndex((xi) => xi >= at);
    if (above < 0) return y.at(-1)!;
    if (above === 0) return y[0]!;
    const [x0, x1, y0, y1] = [x[above - 1]!, x[above]!, y[above - 1]!, y[above]!];
    return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
  };
}

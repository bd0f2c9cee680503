import type { SpeedPoint, ThrustAtSpeed, ThrustAtSpeedRequest } from "../../model/thrustAtSpeed.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { discArea, TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import { idealThrust } from "../momentum.ts";
import { SOURCE_REASONS, sampleAt, thrustUncertainty } from "./advanceBand.ts";
import { type AdvanceCandidate, advanceCandidates } from "./advanceCandidate.ts";
import { fixedRunning } from "./fixedRunning.ts";
import { speedWarnings } from "./speedWarnings.ts";

const SAMPLES = 40;

/**
 * Thrust of a propeller at speed, for a fixed rotation rate or a fixed shaft power, from what is known of it at rest
 * and the best curve K_T(J), K_Q(J) there is: measured; a series or blade elements scaled through the point at rest;
 * momentum theory alone.
 *
 *   T = K_T(J) ρ n² D⁴,   P = 2π K_Q(J) ρ n³ D⁵,   J = V/(n D)
 *
 * The band holds the doubt of the point at rest, a third of the farthest of the other curves (rectangular distribution:
 * 1/sqrt(3)), and a part for the shape that nobody measured, which grows with J; see `advanceBand.ts`. At fixed power an
 * error in K_Q moves the rotation rate too. The band is not cut where it passes the momentum limit: a warning says so.
 *
 * Source   see each curve. To carry a curve over by one factor is common practice, no source.
 * Assumes  the coefficients do not change with the Reynolds number from rest to speed.
 * Returns  a point that can not be given, past the end of the thrust, as `failed` with its reason.
 * Throws   OutOfDomain for a series outside its range, unless asked for; InputProblem where the curve asked for is not
 *          given.
 */
export function thrustAtSpeed(request: ThrustAtSpeedRequest): ThrustAtSpeed {
  requireRising(request);
  const candidates = advanceCandidates(request);
  const chosen = chosenOf(candidates, request);
  const others = candidates.filter((candidate) => candidate !== chosen);
  const sample = (J: number) => sampleAt(J, chosen, others, request);
  const points = request.speeds.map((speed) => speedPoint(speed, { chosen, others }, request));
  return {
    source: chosen.source,
    reason: SOURCE_REASONS[chosen.source],
    curve: steps(chosen.end).map(sample),
    zeroThrust: chosen.zeroThrust,
    alternatives: others.map((other) => ({
      source: other.source,
      points: steps(other.end).map((J) => ({
        advanceRatio: J,
        thrustCoefficient: other.thrust(J),
        torqueCoefficient: other.torque(J),
      })),
    })),
    points,
    warnings: speedWarnings(chosen, points, request),
  };
}

function steps(end: number): number[] {
  return Array.from({ length: SAMPLES + 1 }, (_, i) => (end * i) / SAMPLES);
}

function chosenOf(candidates: readonly AdvanceCandidate[], { use }: ThrustAtSpeedRequest): AdvanceCandidate {
  // Momentum theory alone is always there, and last.
  if (use === undefined) return candidates[0]!;
  const chosen = candidates.find(({ source }) => source === use);
  if (chosen) return chosen;
  throw new InputProblem({
    code: "propeller.no-such-curve",
    where: "use",
    found: `The curve "${use}" is asked for and nothing is given that it could be made of`,
    needed: candidates.map(({ source }) => source).join(" or "),
    mend: "Give what it needs, or leave the choice open",
  });
}

interface Curves {
  readonly chosen: AdvanceCandidate;
  readonly others: readonly AdvanceCandidate[];
}

function speedPoint(V: number, { chosen, others }: Curves, request: ThrustAtSpeedRequest): SpeedPoint {
  const { density: rho, diameter: D, fixed, nozzleAreaRatio } = request;
  const running = fixedRunning(V, chosen, request);
  if (running.state === "failed") return { state: "failed", advanceSpeed: V, reason: running.reason };
  const { rotationRate: n, advanceRatio: J } = running;
  const { thrustCoefficient: K_T, torqueCoefficient: K_Q } = sampleAt(J, chosen, others, request);
  if (!(K_Q.value > 0)) {
    const reason = `At an advance ratio of ${formatNumber(J)} the curve gives no torque any more, so that no power is known.`;
    return { state: "failed", advanceSpeed: V, reason };
  }
  const ofThrust = rho * n ** 2 * D ** 4;
  const ofPower = (rho * n ** 3 * D ** 5) / TORQUE_OVER_POWER_COEFFICIENT;
  const isPower = fixed.given === "shaftPower";
  const doubt = thrustUncertainty(J, running.thrustSlope, chosen, others, request);
  const thrust = uncertain(ofThrust * K_T.value, ofThrust * doubt);
  const P = ofPower * K_Q.value;
  return {
    state: "solved",
    ...{ advanceSpeed: V, advanceRatio: J, rotationRate: n, thrust },
    shaftPower: uncertain(P, isPower ? 0 : ofPower * K_Q.standardUncertainty),
    efficiency: (thrust.value * V) / P,
    idealThrust: idealThrust({ shaftPower: P, discArea: discArea(D), density: rho, advanceSpeed: V, nozzleAreaRatio }),
  };
}

/** Points of a computed curve begin at rest and rise. */
function requireRising({ bladeElements }: ThrustAtSpeedRequest): void {
  const wrong = bladeElements?.findIndex(({ advanceRatio }, i) =>
    i === 0 ? advanceRatio !== 0 : !(advanceRatio > bladeElements[i - 1]!.advanceRatio),
  );
  if (wrong === undefined || wrong < 0) return;
  throw new InputProblem({
    code: "propeller.curve-order",
    where: `bladeElements[${wrong}].advanceRatio`,
    found: `The advance ratio is ${formatNumber(bladeElements![wrong]!.advanceRatio)}`,
    needed: wrong === 0 ? "0: the curve begins at rest" : "more than that of the point before",
    mend: "Sort the points by advance ratio and begin at rest",
  });
}

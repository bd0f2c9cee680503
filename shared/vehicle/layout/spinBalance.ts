import type { SpinBalance } from "../../model/vehicle/layoutLoss.ts";
import type { ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";
import { formatNumber } from "../../quantity/format.ts";
import { listed } from "./axes.ts";
import { reactionOf, size, type Vector } from "./wrenchMatrix.ts";

/** More thrusters than this are searched one change at a time: 2^12 choices are quick. */
const MOST_TRIED_ALL = 12;

const turned = (sense: ThrusterPlacement["spin"]) => (sense === "clockwise" ? "anticlockwise" : "clockwise");

/**
 * Moment that the propellers' torque leaves on the vehicle at given thrusts, and the senses of rotation that cancel it
 * best with the fewest changes. Null where no torque is known.
 *
 *   M = − Σ s_i κ_i f_i d_i,  s_i = ±1 chosen for the least |M|
 *
 * Source   action and reaction; all choices tried up to 12 working thrusters, else one change at a time.
 * Assumes  no swirl is recovered by the hull or a stator.
 */
export function spinBalance(thrusters: readonly ThrusterPlacement[], forces: readonly number[]): SpinBalance | null {
  const residual = reactionOf(thrusters, forces);
  if (residual === null) return null;
  const parts = thrusters.map((one, i) => reactionOf([one], [forces[i]!]) ?? ([0, 0, 0] as const));
  const working = parts.flatMap((part, i) => (size(part) > 0 ? [i] : []));
  const changed = working.length <= MOST_TRIED_ALL ? bestOfAll(parts, working) : stepByStep(parts, working);
  const best = momentWith(parts, changed);
  const senses = thrusters.map(({ spin }, i) => (changed.includes(i) ? turned(spin) : spin));
  const names = changed.map((i) => thrusters[i]!.name);
  const whole = parts.reduce((sum, part) => sum + size(part), 0);
  return {
    residual: [...residual],
    best: best.map((one) => one + 0),
    senses,
    changed,
    sentence: balanceSentence({ residual, best, names, whole }),
  };
}

const momentWith = (parts: readonly Vector[], changed: readonly number[]): Vector =>
  parts.reduce<Vector>(
    (sum, part, i) => {
      const sign = changed.includes(i) ? -1 : 1;
      return [sum[0] + sign * part[0], sum[1] + sign * part[1], sum[2] + sign * part[2]];
    },
    [0, 0, 0],
  );

/** The smaller moment wins; at equal moments the one with fewer changes. */
function bestOfAll(parts: readonly Vector[], working: readonly number[]): number[] {
  const rounding = 1e-9 * parts.reduce((sum, part) => sum + size(part), 0);
  let [best, least]: [number[], number] = [[], size(momentWith(parts, []))];
  for (let choice = 1; choice < 2 ** working.length; choice++) {
    const changed = working.filter((_, k) => (choice >> k) & 1);
    const moment = size(momentWith(parts, changed));
    const fewer = Math.abs(moment - least) <= rounding && changed.length < best.length;
    if (moment < least - rounding || fewer) [best, least] = [changed, moment];
  }
  return best;
}

function stepByStep(parts: readonly Vector[], working: readonly number[]): number[] {
  let changed: number[] = [];
  for (let better = true; better; ) {
    const now = size(momentWith(parts, changed));
    const tried = working.map((i) => (changed.includes(i) ? changed.filter((one) => one !== i) : [...changed, i]));
    const next = tried.reduce((a, b) => (size(momentWith(parts, b)) < size(momentWith(parts, a)) ? b : a));
    better = size(momentWith(parts, next)) < now * (1 - 1e-9);
    if (better) changed = next;
  }
  return changed.sort((a, b) => a - b);
}

function balanceSentence({
  residual,
  best,
  names,
  whole,
}: {
  readonly residual: Vector;
  readonly best: Vector;
  readonly names: readonly string[];
  readonly whole: number;
}): string {
  const left = `${formatNumber(size(residual))} N·m (roll ${formatNumber(residual[0])}, pitch ${formatNumber(residual[1])}, yaw ${formatNumber(residual[2])})`;
  if (size(residual) <= 1e-6 * whole) return "Full ahead the torques of the propellers cancel.";
  if (names.length === 0)
    return `Full ahead the torques of the propellers leave ${left} on the vehicle; no other senses of rotation leave less.`;
  const after = size(best) <= 1e-6 * whole ? "nothing is left" : `${formatNumber(size(best))} N·m are left`;
  return `Full ahead the torques of the propellers leave ${left} on the vehicle. With the other sense of rotation on ${listed(names)} ${after}; a propeller of the other hand is needed, not only swapped leads.`;
}

import type { Vector } from "../layout/wrenchMatrix.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { PullFor } from "./linearMotion.ts";
import { handled, NO_PULL, type TetherOut, type TetherPull, tetherPulls } from "./tetherPull.ts";

/**
 * Speeds that a direction is solved at are this, m/s, times the squares of whole numbers: dense where weight gives way to
 * drag.
 */
const UNIT = 0.02;
const speedOf = (place: number) => UNIT * place * place;
/** Change of a factor that slopes are taken by. */
const CHANGE = 0.05;
/** Speed that slopes are taken at, m/s. */
const SLOPE_SPEED = 1;

type Factor = keyof VehicleNumbers["tether"] | "current";
const FACTORS: readonly Factor[] = ["normal", "tangential", "weight", "current"];

interface Direction {
  readonly unit: Vector;
  readonly nodes: Map<number, TetherPull>;
  readonly solve: (through: Vector) => TetherPull;
  slopes: Slopes | null;
}

type Slopes = Readonly<Record<Factor, Vector>>;

interface FactorChange {
  readonly factor: Factor;
  readonly by: number;
}

/**
 * The force of a tether as a quick function of velocity and numbers, for searches and draws that ask hundreds of times.
 *
 *   F(V, p) = F(V, p_0) + Σ ∂F/∂p_k (V/V_1)² (p_k − p_k0)
 *
 * In V the cubic through four solved shapes; in drag, weight and current a straight line, whose slope grows with the
 * square of the speed, but for that of the weight.
 *
 * Source   `tetherPulls`; Lagrange's interpolation.
 * Assumes  as `tetherPulls`.
 * Error    within 5e-4 of the force from 0.9 m/s on; below, where a weight that sags gives way to drag, within 3 % or 0.02 N;
 *          a change of a factor by 10 % to 1 %.
 * Throws   as `tetherPulls`.
 */
export function tetherModel(out: TetherOut | null, from: number): PullFor {
  if (out === null) return () => () => NO_PULL;
  const known = new Map<string, Direction>();
  return (numbers) => (velocity) => {
    const through = handled(velocity);
    const speed = Math.hypot(...through);
    const unit: Vector = speed === 0 ? [1, 0, 0] : [through[0] / speed, through[1] / speed, through[2] / speed];
    const key = unit.map((part) => part.toFixed(9)).join(" ");
    const direction = known.get(key) ?? { unit, nodes: new Map(), solve: tetherPulls(out, from), slopes: null };
    known.set(key, direction);
    const base = interpolated(direction, speed);
    const changes = changesOf(out.numbers, numbers);
    if (changes.every(({ by }) => by === 0)) return base;
    direction.slopes ??= slopesOf(out, from, direction);
    return changedPull(base, direction.slopes, changes, speed);
  };
}

/** The pull at one speed through the water, m/s, of a tether that is a little changed. */
function changedPull(base: TetherPull, slopes: Slopes, changes: readonly FactorChange[], speed: number): TetherPull {
  const force = [...base.force] as [number, number, number];
  for (const { factor, by } of changes) {
    const growth = factor === "weight" ? by : by * (speed / SLOPE_SPEED) ** 2;
    slopes[factor].forEach((slope, k) => {
      force[k]! += slope * growth;
    });
  }
  return { ...base, force };
}

/**
 * The pull at 1 m/s through the water along `unit`, with the current from an angle, for numbers near those of `out`.
 *
 * Error    as `tetherModel` for a change; none without.
 */
export function tetherAtOne(out: TetherOut, from: number, unit: Vector): (numbers: VehicleNumbers) => TetherPull {
  const direction = { unit, solve: tetherPulls(out, from) };
  const base = direction.solve(unit);
  let slopes: Slopes | null = null;
  return (numbers) => {
    const changes = changesOf(out.numbers, numbers);
    if (changes.every(({ by }) => by === 0)) return base;
    slopes ??= slopesOf(out, from, direction);
    return changedPull(base, slopes, changes, SLOPE_SPEED);
  };
}

/** The cubic through the four solved speeds about a speed. */
function interpolated(direction: Direction, speed: number): TetherPull {
  const place = Math.sqrt(speed / UNIT);
  if (speedOf(Math.round(place)) === speed) return nodeAt(direction, Math.round(place));
  const first = Math.max(0, Math.floor(place) - 1);
  const places = [first, first + 1, first + 2, first + 3];
  const nodes = places.map((place) => nodeAt(direction, place));
  const force: [number, number, number] = [0, 0, 0];
  places.forEach((own, i) => {
    const weight = places.reduce(
      (product, other) =>
        other === own ? product : (product * (speed - speedOf(other))) / (speedOf(own) - speedOf(other)),
      1,
    );
    nodes[i]!.force.forEach((part, k) => {
      force[k]! += weight * part;
    });
  });
  return { force, converged: nodes.every(({ converged }) => converged), near: nodes[1]!.near };
}

function nodeAt({ nodes, solve, unit }: Direction, place: number): TetherPull {
  const V = speedOf(place);
  const node = nodes.get(place) ?? solve([unit[0] * V, unit[1] * V, unit[2] * V]);
  nodes.set(place, node);
  return node;
}

function changesOf(base: VehicleNumbers, { tether, currentSpeed }: VehicleNumbers): FactorChange[] {
  return FACTORS.map((factor) => ({
    factor,
    by: factor === "current" ? relative(currentSpeed, base.currentSpeed) : tether[factor] - base.tether[factor],
  }));
}

/** Without a current there is no slope to go by, and a draw of none is none. */
const relative = (value: number, base: number) => (base === 0 ? 0 : value / base - 1);

function slopesOf(out: TetherOut, from: number, { unit, solve }: Pick<Direction, "unit" | "solve">): Slopes {
  const { numbers, vehicle } = out;
  const velocity: Vector = [unit[0] * SLOPE_SPEED, unit[1] * SLOPE_SPEED, unit[2] * SLOPE_SPEED];
  const { force: base, near } = solve(velocity);
  const none: Vector = [0, 0, 0];
  const slope = (changed: VehicleNumbers): Vector => {
    const { force } = tetherPulls({ ...out, numbers: changed }, from, near)(velocity);
    return [(force[0] - base[0]) / CHANGE, (force[1] - base[1]) / CHANGE, (force[2] - base[2]) / CHANGE];
  };
  const factor = (field: keyof VehicleNumbers["tether"]) =>
    slope({ ...numbers, tether: { ...numbers.tether, [field]: numbers.tether[field] + CHANGE } });
  // In a uniform current a tether whose both ends move with the vehicle does not feel it.
  const feels =
    numbers.currentSpeed > 0 &&
    (vehicle.tether!.motion === "upperEndFixed" || vehicle.scenario.currentProfile !== "uniform");
  return {
    normal: factor("normal"),
    tangential: factor("tangential"),
    weight: vehicle.tether!.cable.netWeightPerLength === 0 ? none : factor("weight"),
    current: feels ? slope({ ...numbers, currentSpeed: numbers.currentSpeed * (1 + CHANGE) }) : none,
  };
}

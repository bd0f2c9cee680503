import type { ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";

export interface CurrentKnot {
  readonly thrust: number;
  readonly current: number;
}

/** Straight pieces that stand for the power law: their current is up to 0.3 % of the greatest too high, never too low. */
const PIECES = 8;
/** Knots at (k/n)^(4/3) make the error of each chord of T^1.5 alike: it goes with the square of the width times T^(−1/2). */
const SPACING = 4 / 3;

type Side = "forward" | "reverse";

/**
 * Current from the bus at a thrust one way, A; null where none is stated.
 *
 *   one point:   I = I₁ (T/T₁)^1.5        from T ∝ n², P ∝ n³ at one bus voltage
 *   more:        straight lines from rest through the points; beyond the last the last line goes on
 *
 * Source   similarity of a propeller at rest in the water; the table is a measurement.
 * Assumes  one bus voltage. T and the current are without sign.
 *
 * @example currentAt([{ thrust: 10, current: 4 }], 2.5) // 0.5 A
 */
export function currentAt(points: readonly CurrentKnot[], thrust: number): number {
  const only = points[0]!;
  if (points.length === 1) return only.current * (thrust / only.thrust) ** 1.5;
  const knots = knotsOf(points);
  const after = Math.max(
    1,
    knots.findIndex((knot, i) => i > 0 && (thrust <= knot.thrust || i === knots.length - 1)),
  );
  const [a, b] = [knots[after - 1]!, knots[after]!];
  return a.current + ((thrust - a.thrust) * (b.current - a.current)) / (b.thrust - a.thrust);
}

/** The points in order of thrust, from rest on. */
function knotsOf(points: readonly CurrentKnot[]): CurrentKnot[] {
  return [{ thrust: 0, current: 0 }, ...[...points].sort((a, b) => a.thrust - b.thrust)];
}

export interface CurrentPiece {
  /** Width of the piece, N. */
  readonly width: number;
  /** A for each N on it. */
  readonly slope: number;
}

/**
 * The law up to `limit` as pieces with slopes that never fall, so that a linear programme fills them in order.
 * A table that is not convex is replaced by the convex line below it.
 */
export function currentPieces(points: readonly CurrentKnot[], limit: number): CurrentPiece[] {
  if (limit === 0) return [];
  const inside =
    points.length === 1
      ? Array.from({ length: PIECES }, (_, k) => limit * ((k + 1) / PIECES) ** SPACING)
      : [...points.map(({ thrust }) => thrust).filter((thrust) => thrust < limit), limit].sort((a, b) => a - b);
  const knots = convexFloor([0, ...inside].map((thrust) => ({ thrust, current: currentAt(points, thrust) })));
  return knots.slice(1).map((knot, i) => {
    const width = knot.thrust - knots[i]!.thrust;
    return { width, slope: (knot.current - knots[i]!.current) / width };
  });
}

/** Lower convex hull of points in order. */
function convexFloor(knots: readonly CurrentKnot[]): CurrentKnot[] {
  const hull: CurrentKnot[] = [];
  for (const knot of knots) {
    while (hull.length > 1 && !turnsUp(hull.at(-2)!, hull.at(-1)!, knot)) hull.pop();
    hull.push(knot);
  }
  return hull;
}

const turnsUp = (a: CurrentKnot, b: CurrentKnot, c: CurrentKnot) =>
  (b.current - a.current) * (c.thrust - b.thrust) < (c.current - b.current) * (b.thrust - a.thrust);

/** Whether straight lines through the points never get flatter. */
export function isConvex(points: readonly CurrentKnot[]): boolean {
  if (points.length === 1) return true;
  const knots = knotsOf(points);
  return knots.every((b, i) => {
    const [a, c] = [knots[i - 1], knots[i + 1]];
    if (!a || !c) return true;
    const [before, after] = [slope(a, b), slope(b, c)];
    return after >= before * (1 - 1e-9);
  });
}

const slope = (a: CurrentKnot, b: CurrentKnot) => (b.current - a.current) / (b.thrust - a.thrust);

/** Current of all thrusters at given thrusts plus the rest of the vehicle, A; null where a working thruster has none stated. */
export function totalCurrent(
  thrusters: readonly ThrusterPlacement[],
  forces: readonly number[],
  hotelCurrent: number,
): number | null {
  let total = hotelCurrent;
  for (const [i, { current }] of thrusters.entries()) {
    if (forces[i] === 0) continue;
    if (current === undefined) return null;
    const side: Side = forces[i]! < 0 ? "reverse" : "forward";
    total += currentAt(current[side], Math.abs(forces[i]!));
  }
  return total;
}

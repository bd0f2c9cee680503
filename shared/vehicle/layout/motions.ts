import { Matrix, pseudoInverse, SingularValueDecomposition } from "ml-matrix";
import type { AxisMotion } from "../../model/vehicle/layoutAnswer.ts";
import type { Axis, LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { formatNumber } from "../../quantity/format.ts";
import { AXES, AXIS_WORDS, capital, listed, rowOf } from "./axes.ts";
import { armOf, size } from "./wrenchMatrix.ts";

type Rows = readonly (readonly number[])[];

/** A singular value this much smaller than the greatest is rounding of positions and directions, not a motion. */
export const RANK_TOLERANCE = 1e-6;
/** Forces first, then the moment that steers; roll and pitch last, because a body mostly rights itself in them. */
const PREFERENCE: readonly Axis[] = ["surge", "sway", "heave", "yaw", "pitch", "roll"];

export interface Motions {
  readonly momentLength: number;
  readonly singularValues: readonly number[];
  readonly rank: number;
  readonly held: readonly Axis[];
  /** Independent ones among the held. */
  readonly independent: number;
  readonly motions: readonly AxisMotion[];
}

/**
 * Which of the six motions the thrusters can make, from the singular values of the wrench matrix, moments divided by a length.
 *
 * An axis can be commanded alone where its unit wrench lies in the space that the columns span. Held by default are the
 * axes whose rows are independent, taken in the order surge, sway, heave, yaw, pitch, roll.
 *
 * Source   rank and column space: e.g. Golub & Van Loan, Matrix Computations (2013), 2.4, 5.5.
 * Assumes  free choice of each thrust both ways; limits come later.
 */
export function motionsOf(matrix: Rows, request: Pick<LayoutRequest, "thrusters" | "axes" | "centreOfMass">): Motions {
  const momentLength = momentLengthOf(request);
  const scaled = matrix.map((row, k) => row.map((one) => (k < 3 ? one : one / momentLength)));
  const { singularValues, span } = spanOf(scaled);
  const rank = span.columns;
  const possible = AXES.map((_, k): AxisMotion["possible"] => {
    // Length of what is left of the unit wrench after taking away its part in the span.
    const inside = span.getRow(k).reduce((sum, one) => sum + one * one, 0);
    return inside < RANK_TOLERANCE ** 2 ? "none" : inside > 1 - RANK_TOLERANCE ? "alone" : "together";
  });
  const held = request.axes
    ? AXES.filter((axis) => request.axes!.includes(axis) && possible[rowOf(axis)] !== "none")
    : independentAxes(scaled, PREFERENCE);
  const independent = independentAxes(scaled, held).length;
  const motions = AXES.map((axis, k) => {
    const comesWith = held.includes(axis) || possible[k] === "none" ? [] : companions(matrix, held, k);
    const one = { axis, possible: possible[k]!, held: held.includes(axis), comesWith };
    return { ...one, sentence: motionSentence(one) };
  });
  return { momentLength, singularValues, rank, held, independent, motions };
}

/** Root mean square arm of the thrusters; 1 m where all sit on the centre. */
function momentLengthOf({ thrusters, centreOfMass }: Pick<LayoutRequest, "thrusters" | "centreOfMass">): number {
  const squares = thrusters.map((one) => size(armOf(one, centreOfMass)) ** 2);
  return Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length) || 1;
}

/** Singular values, and an orthonormal base of the wrenches that can be made. */
function spanOf(rows: Rows): { readonly singularValues: readonly number[]; readonly span: Matrix } {
  const { diagonal, leftSingularVectors } = new SingularValueDecomposition(new Matrix(rows.map((row) => [...row])), {
    autoTranspose: true,
  });
  const singularValues = diagonal.slice(0, Math.min(rows.length, rows[0]!.length));
  const rank = singularValues.filter((one) => one > RANK_TOLERANCE * (singularValues[0] ?? 0)).length;
  return { singularValues, span: leftSingularVectors.subMatrix(0, rows.length - 1, 0, rank - 1) };
}

/** Axes whose rows are independent, taken in the order given. */
function independentAxes(scaled: Rows, order: readonly Axis[]): Axis[] {
  const base: number[][] = [];
  const greatest = Math.max(...scaled.map((row) => Math.hypot(...row)));
  const chosen = order.filter((axis) => {
    const left = base.reduce(
      (rest, unit) => {
        const part = rest.reduce((sum, one, i) => sum + one * unit[i]!, 0);
        return rest.map((one, i) => one - part * unit[i]!);
      },
      [...scaled[rowOf(axis)]!],
    );
    const length = Math.hypot(...left);
    if (length <= RANK_TOLERANCE * greatest) return false;
    base.push(left.map((one) => one / length));
    return true;
  });
  return AXES.filter((axis) => chosen.includes(axis));
}

/** Held axes that bring axis number `k` along, where its row is a sum of theirs; none where it is free of them. */
function companions(matrix: Rows, held: readonly Axis[], k: number): AxisMotion["comesWith"] {
  if (held.length === 0) return [];
  const rows = new Matrix(held.map((axis) => [...matrix[rowOf(axis)]!]));
  const weights = new Matrix([[...matrix[k]!]]).mmul(pseudoInverse(rows, RANK_TOLERANCE * rows.norm()));
  const left = Matrix.sub(new Matrix([[...matrix[k]!]]), weights.mmul(rows)).norm();
  if (left > RANK_TOLERANCE * Math.hypot(...matrix[k]!)) return [];
  return held
    .map((axis, i) => ({ axis, each: weights.get(0, i) }))
    .filter(({ each }) => Math.abs(each) > RANK_TOLERANCE);
}

function motionSentence({ axis, possible, held, comesWith }: Omit<AxisMotion, "sentence">): string {
  const name = capital(axis);
  if (possible === "none") return `${name} cannot be commanded: no thruster acts on it.`;
  if (comesWith.length > 0) {
    const unit = AXIS_WORDS[axis].unit;
    const each = comesWith.map(
      (one) => `${one.axis} (${formatNumber(one.each)} ${unit} for each ${AXIS_WORDS[one.axis].unit})`,
    );
    return `${name} cannot be commanded on its own: it comes along with ${listed(each)}.`;
  }
  if (possible === "together")
    return held
      ? `${name} can be commanded, but other motions come along with it.`
      : `${name} is left free; it cannot be commanded on its own.`;
  return held ? `${name} can be commanded.` : `${name} could be commanded; here it is left free.`;
}

import { Matrix, pseudoInverse } from "ml-matrix";
import type { Allocation } from "../../model/vehicle/layoutAnswer.ts";
import type { Axis, LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { warning } from "../../quantity/warning.ts";
import { AXES, capital, listed, rowOf } from "./axes.ts";
import { unitWrench } from "./axisAsk.ts";
import { totalCurrent } from "./currentLaw.ts";
import { cheapestThrusts, greatestAlong } from "./greatestAlong.ts";
import { currentsKnown, type LayoutModel, layoutModel } from "./layoutModel.ts";
import { motionsOf, RANK_TOLERANCE } from "./motions.ts";
import { reactionOf, wrenchOf } from "./wrenchMatrix.ts";

type Rows = readonly (readonly number[])[];
/** Forces in N and moments in N·m that are wanted; an axis that is left out is wanted to be zero. */
export type Wanted = Partial<Record<Axis, number>>;

/** Part of a demand that may be missed before it counts as not made. */
const MISS = 1e-8;

/**
 * Thrusts of least sum of squares for 1 N or 1 N·m of each held axis: one row a thruster, one column an axis.
 *
 * Source   Moore-Penrose inverse by singular values: e.g. Golub & Van Loan, Matrix Computations (2013), 5.5.
 */
export function pseudoInverseOf(matrix: Rows, held: readonly Axis[]): number[][] {
  if (held.length === 0) return matrix[0]!.map(() => []);
  const rows = new Matrix(held.map((axis) => [...matrix[rowOf(axis)]!]));
  const inverse = pseudoInverse(rows, RANK_TOLERANCE * rows.norm()).to2DArray();
  return inverse.map((row) => row.map((one) => (Math.abs(one) < 1e-14 ? 0 : one)));
}

/**
 * A function from wanted wrenches to thrusts. The pseudo-inverse is taken where it keeps within the limits; else the
 * thrusts of least current that make the demand; and where the limits do not allow it, the same for as much of the demand
 * as they do, in its direction.
 *
 * Source   direction-preserving control allocation, e.g. Johansen & Fossen, Automatica 49 (2013) 1087, from memory.
 * Throws   InputProblem `vehicle.layout-not-held` for an axis that is not commanded.
 */
export function allocator(request: LayoutRequest): (wanted: Wanted) => Allocation {
  const model = layoutModel(request);
  const { held } = motionsOf(model.matrix, request);
  const inverse = pseudoInverseOf(model.matrix, held);
  return (wanted) => {
    refuseUnheld(wanted, held);
    const demand = held.map((axis) => wanted[axis] ?? 0);
    if (demand.every((one) => one === 0)) return resultOf(model, held, demand, { forces: zeros(model), edge: null });
    const straight = inverse.map((row) => row.reduce((sum, one, k) => sum + one * demand[k]!, 0));
    const edge = edgeOf(model, held, demand);
    if (!(edge > MISS)) return resultOf(model, held, demand, { forces: zeros(model), edge: 0, method: "none" });
    if (edge >= 1 - MISS && allowed(model, held, demand, straight))
      return resultOf(model, held, demand, { forces: straight, edge, method: "pseudoInverse" });
    const part = Math.min(1, edge * (1 - 1e-12));
    const hold = held.map((axis, k) => ({ wrench: unitWrench(axis), at: part * demand[k]! }));
    const cost = currentsKnown(model) ? "current" : "effort";
    const { forces } = cheapestThrusts(model, { hold, limits: model.limits }, cost);
    return resultOf(model, held, demand, { forces, edge, method: "linearProgramme" });
  };
}

const zeros = ({ limits }: LayoutModel) => limits.map(() => 0);

function refuseUnheld(wanted: Wanted, held: readonly Axis[]): void {
  const wrong = AXES.find((axis) => !held.includes(axis) && (wanted[axis] ?? 0) !== 0);
  const crooked = AXES.find((axis) => !Number.isFinite(wanted[axis] ?? 0));
  if (wrong === undefined && crooked === undefined) return;
  throw new InputProblem({
    code: "vehicle.layout-not-held",
    where: `wanted.${wrong ?? crooked}`,
    found: wrong ? `${capital(wrong)} is not commanded in this layout` : "The demand is not a number",
    needed: `numbers for ${listed(held)}`,
    mend: "",
  });
}

/** Wrench on the held axes, with the torque of the propellers where it counts. */
function achievedBy({ request, matrix }: LayoutModel, held: readonly Axis[], forces: readonly number[]): number[] {
  const wrench = wrenchOf(matrix, forces);
  const reaction = request.countReactionTorque ? reactionOf(request.thrusters, forces) : null;
  return held.map((axis) => wrench[rowOf(axis)]! + (reaction?.[rowOf(axis) - 3] ?? 0));
}

function allowed(model: LayoutModel, held: readonly Axis[], demand: readonly number[], forces: readonly number[]) {
  const { limits, request } = model;
  const size = Math.hypot(...demand);
  const made = achievedBy(model, held, forces).every((one, k) => Math.abs(one - demand[k]!) <= MISS * size);
  const inside = forces.every((f, i) => f <= limits[i]!.forward && f >= -limits[i]!.reverse);
  if (!made || !inside) return false;
  const current = totalCurrent(request.thrusters, forces, request.hotelCurrent);
  return current === null || current <= (request.busCurrentLimit ?? Infinity);
}

/** How many times the demand can be made in its direction. */
function edgeOf(model: LayoutModel, held: readonly Axis[], demand: readonly number[]): number {
  const { request, limits } = model;
  const lead = demand.reduce((most, one, k) => (Math.abs(one) > Math.abs(demand[most]!) ? k : most), 0);
  const hold = held.flatMap((axis, k) => {
    if (k === lead) return [];
    const wrench = unitWrench(axis);
    wrench[rowOf(held[lead]!)] = -demand[k]! / demand[lead]!;
    return [{ wrench, at: 0 }];
  });
  const bus = request.busCurrentLimit;
  const current = bus === undefined || !currentsKnown(model) ? null : bus - request.hotelCurrent;
  const along = unitWrench(held[lead]!, Math.sign(demand[lead]!));
  return greatestAlong(model, { along, hold, limits, current }).value / Math.abs(demand[lead]!);
}

interface Shared {
  readonly forces: readonly number[];
  readonly edge: number | null;
  readonly method?: Allocation["method"];
}

function resultOf(
  model: LayoutModel,
  held: readonly Axis[],
  wanted: readonly number[],
  { forces, edge, method = "pseudoInverse" }: Shared,
): Allocation {
  const { request } = model;
  const scale = edge === null ? 1 : Math.min(1, edge);
  return {
    forces: [...forces],
    wanted: [...wanted],
    achieved: achievedBy(model, held, forces),
    scale: method === "none" ? 0 : scale > 1 - MISS ? 1 : scale,
    scaleToEdge: edge,
    method,
    current: totalCurrent(request.thrusters, forces, request.hotelCurrent),
    warnings: edge !== null && edge < 1 - MISS ? [beyond(edge)] : [],
  };
}

const beyond = (edge: number) =>
  warning({
    code: "vehicle.layout-beyond-reach",
    where: "wanted",
    found:
      edge > MISS ? `The limits allow ${(100 * edge).toPrecision(3)} % of this demand` : "This demand can not be made",
    needed: "",
    mend: edge > MISS ? "The thrusts are for that part, in the same direction" : "All thrusts are zero",
  });

import { OutOfDomain } from "../quantity/problem.ts";

export interface LinearProgramme {
  /** Coefficients of the sum to be made as great as possible, one for each unknown. */
  readonly maximise: readonly number[];
  /** Rows that must equal a number. */
  readonly equal?: readonly LinearRow[];
  /** Rows that may be at most a number. */
  readonly atMost?: readonly LinearRow[];
  /** Least value of each unknown, finite. */
  readonly low: readonly number[];
  /** Greatest value of each unknown; Infinity: none. */
  readonly high: readonly number[];
}

export interface LinearRow {
  readonly row: readonly number[];
  readonly to: number;
}

export interface LinearOptimum {
  /** stopped: the steps ran out, so the solution is not known to be the best. */
  readonly outcome: "optimal" | "infeasible" | "unbounded" | "stopped";
  /** The greatest sum; 0 where there is none. */
  readonly greatest: number;
  readonly solution: readonly number[];
  /** Growth of the greatest sum for one unit more of the bound at which an unknown stands; 0 inside its bounds. */
  readonly boundGain: readonly number[];
  readonly steps: number;
  /** Greatest miss of a row by the solution, in units of that row. */
  readonly residual: number;
}

const MOST_STEPS = 5000;
/** Steps without growth after which the rule that can not cycle takes over. */
const STANDSTILL = 12;
const PIVOT = 1e-9;

/** Working state: rows of B⁻¹A, values of the basic unknowns, and where every other unknown stands. */
interface Tableau {
  readonly rows: Float64Array[];
  readonly basis: number[];
  readonly basic: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** 1: at its upper bound, 0: at its lower, 2: basic. */
  readonly place: Uint8Array;
  readonly feasible: number;
}

/**
 * Greatest value of a linear sum under linear rows and bounds.
 *
 *   max c·x   with  A x = b,  G x ≤ h,  l ≤ x ≤ u
 *
 * Simplex method in a dense tableau with bounded unknowns and two phases: an unknown outside the basis stands at either
 * bound and may cross to the other without a pivot, so bounds cost no rows. The steepest unknown enters; after steps that
 * gain nothing the smallest number does (Bland's rule), which can not go round in a circle.
 *
 * Source   Dantzig, Linear Programming and Extensions (1963), ch. 18; Bland, Mathematics of Operations Research 2 (1977) 103.
 * Assumes  few rows: the work of a step is rows times unknowns.
 * Error    see `residual`; optima agree with a general-purpose solver to 1e-9 of their size.
 * Throws   OutOfDomain for numbers that are not finite, lists of unlike length, or bounds that cross.
 *
 * @example linearProgramme({ maximise: [3, 5], atMost: [{ row: [1, 0], to: 4 }, { row: [0, 2], to: 12 }, { row: [3, 2], to: 18 }], low: [0, 0], high: [Infinity, Infinity] }).greatest // 36
 */
export function linearProgramme(programme: LinearProgramme): LinearOptimum {
  checked(programme);
  const { maximise, atMost = [] } = programme;
  const unknowns = maximise.length;
  const tableau = started(programme);
  const all = tableau.place.length;
  const artificial = unknowns + atMost.length;
  const first = startFeasible(tableau, artificial) ? STOOD : improved(tableau, onlyAdded(all, artificial), MOST_STEPS);
  if (!startFeasible(tableau, artificial))
    return ended(programme, tableau, first.stopped ? "stopped" : "infeasible", first.steps);
  // What was added to start with stays at zero from now on.
  tableau.high.fill(0, artificial);
  const objective = new Float64Array(all);
  objective.set(maximise);
  const second = improved(tableau, objective, MOST_STEPS - first.steps);
  const outcome = second.stopped ? "stopped" : second.unbounded ? "unbounded" : "optimal";
  const boundGain = Array.from(maximise, (_, j) => (tableau.place[j] === 2 ? 0 : second.gain[j]! + 0));
  return { ...ended(programme, tableau, outcome, first.steps + second.steps), boundGain };
}

/** Whether nothing is missing in the rows any more. */
function startFeasible({ basis, basic, feasible }: Tableau, artificial: number): boolean {
  return basis.reduce((sum, j, i) => (j >= artificial ? sum + basic[i]! : sum), 0) <= feasible;
}

/** The sum of what is missing, as something to make small. */
const onlyAdded = (all: number, artificial: number) => new Float64Array(all).fill(-1, artificial);

function checked({ maximise, equal = [], atMost = [], low, high }: LinearProgramme): void {
  const n = maximise.length;
  const sound = (numbers: readonly number[]) => numbers.length === n && numbers.every(Number.isFinite);
  const rowsSound = [equal, atMost].every((rows) => rows.every(({ row, to }) => Number.isFinite(to) && sound(row)));
  if (rowsSound && sound(maximise) && sound(low) && high.length === n && low.every((one, j) => one <= high[j]!)) return;
  throw new OutOfDomain({
    found: "a linear programme with lists of unlike length, numbers that are not finite, or bounds that cross",
    needed: "one coefficient and two bounds in order for each unknown",
    mend: "",
  });
}

/** Every unknown at its lower bound, and for each row an added unknown that takes up what is missing. */
function started({ maximise, equal = [], atMost = [], low, high }: LinearProgramme): Tableau {
  const [n, m] = [maximise.length, equal.length + atMost.length];
  const all = n + atMost.length + m;
  const bounds = { low: new Float64Array(all), high: new Float64Array(all).fill(Infinity) };
  bounds.low.set(low);
  bounds.high.set(high);
  const place = new Uint8Array(all);
  const basic = new Float64Array(m);
  let size = 0;
  const rows = [...equal, ...atMost].map(({ row, to }, i) => {
    // Rows of unlike units are brought to one size, so that one tolerance fits them all.
    const scale = 1 / (row.reduce((most, one) => Math.max(most, Math.abs(one)), 0) || 1);
    const line = new Float64Array(all);
    let left = to * scale;
    for (let j = 0; j < n; j++) {
      line[j] = row[j]! * scale;
      left -= line[j]! * low[j]!;
      size = Math.max(size, Math.abs(line[j]! * low[j]!));
    }
    if (i >= equal.length) line[n + i - equal.length] = 1;
    if (left < 0) for (let j = 0; j < all; j++) line[j] = -line[j]!;
    basic[i] = Math.abs(left);
    size = Math.max(size, Math.abs(to * scale), basic[i]!);
    line[n + atMost.length + i] = 1;
    place[n + atMost.length + i] = 2;
    return line;
  });
  return {
    rows,
    basis: rows.map((_, i) => n + atMost.length + i),
    basic,
    ...bounds,
    place,
    feasible: 1e-9 * (size || 1),
  };
}

interface Improvement {
  readonly steps: number;
  readonly stopped: boolean;
  readonly unbounded: boolean;
  /** Growth of the sum for one unit more of each unknown. */
  readonly gain: Float64Array;
}

const STOOD = { steps: 0, stopped: false };

/** Steps from corner to corner until no unknown can enter with gain. */
function improved(tableau: Tableau, objective: Float64Array, most: number): Improvement {
  const gain = gainOf(tableau, objective);
  const least = 1e-10 * objective.reduce((greatest, one) => Math.max(greatest, Math.abs(one)), 0);
  let still = 0;
  for (let steps = 0; ; steps++) {
    const entering = enteringOf(tableau, gain, least, still > STANDSTILL);
    if (entering < 0) return { steps, stopped: false, unbounded: false, gain };
    if (steps >= most) return { steps, stopped: true, unbounded: false, gain };
    const way = tableau.place[entering] === 0 ? 1 : -1;
    const { length, leaving } = ratio(tableau, entering, way, still > STANDSTILL);
    if (length === Infinity) return { steps, stopped: false, unbounded: true, gain };
    still = length > 1e-3 * tableau.feasible ? 0 : still + 1;
    moved(tableau, entering, way * length);
    if (leaving < 0) tableau.place[entering] = 1 - tableau.place[entering]!;
    else exchanged(tableau, gain, { entering, leaving, value: boundOf(tableau, entering) + way * length });
  }
}

function gainOf({ rows, basis }: Tableau, objective: Float64Array): Float64Array {
  const gain = objective.slice();
  rows.forEach((row, i) => {
    const weight = objective[basis[i]!]!;
    if (weight !== 0) for (let j = 0; j < gain.length; j++) gain[j]! -= weight * row[j]!;
  });
  return gain;
}

function enteringOf({ place, low, high }: Tableau, gain: Float64Array, least: number, first: boolean): number {
  let [best, chosen] = [least, -1];
  for (let j = 0; j < gain.length; j++) {
    if (place[j] === 2 || low[j] === high[j]) continue;
    const slope = place[j] === 0 ? gain[j]! : -gain[j]!;
    if (slope <= best) continue;
    if (first) return j;
    [best, chosen] = [slope, j];
  }
  return chosen;
}

/** How far the entering unknown can go, and which row stops it; −1: its own other bound. */
function ratio({ rows, basis, basic, low, high }: Tableau, entering: number, way: number, first: boolean) {
  let length = high[entering]! - low[entering]!;
  let [leaving, size] = [-1, 0];
  for (let i = 0; i < rows.length; i++) {
    const slope = -way * rows[i]![entering]!;
    if (Math.abs(slope) < PIVOT) continue;
    const bound = slope > 0 ? high[basis[i]!]! : low[basis[i]!]!;
    const reach = Math.max(0, (bound - basic[i]!) / slope);
    const tie = Math.abs(reach - length) <= 1e-12 * (1 + Math.abs(length));
    const better = first ? leaving >= 0 && basis[i]! < basis[leaving]! : Math.abs(slope) > size;
    if (tie && leaving >= 0 ? !better : reach >= length) continue;
    [length, leaving, size] = [tie ? Math.min(reach, length) : reach, i, Math.abs(slope)];
  }
  return { length, leaving };
}

function moved({ rows, basic }: Tableau, entering: number, by: number): void {
  if (by !== 0) for (let i = 0; i < rows.length; i++) basic[i]! -= by * rows[i]![entering]!;
}

const boundOf = ({ place, low, high }: Tableau, j: number) => (place[j] === 1 ? high[j]! : low[j]!);

function exchanged(
  tableau: Tableau,
  gain: Float64Array,
  { entering, leaving, value }: { readonly entering: number; readonly leaving: number; readonly value: number },
): void {
  const { rows, basis, basic, low, high, place } = tableau;
  const left = basis[leaving]!;
  place[left] = basic[leaving]! - low[left]! <= high[left]! - basic[leaving]! ? 0 : 1;
  place[entering] = 2;
  basis[leaving] = entering;
  basic[leaving] = value;
  const pivotRow = rows[leaving]!;
  const pivot = pivotRow[entering]!;
  for (let j = 0; j < pivotRow.length; j++) pivotRow[j]! /= pivot;
  for (let i = 0; i < rows.length; i++) if (i !== leaving) cleared(rows[i]!, pivotRow, entering);
  cleared(gain, pivotRow, entering);
}

function cleared(row: Float64Array, pivotRow: Float64Array, entering: number): void {
  const factor = row[entering]!;
  if (factor === 0) return;
  for (let j = 0; j < row.length; j++) row[j]! -= factor * pivotRow[j]!;
  row[entering] = 0;
}

function ended(
  { maximise, equal = [], atMost = [], low, high }: LinearProgramme,
  { place, basis, basic }: Tableau,
  outcome: LinearOptimum["outcome"],
  steps: number,
): LinearOptimum {
  const solution = maximise.map((_, j) => (place[j] === 1 ? high[j]! : low[j]!));
  // Rounding may carry a basic unknown past its bound by less than the tolerance; the bound is what is allowed.
  basis.forEach((j, i) => {
    if (j < solution.length) solution[j] = Math.min(Math.max(basic[i]!, low[j]!), high[j]!);
  });
  const sum = (row: readonly number[]) => row.reduce((total, one, j) => total + one * solution[j]!, 0);
  const misses = [
    ...equal.map(({ row, to }) => Math.abs(sum(row) - to)),
    ...atMost.map(({ row, to }) => Math.max(0, sum(row) - to)),
  ];
  const known = outcome === "optimal" || outcome === "stopped";
  return {
    outcome,
    greatest: known ? sum(maximise) : 0,
    solution,
    boundGain: maximise.map(() => 0),
    steps,
    residual: Math.max(0, ...misses),
  };
}

import type { PowerAccount } from "../../model/vehicle/motionAnswer.ts";

/** Powers on the bus, W; together they are the power from the bus. */
export type PowerParts = Omit<PowerAccount, "source" | "supplyLoss">;

export const PART_NAMES = ["hotel", "controllers", "motors", "propellers", "useful"] as const satisfies readonly (keyof PowerParts)[];

/** Polynomials through the powers at some open-circuit voltages, piece by piece. */
export interface PowerTable {
  readonly pieces: readonly Piece[];
  /** Voltages at which the bus was solved. */ readonly solved: number;
  /** False where a piece stayed coarser than asked. */ readonly converged: boolean;
}

interface Piece {
  readonly low: number;
  readonly high: number;
  readonly voltages: readonly number[];
  readonly weights: readonly number[];
  readonly parts: readonly PowerParts[];
}

export interface TableOptions {
  /** Error of the power between the solved voltages, relative. */ readonly tolerance?: number;
  readonly deepest?: number;
}

/**
 * Powers against open-circuit voltage between two voltages, from as few solutions of the bus as the tolerance needs.
 *
 * Each piece is a polynomial through Chebyshev points, 3, then 5, then 9, until the one before foretells the new points;
 * then it is halved. A polynomial is a weighted sum of its points, so that parts which add up at the points add up between.
 *
 * Source   barycentric interpolation: Berrut & Trefethen, Barycentric Lagrange Interpolation, SIAM Review 46 (2004) 501,
 *          eq. 4.2 and 5.4.
 */
export function powerTable(
  solve: (openCircuitVoltage: number) => PowerParts,
  low: number,
  high: number,
  { tolerance = 1e-8, deepest = 5 }: TableOptions = {},
): PowerTable {
  const known = new Map<number, PowerParts>();
  const at = (voltage: number) => {
    const parts = known.get(voltage) ?? solve(voltage);
    known.set(voltage, parts);
    return parts;
  };
  let converged = true;
  const piecesOf = (from: number, to: number, depth: number): Piece[] => {
    const found = fittedPiece(at, from, to, tolerance);
    if (found.fits || depth === deepest) {
      converged &&= found.fits;
      return [found.piece];
    }
    const middle = 0.5 * (from + to);
    return [...piecesOf(from, middle, depth + 1), ...piecesOf(middle, to, depth + 1)];
  };
  // A width of rounding alone is no width: the source has one voltage.
  const pieces = high - low > 1e-9 * high ? piecesOf(low, high, 0) : [pieceOf(at, high, high, 0)];
  return { pieces, solved: known.size, converged };
}

const ORDERS = [2, 4, 8] as const;

function fittedPiece(at: (voltage: number) => PowerParts, low: number, high: number, tolerance: number) {
  let piece = pieceOf(at, low, high, ORDERS[0]);
  for (const order of ORDERS.slice(1)) {
    const finer = pieceOf(at, low, high, order);
    const fits = finer.voltages.every((voltage, i) => {
      const true_ = finer.parts[i]!;
      const told = inPiece(piece, voltage);
      const size = PART_NAMES.reduce((sum, name) => sum + Math.abs(true_[name]), 0);
      return PART_NAMES.every((name) => Math.abs(told[name] - true_[name]) <= tolerance * size);
    });
    piece = finer;
    if (fits) return { piece, fits };
  }
  return { piece, fits: false };
}

/** Points cos(k π/n) of the second kind with their weights (−1)^k, halved at the ends. */
function pieceOf(at: (voltage: number) => PowerParts, low: number, high: number, order: number): Piece {
  const count = order + 1;
  const voltages = Array.from({ length: count }, (_, k) => {
    if (k === 0) return low;
    return k === order ? high : 0.5 * (low + high) - 0.5 * (high - low) * Math.cos((k * Math.PI) / order);
  });
  const weights = voltages.map((_, k) => (k % 2 === 0 ? 1 : -1) * (k === 0 || k === order ? 0.5 : 1));
  return { low, high, voltages, weights, parts: voltages.map(at) };
}

/** Powers at an open-circuit voltage, W; outside the table those of its nearer end. */
export function partsAt({ pieces }: PowerTable, openCircuitVoltage: number): PowerParts {
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  const U = Math.min(Math.max(openCircuitVoltage, first.low), last.high);
  return inPiece(pieces.find(({ high }) => U <= high) ?? last, U);
}

function inPiece({ voltages, weights, parts }: Piece, U: number): PowerParts {
  const exact = voltages.indexOf(U);
  if (exact >= 0) return parts[exact]!;
  const sum = { hotel: 0, controllers: 0, motors: 0, propellers: 0, useful: 0 };
  let whole = 0;
  for (let k = 0; k < voltages.length; k++) {
    const weight = weights[k]! / (U - voltages[k]!);
    whole += weight;
    for (const name of PART_NAMES) sum[name] += weight * parts[k]![name];
  }
  for (const name of PART_NAMES) sum[name] /= whole;
  return sum;
}

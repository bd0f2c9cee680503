import type { PowerAccount } from "../../model/vehicle/account.ts";

/** Powers on the bus, W; together they are the power from the bus. */
export type PowerParts = Omit<PowerAccount, "source" | "supplyLoss">;

const PART_NAMES = [
  "hotel",
  "controllers",
  "motors",
  "propellers",
  "useful",
] as const satisfies readonly (keyof PowerParts)[];

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
  /** Sums of the parts, W. */ readonly powers: readonly number[];
}

export interface TableOptions {
  /** Orders of the polynomials that are tried, the first one trusted where it is alone. */
  readonly orders?: readonly number[];
  /** Error of the power between the solved voltages, relative, where there are more orders than one. */
  readonly tolerance?: number;
}

/** Halvings of the range before a piece is taken as it is. */
const DEEPEST = 5;

/**
 * Powers against open-circuit voltage between two voltages, from as few solutions of the bus as the tolerance needs.
 *
 * Each piece is a polynomial through Chebyshev points, 3, then 5, then 9, until the one before foretells the new points;
 * where none does it is halved. A polynomial is a weighted sum of its points, so that parts which add up at the points add up between.
 *
 * Source   barycentric interpolation: Berrut & Trefethen, Barycentric Lagrange Interpolation, SIAM Review 46 (2004) 501,
 *          eq. 4.2 and 5.4.
 */
export function powerTable(
  solve: (openCircuitVoltage: number) => PowerParts,
  low: number,
  high: number,
  { orders = [2, 4, 8], tolerance = 1e-8 }: TableOptions = {},
): PowerTable {
  const known = new Map<number, PowerParts>();
  const at = (voltage: number) => {
    const parts = known.get(voltage) ?? solve(voltage);
    known.set(voltage, parts);
    return parts;
  };
  let converged = true;
  const piecesOf = (from: number, to: number, depth: number): Piece[] => {
    const found = fittedPiece(at, from, to, { orders, tolerance });
    if (found.fits || depth === DEEPEST) {
      converged &&= found.fits;
      return [found.piece];
    }
    const middle = 0.5 * (from + to);
    return [...piecesOf(from, middle, depth + 1), ...piecesOf(middle, to, depth + 1)];
  };
  // A width of rounding alone is no width: the source has one voltage.
  const pieces = high - low > 1e-9 * high ? piecesOf(low, high, 0) : [pieceOf(at, low, low, 0)];
  return { pieces, solved: known.size, converged };
}

function fittedPiece(
  at: (voltage: number) => PowerParts,
  low: number,
  high: number,
  { orders, tolerance }: Required<TableOptions>,
): { piece: Piece; fits: boolean } {
  let piece = pieceOf(at, low, high, orders[0]!);
  for (const order of orders.slice(1)) {
    const finer = pieceOf(at, low, high, order);
    const fits = finer.voltages.every((voltage, i) => foretold(inPiece(piece, voltage), finer.parts[i]!, tolerance));
    piece = finer;
    if (fits) return { piece, fits };
  }
  return { piece, fits: orders.length === 1 };
}

function foretold(told: PowerParts, found: PowerParts, tolerance: number): boolean {
  const size = PART_NAMES.reduce((sum, name) => sum + Math.abs(found[name]), 0);
  return PART_NAMES.every((name) => Math.abs(told[name] - found[name]) <= tolerance * size);
}

/** Points cos(k π/n) of the second kind with their weights (−1)^k, halved at the ends. */
function pieceOf(at: (voltage: number) => PowerParts, low: number, high: number, order: number): Piece {
  const voltages = Array.from({ length: order + 1 }, (_, k) => {
    if (k === 0) return low;
    return k === order ? high : 0.5 * (low + high) - 0.5 * (high - low) * Math.cos((k * Math.PI) / order);
  });
  const weights = voltages.map((_, k) => (k % 2 === 0 ? 1 : -1) * (k === 0 || k === order ? 0.5 : 1));
  const parts = voltages.map(at);
  return { low, high, voltages, weights, parts, powers: parts.map(powerOf) };
}

/** Power from the bus, W. */
export const powerOf = ({ hotel, controllers, motors, propellers, useful }: PowerParts): number =>
  hotel + controllers + motors + propellers + useful;

/** Powers at an open-circuit voltage, W; outside the table those of its nearer end. */
export function partsAt({ pieces }: PowerTable, openCircuitVoltage: number): PowerParts {
  const U = withinTable(pieces, openCircuitVoltage);
  return inPiece(pieceAt(pieces, U), U);
}

/** Their sum, W, without the parts: the inner loop of every time. */
export function powerAt({ pieces }: PowerTable, openCircuitVoltage: number): number {
  const U = withinTable(pieces, openCircuitVoltage);
  const { voltages, weights, powers } = pieceAt(pieces, U);
  if (voltages.length === 1) return powers[0]!;
  let [sum, whole] = [0, 0];
  for (let k = 0; k < voltages.length; k++) {
    const distance = U - voltages[k]!;
    if (distance === 0) return powers[k]!;
    const weight = weights[k]! / distance;
    whole += weight;
    sum += weight * powers[k]!;
  }
  return sum / whole;
}

function withinTable(pieces: readonly Piece[], voltage: number): number {
  return Math.min(Math.max(voltage, pieces[0]!.low), pieces[pieces.length - 1]!.high);
}

function pieceAt(pieces: readonly Piece[], voltage: number): Piece {
  let i = 0;
  while (i < pieces.length - 1 && voltage > pieces[i]!.high) i++;
  return pieces[i]!;
}

function inPiece({ voltages, weights, parts }: Piece, U: number): PowerParts {
  if (voltages.length === 1) return parts[0]!;
  let [hotel, controllers, motors, propellers, useful, whole] = [0, 0, 0, 0, 0, 0];
  for (let k = 0; k < voltages.length; k++) {
    const distance = U - voltages[k]!;
    const at = parts[k]!;
    if (distance === 0) return at;
    const weight = weights[k]! / distance;
    whole += weight;
    hotel += weight * at.hotel;
    controllers += weight * at.controllers;
    motors += weight * at.motors;
    propellers += weight * at.propellers;
    useful += weight * at.useful;
  }
  return {
    ...{ hotel: hotel / whole, controllers: controllers / whole, motors: motors / whole },
    ...{ propellers: propellers / whole, useful: useful / whole },
  };
}

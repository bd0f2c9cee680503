import type { SectionPolar } from "../../model/sectionPolar.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { broadBlade } from "./broadBlade.ts";
import { fullCircle } from "./fullCircle.ts";
import type { SectionLaw } from "./sectionLaw.ts";

/** Steps of the circle in a table: a quarter of a degree, so that a lookup needs no search. */
const STEPS = 1440;

/** Polars over the full circle, ready to be read at any Reynolds number. */
export interface PolarTables {
  /** log Re of each table, rising; empty where the only table serves for all. */
  readonly logReynolds: readonly number[];
  /** Lift and drag in turn from -π to π. */ readonly tables: readonly Float64Array[];
  /** Factor on the lift of a long wing's section in these blades. */ readonly breadth: number;
  /** Angles of attack that all blocks have in common, rad; beyond them the section is taken as stalled. */
  readonly angles: readonly [number, number];
  /** From the least lift to the greatest over the angle between them, 1/rad; the steepest block's. */
  readonly liftSlope: number;
}

/**
 * Tables of a polar for blades of an aspect ratio (1): lift and drag at even steps of the angle over the full circle.
 *
 * Source   as `fullCircle`; lift of broad blades as `broadBlade`.
 * Range    a polar that `checkedPolar` has passed; between Reynolds numbers read on a logarithmic scale, outside held.
 */
export function polarTables({ blocks }: SectionPolar, aspectRatio: number): PolarTables {
  return {
    breadth: broadBlade(aspectRatio),
    angles: [
      Math.max(...blocks.map(({ points }) => points[0]!.angle)),
      Math.min(...blocks.map(({ points }) => points.at(-1)!.angle)),
    ],
    liftSlope: Math.max(...blocks.map(({ points }) => meanSlope(points))),
    logReynolds: blocks.length > 1 ? blocks.map(({ reynolds }) => Math.log(reynolds!)) : [],
    tables: blocks.map(({ points }) => {
      const at = fullCircle(points, aspectRatio);
      const table = new Float64Array(2 * (STEPS + 1));
      for (let i = 0; i <= STEPS; i++) {
        const { lift, drag } = at(angleOf(i));
        table[2 * i] = lift;
        table[2 * i + 1] = drag;
      }
      return table;
    }),
  };
}

function meanSlope(points: SectionPolar["blocks"][number]["points"]): number {
  const least = points.reduce((a, b) => (b.lift < a.lift ? b : a));
  const most = points.reduce((a, b) => (b.lift > a.lift ? b : a));
  return least === most ? 0 : Math.abs((most.lift - least.lift) / (most.angle - least.angle));
}

const angleOf = (step: number) => -Math.PI + (2 * Math.PI * step) / STEPS;

/**
 * The law of a section by polars of a long wing: straight between tables in log Re, held beyond the first and the last,
 * with the lift of a broad blade. The surface's factors work on it; its roughness does not, since the polar was measured
 * with its own.
 */
export class PolarLaw implements SectionLaw {
  readonly zeroLiftAngle: number;
  readonly #low: Float64Array;
  readonly #high: Float64Array;
  readonly #part: number;
  readonly #liftFactor: number;
  readonly #dragFactor: number;

  constructor({ logReynolds, tables, breadth }: PolarTables, reynolds: number, surface: BladeSurface) {
    const { below, part } = placeIn(logReynolds, Math.log(reynolds));
    this.#low = tables[below]!;
    this.#high = tables[Math.min(below + 1, tables.length - 1)]!;
    this.#part = part;
    this.#liftFactor = breadth * surface.liftFactor;
    this.#dragFactor = surface.dragFactor;
    this.zeroLiftAngle = zeroLiftAngle((step) => this.#read(2 * step));
  }

  coefficients(alpha: number, out: Float64Array): void {
    const place = ((alpha + Math.PI) * STEPS) / (2 * Math.PI);
    // Rounding may put π a hair outside the table.
    const step = Math.min(Math.max(Math.floor(place), 0), STEPS - 1);
    const rest = place - step;
    const i = 2 * step;
    out[0] = this.#liftFactor * (this.#read(i) + rest * (this.#read(i + 2) - this.#read(i)));
    out[1] = this.#dragFactor * (this.#read(i + 1) + rest * (this.#read(i + 3) - this.#read(i + 1)));
  }

  #read(at: number): number {
    return this.#low[at]! + this.#part * (this.#high[at]! - this.#low[at]!);
  }
}

function placeIn(logReynolds: readonly number[], wanted: number): { below: number; part: number } {
  const above = logReynolds.findIndex((one) => one > wanted);
  if (above === 0 || logReynolds.length === 0) return { below: 0, part: 0 };
  if (above < 0) return { below: logReynolds.length - 1, part: 0 };
  const [low, high] = [logReynolds[above - 1]!, logReynolds[above]!];
  return { below: above - 1, part: (wanted - low) / (high - low) };
}

/** The angle nearest to 0, up to a right angle, at which the lift of a table grows through 0; NaN if there is none. */
function zeroLiftAngle(liftAt: (step: number) => number): number {
  const middle = STEPS / 2;
  for (let off = 0; off < STEPS / 4; off++) {
    for (const step of [middle + off, middle - off - 1]) {
      const [low, high] = [liftAt(step), liftAt(step + 1)];
      if (low <= 0 && high > 0) return angleOf(step - low / (high - low));
    }
  }
  return Number.NaN;
}

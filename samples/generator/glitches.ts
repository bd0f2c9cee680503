import type { RandomSource } from "./random.ts";

/** Faults of a home-made logger, counted per file. */
export interface Faults {
  /** Cells left empty. */
  readonly missing: number;
  /** Readings of the force column that jump for one row. */
  readonly spikes: number;
  /** Force cells that hold the converter's overflow mark. */
  readonly overflows: number;
}

export interface FaultPlace {
  /** Column of the force. */
  readonly force: number;
  /** Columns in which a cell may stay empty. */
  readonly mayBeMissing: readonly number[];
  /** What a one-row jump reads, as the file would write it. */
  readonly spike: string;
}

/** Spoils a few cells, away from the first and last rows. Rows are changed in place; each place is spoilt once at most. */
export function spoil(rows: string[][], faults: Faults, place: FaultPlace, random: RandomSource): void {
  const spoilt = new Set<number>();
  const somewhere = () => {
    let row = random.integer(20, rows.length - 21);
    while (spoilt.has(row)) row = random.integer(20, rows.length - 21);
    spoilt.add(row);
    return rows[row]!;
  };
  for (let i = 0; i < faults.missing; i++) {
    somewhere()[place.mayBeMissing[random.integer(0, place.mayBeMissing.length - 1)]!] = "";
  }
  for (let i = 0; i < faults.spikes; i++) somewhere()[place.force] = place.spike;
  for (let i = 0; i < faults.overflows; i++) somewhere()[place.force] = "ovf";
}

/** A number with a fixed count of decimals; a zero never carries a minus sign. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Least and greatest number of every `rowsPerCell` rows; NaN where those hold none. */
export interface PyramidLevel {
  readonly rowsPerCell: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Coarser and coarser summaries of one column, in the numbers of the file: a new calibration does not touch them. */
export type TracePyramid = readonly PyramidLevel[];

/** Rows of the finest cells: with 64 the whole pyramid is a twenty-eighth of its column. */
const FINEST = 64;
/** Cells that make one of the next level. */
const FACTOR = 8;

/** Summaries of `column` down to a single cell; none for a column shorter than two of the finest cells. */
export function tracePyramid(column: Float64Array): TracePyramid {
  const levels: PyramidLevel[] = [];
  if (column.length < 2 * FINEST) return levels;
  let level = coarser({ rowsPerCell: 1, low: column, high: column }, FINEST);
  for (;;) {
    levels.push(level);
    if (level.low.length < 2 * FACTOR) return levels;
    level = coarser(level, FACTOR);
  }
}

function coarser({ rowsPerCell, low, high }: PyramidLevel, factor: number): PyramidLevel {
  const cells = Math.ceil(low.length / factor);
  const above = { rowsPerCell: rowsPerCell * factor, low: new Float64Array(cells), high: new Float64Array(cells) };
  for (let cell = 0; cell < cells; cell++) {
    let least = Infinity;
    let greatest = -Infinity;
    const end = Math.min(low.length, (cell + 1) * factor);
    for (let i = cell * factor; i < end; i++) {
      if (low[i]! < least) least = low[i]!;
      if (high[i]! > greatest) greatest = high[i]!;
    }
    above.low[cell] = least <= greatest ? least : Number.NaN;
    above.high[cell] = least <= greatest ? greatest : Number.NaN;
  }
  return above;
}

/** Least and greatest number of the rows `from` (included) to `to` (not included); Infinity and -Infinity for none. */
export interface Extremes {
  least: number;
  greatest: number;
}

/**
 * The extremes of a stretch of `column`, exactly: whole cells from its pyramid, the ends from finer levels and the rows
 * themselves. Costs a few hundred looks at most, however long the stretch.
 */
export function extremesBetween(column: Float64Array, pyramid: TracePyramid, from: number, to: number): Extremes {
  const extremes = { least: Infinity, greatest: -Infinity };
  take(extremes, { column, pyramid, from, to, level: pyramid.length - 1 });
  return extremes;
}

interface Stretch {
  readonly column: Float64Array;
  readonly pyramid: TracePyramid;
  readonly from: number;
  readonly to: number;
  /** Coarsest level to look at; -1 for the rows. */
  readonly level: number;
}

function take(extremes: Extremes, { column, pyramid, from, to, level }: Stretch): void {
  if (from >= to) return;
  const cells = pyramid[level];
  if (cells === undefined) {
    takeFrom(extremes, { rowsPerCell: 1, low: column, high: column }, from, to);
    return;
  }
  const first = Math.ceil(from / cells.rowsPerCell);
  const end = Math.floor(to / cells.rowsPerCell);
  if (first >= end) {
    take(extremes, { column, pyramid, from, to, level: level - 1 });
    return;
  }
  takeFrom(extremes, cells, first, end);
  take(extremes, { column, pyramid, from, to: first * cells.rowsPerCell, level: level - 1 });
  take(extremes, { column, pyramid, from: end * cells.rowsPerCell, to, level: level - 1 });
}

/** A cell without a number is NaN and passes both comparisons by. */
function takeFrom(extremes: Extremes, { low, high }: PyramidLevel, from: number, to: number): void {
  let { least, greatest } = extremes;
  for (let i = from; i < to; i++) {
    if (low[i]! < least) least = low[i]!;
    if (high[i]! > greatest) greatest = high[i]!;
  }
  extremes.least = least;
  extremes.greatest = greatest;
}

/** Columns of a log, all of one length. */
export type LogColumns = Readonly<Record<string, readonly number[]>>;

/** Rows that say as much as any number of them, once neighbouring rows hang together; common practice, no source. */
const ENOUGH_ROWS = 2000;

/**
 * The columns with as many consecutive rows averaged as bring them to `mostRows` or fewer: a long log then fits a document,
 * and the noise of a speed reading, which makes a fitted drag too small, gets less. The last rows that fill no mean are
 * left out.
 *
 * Range    any columns of one length; short ones come back as they are.
 *
 * @example thinnedColumns({ time: [0, 1, 2, 3], speed: [4, 2, 2, 0] }, 2) // { time: [0.5, 2.5], speed: [3, 1] }
 */
export function thinnedColumns(columns: LogColumns, mostRows = ENOUGH_ROWS): LogColumns {
  const rows = Math.max(0, ...Object.values(columns).map(({ length }) => length));
  const together = Math.ceil(rows / mostRows);
  if (together <= 1) return columns;
  const means = (values: readonly number[]) =>
    Array.from({ length: Math.floor(values.length / together) }, (_, i) => {
      const part = values.slice(i * together, (i + 1) * together);
      return part.reduce((sum, value) => sum + value, 0) / together;
    });
  return Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, means(values)]));
}

/** Stretches of neighbouring rows that are looked at, and rows in each: enough for any column, and quick in a long one. */
const STRETCHES = 16;
const ROWS = 1024;
/** Fewest changes from row to row that tell a step. */
const FEWEST_CHANGES = 20;
/** Part of the changes that must be of one step: jumps between plateaus are few. */
const SINGLE_STEPS = 0.2;
/** Part of the changes that must be whole steps. */
const WHOLE_STEPS = 0.98;

/**
 * Smallest step that the readings of a column really take, from a scale that shows every 5 g or a counter that goes by
 * 30 rpm; `written` is the step of the last printed decimal, and what is returned where no coarser one is plain.
 *
 * The step is the least change between neighbouring rows, in whole written steps; readings that are converted and
 * rounded, like counts times 0.43 g, may be off by one written step.
 */
export function readingStep(values: Float64Array, written: number): number {
  if (!(written > 0)) return written;
  const changes = changesIn(values, written);
  if (changes.length < FEWEST_CHANGES) return written;
  const step = changes.reduce((least, change) => Math.min(least, change), Infinity);
  if (step < 2) return written;
  const single = changes.filter((change) => change <= step + 1);
  const width = single.reduce((sum, change) => sum + change, 0) / single.length;
  const whole = changes.filter((change) => Math.abs(change - width * Math.round(change / width)) <= 1);
  const isPlain = single.length >= SINGLE_STEPS * changes.length && whole.length >= WHOLE_STEPS * changes.length;
  return isPlain ? width * written : written;
}

/** Changes between neighbouring rows that are not nought, in whole written steps. */
function changesIn(values: Float64Array, written: number): number[] {
  const rows = Math.min(ROWS, values.length);
  const stretches = Math.min(STRETCHES, Math.ceil(values.length / rows));
  const changes: number[] = [];
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.floor((stretch * (values.length - rows)) / Math.max(1, stretches - 1));
    for (let row = from + 1; row < from + rows; row++) {
      const change = Math.round(Math.abs(values[row]! - values[row - 1]!) / written);
      if (change > 0) changes.push(change);
    }
  }
  return changes;
}

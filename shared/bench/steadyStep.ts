/** A signal on a clock of its own; times never fall. */
export interface Signal {
  /** s */
  readonly times: Float64Array;
  /** NaN where a reading is missing. */
  readonly values: Float64Array;
}

/** A signal at even steps from `start` on; NaN in gaps and beyond the ends. */
export interface EvenSignal {
  readonly start: number;
  readonly step: number;
  readonly values: Float64Array;
}

/** A stretch between two readings longer than this many usual steps is a gap. */
const GAP = 5;

/** Readings that are there, and the longest stretch between two of them that is no gap, s. */
export function withoutMissing({ times, values }: Signal): Signal & { readonly longest: number } {
  const kept = values.reduce<number[]>((rows, value, row) => {
    if (!Number.isNaN(value)) rows.push(row);
    return rows;
  }, []);
  const known = {
    times: Float64Array.from(kept, (row) => times[row]!),
    values: Float64Array.from(kept, (row) => values[row]!),
  };
  return { ...known, longest: GAP * usualStep(known.times) };
}

/** Median step between readings, s. */
export function usualStep(times: Float64Array): number {
  const steps = new Float64Array(Math.max(0, times.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = times[i + 1]! - times[i]!;
  const rising = steps.filter((step) => step > 0).sort();
  return rising[rising.length >> 1] ?? 0;
}

/** Values of a signal without missing readings at rising `times`, by straight lines; NaN in gaps and beyond the ends. */
export function valuesAt(signal: Signal & { readonly longest: number }, times: Float64Array): Float64Array {
  const { longest } = signal;
  const known = signal.times;
  const found = new Float64Array(times.length).fill(Number.NaN);
  let at = 0;
  for (let i = 0; i < times.length; i++) {
    const time = times[i]!;
    while (at + 1 < known.length && known[at + 1]! <= time) at++;
    const [before, after] = [known[at]!, known[at + 1]];
    if (time < before || known.length === 0) continue;
    if (time === before) found[i] = signal.values[at]!;
    else if (after !== undefined && after - before <= longest) {
      const part = (time - before) / (after - before);
      found[i] = signal.values[at]! + part * (signal.values[at + 1]! - signal.values[at]!);
    }
  }
  return found;
}

/** The signal at even steps of `step` from its first reading to its last. */
export function evenly(signal: Signal & { readonly longest: number }, step: number): EvenSignal {
  const start = signal.times[0] ?? 0;
  const end = signal.times.at(-1) ?? start;
  const count = Math.floor((end - start) / step + 1e-9) + 1;
  const times = Float64Array.from({ length: count }, (_, i) => start + i * step);
  return { start, step, values: valuesAt(signal, times) };
}

/** Means of `factor` neighbouring values; NaN where all are missing. */
export function thinned({ start, step, values }: EvenSignal, factor: number): EvenSignal {
  const count = Math.floor(values.length / factor);
  const means = Float64Array.from({ length: count }, (_, bin) => {
    let [sum, n] = [0, 0];
    for (let i = bin * factor; i < (bin + 1) * factor; i++) {
      if (Number.isNaN(values[i]!)) continue;
      sum += values[i]!;
      n++;
    }
    return n === 0 ? Number.NaN : sum / n;
  });
  return { start: start + ((factor - 1) / 2) * step, step: step * factor, values: means };
}

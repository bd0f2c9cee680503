import type { Signal } from "@preact/signals";

/** `value` and `onChange` of a field that keeps a signal. */
export const bound = <T>(kept: Signal<T>) => ({
  value: kept.value,
  onChange: (value: T) => {
    kept.value = value;
  },
});

/** The same for a quantity that must be there: while the field holds none, the last one stays in force. */
export const boundNumber = (kept: Signal<number>) => ({
  value: kept.value,
  onChange: (value: number | null) => {
    if (value !== null) kept.value = value;
  },
});

/** The same for a count of things. */
export const boundCount = (kept: Signal<number>) => ({
  value: kept.value,
  onChange: (value: number | null) => {
    if (value !== null) kept.value = Math.round(value);
  },
});

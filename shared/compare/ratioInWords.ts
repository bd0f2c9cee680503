import type { VariantRatio } from "../model/comparison.ts";
import { decimalsFor } from "../quantity/format.ts";

/** "1.62 (95 %: 1.55 to 1.70)": value and interval ends to the digits that the interval deserves. */
export function ratioInWords(ratio: Pick<VariantRatio, "value" | "interval95">, between = ""): string {
  const { value, interval95 } = ratio;
  const half = (interval95[1] - interval95[0]) / 2;
  // Two decimals at least: a ratio of "2 (0 to 44)" would hide on which side of 1 it ends.
  const decimals = half > 0 ? Math.min(6, Math.max(2, decimalsFor(half))) : 3;
  const [number, low, high] = [value, ...interval95].map((x) => x.toFixed(decimals));
  return `${number}${between} (95 %: ${low} to ${high})`;
}

import type { VariantRatio } from "../model/comparison.ts";
import { decimalsFor } from "../quantity/format.ts";

type Told = Pick<VariantRatio, "value" | "interval95">;

/** "1.62 (95 %: 1.55 to 1.70)": value and interval ends to the digits that the interval deserves. */
export function ratioInWords(ratio: Told, between = ""): string {
  return `${ratio.value.toFixed(decimalsOf(ratio))}${between} (95 %: ${intervalInWords(ratio)})`;
}

/** "1.55 to 1.70". */
export function intervalInWords(ratio: Told): string {
  return ratio.interval95.map((end) => end.toFixed(decimalsOf(ratio))).join(" to ");
}

function decimalsOf({ interval95 }: Told): number {
  const half = (interval95[1] - interval95[0]) / 2;
  // Two decimals at least: a ratio of "2 (0 to 44)" would hide on which side of 1 it ends.
  return half > 0 ? Math.min(6, Math.max(2, decimalsFor(half))) : 3;
}

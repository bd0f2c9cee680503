import type { Robustness } from "../../../../shared/model/robustness.ts";
import { formatInterval, formatNumber } from "../../../../shared/quantity/format.ts";

/** One line a way of asking: the ratio it gives and how far that is from the answer. */
export function robustnessRows({ rows }: Robustness) {
  return rows.map(({ title, value, interval95, change, agrees, why }) => ({
    title,
    ratio:
      value === null
        ? why
        : `${formatNumber(value, 4)}${interval95 === null ? "" : ` (${formatInterval(interval95)})`}`,
    change: change === null ? "–" : `${formatNumber(change, 2)} u`,
    agrees: agrees === null ? "can not be told" : agrees ? "yes" : "no",
  }));
}

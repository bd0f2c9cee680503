import { median } from "../numeric/median.ts";
import type { Channel } from "./channels.ts";
import type { RowSpan } from "./rest.ts";
import { everyNth } from "./settling.ts";

/** Readings that the median is taken of: evenly picked ones. */
const READINGS = 512;

/** Median of a channel over the second half of a stretch, when it has settled, SI; null where nothing was read. */
export function lateReading({ raw, scale, shift }: Channel, { from, to }: RowSpan): number | null {
  const late = everyNth(raw.subarray(from + ((to - from) >> 1), to), READINGS);
  return late.length > 0 ? median(late) * scale + shift : null;
}

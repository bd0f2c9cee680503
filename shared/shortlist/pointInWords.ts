import type { DutyPoint, PointQuantity } from "../model/shortlistResult.ts";
import { formatQuantity, formatUncertain, type ShownUnit } from "../quantity/format.ts";
import { uncertain } from "../quantity/uncertain.ts";

/** A number of a point with half its 95 % interval, where the parts state a doubt: "18.2 ± 0.4 N"; null: not known. */
export function pointInWords(point: DutyPoint, quantity: PointQuantity, unit: ShownUnit): string | null {
  const value = point[quantity];
  if (value === null) return null;
  const doubt = point.standardUncertainties?.[quantity];
  // An interval that is a thousandth of the number says nothing but makes it long.
  return doubt === undefined || doubt < NEGLIGIBLE * Math.abs(value)
    ? formatQuantity(value, unit, 3)
    : formatUncertain(uncertain(value, doubt), unit);
}

const NEGLIGIBLE = 2e-4;

import { monotoneCubic } from "../numeric/monotoneCubic.ts";
import { within } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { NICKEL_MANGANESE_COBALT_CELL } from "./chargeCurve.data.ts";

export interface ChargeCurvePoint {
  /** Share of the charge that is left, 0 to 1. */ readonly charge: number;
  /** Open-circuit voltage of one cell, V. */ readonly voltage: number;
}

/**
 * Open-circuit voltage of one cell, V, at a share `charge` of its charge; without a curve of its own the cell is taken as
 * nickel-manganese-cobalt.
 *
 * Source   `chargeCurve.data.ts`; between the points Fritsch & Butland (`monotoneCubic`).
 * Assumes  a rested cell: the voltage after a load comes back to this within hours.
 * Range    charge 0 to 1, and inside the curve where one is stated: it is not carried on.
 * Error    of the built-in table 0.01 V against the fits it was made from; another make of the same chemistry differs by
 *          some 0.1 V at equal charge (common practice, no source).
 * Throws   OutOfDomain `supply.charge-curve` for a curve that does not rise, `supply.charge-outside-curve` past its ends.
 *
 * @example cellVoltage(0.5) // 3.707763 V
 */
export function cellVoltage(charge: number, curve: readonly ChargeCurvePoint[] = NICKEL_MANGANESE_COBALT_CELL): number {
  const s = within(charge, 0, 1, "charge", "");
  const points = checkedCurve(curve);
  const [first, last] = [points[0]!, points.at(-1)!];
  if (s < first.charge || s > last.charge) throw outsideCurve(s, first.charge, last.charge);
  return monotoneCubic(
    points.map((point) => point.charge),
    points.map((point) => point.voltage),
  )(s);
}

/** The points in rising order of charge; refused where the voltage falls or one charge has two voltages. */
function checkedCurve(curve: readonly ChargeCurvePoint[]): readonly ChargeCurvePoint[] {
  const points = curve.toSorted((a, b) => a.charge - b.charge);
  const wrong = points.findIndex((point, i) => {
    const before = points[i - 1];
    return before !== undefined && (point.charge === before.charge || point.voltage < before.voltage);
  });
  if (wrong < 0 && points.length > 1) return points;
  const at = points[Math.max(wrong, 0)]!;
  throw new OutOfDomain({
    code: "supply.charge-curve",
    where: "pack.cells.curve",
    found: `At a charge of ${formatNumber(at.charge)} the curve of the cell has ${formatNumber(at.voltage, 4)} V, no higher charge or a lower voltage than the point before`,
    needed: "two points or more, with charge and voltage both rising",
    mend: "Look for a percentage read as a share, or two columns that changed places",
  });
}

function outsideCurve(charge: number, low: number, high: number): OutOfDomain {
  return new OutOfDomain({
    code: "supply.charge-outside-curve",
    where: "charge",
    found: `A charge of ${formatNumber(charge)} lies outside the curve of the cell`,
    needed: `${formatNumber(low)} to ${formatNumber(high)}`,
    mend: "Add points to the curve, or leave the curve away to use that of a common cell",
  });
}

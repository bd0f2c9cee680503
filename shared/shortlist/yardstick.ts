import type { DrivePropeller } from "../model/drivePropeller.ts";
import type { ShortlistRow } from "../model/shortlistResult.ts";
import { formatPercent } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";

/**
 * The name of a propeller as a shortlist tells it: one of a published series says so wherever it stands, so that no table,
 * picture or file shows it as one that was kept or measured.
 */
export function nameTold({ name, source }: DrivePropeller): string {
  return source === "series" ? `${name} (yardstick, not a part)` : name;
}

/** What a reader must know of a combination whose propeller is that of a published series. */
export function yardsticks(propeller: DrivePropeller): Warning[] {
  if (propeller.source !== "series") return [];
  const { thrustCoefficient, torqueCoefficient } = propeller.ahead;
  const part = ({ value, standardUncertainty }: typeof thrustCoefficient) => formatPercent(standardUncertainty / value);
  return [
    warning({
      code: "shortlist.yardstick",
      where: propeller.name,
      found: `This propeller is no part that you keep: its numbers are those of a smooth, well-made propeller of full size, a yardstick, not a forecast, counted with a standard uncertainty of ${part(thrustCoefficient)} in thrust and ${part(torqueCoefficient)} in torque for what a small one may lose`,
      needed: "a propeller that was measured",
      mend: "Make one and measure it before you count on this combination",
    }),
  ];
}

/** What the headline adds of yardsticks: that the first is one, or where the best of them scores more than the first. */
export function besideYardsticks(rows: readonly ShortlistRow[]): string[] {
  const first = rows[0];
  const best = rows.find(({ train }) => train.propeller.source === "series");
  if (first === undefined || best === undefined) return [];
  if (best === first)
    return [
      "The propeller of the first is one of a published series: a yardstick, not a forecast, and no part that you keep; none that you keep meets the requirement.",
    ];
  if (!(best.score > first.score)) return [];
  return [
    `By its numbers alone number ${best.rank} would score more, but its propeller is one of a published series: a yardstick, not a forecast, and no part that you keep.`,
  ];
}

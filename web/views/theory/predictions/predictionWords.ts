import type { PredictionSource } from "../../../../shared/model/prediction.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { partOf } from "../../../app/session.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";
import { FAMILY_NAMES } from "../series/familyNames.ts";

/** Where the numbers of a prediction come from, in a phrase. */
export function sourceWords(source: PredictionSource): string {
  if (source.kind === "staticMerit")
    return `momentum theory with a stated static merit of ${formatNumber(source.staticMerit, 2)}`;
  if (source.kind === "blades") {
    const part = partOf("propellers", source.propellerId);
    const { roughness, liftFactor } = source.surface;
    return (
      `blade elements of ${part?.document.name ?? "a propeller that is no longer in the parts"}, roughness ` +
      `${formatNumber(roughness * 1e6, 2)}\u202fµm, lift factor ${formatNumber(liftFactor, 3)}`
    );
  }
  const { series, diameter } = source;
  const blades =
    series.family === "wageningen-b"
      ? `, ${series.blades} blades, area ratio ${formatNumber(series.areaRatio, 2)}`
      : "";
  return (
    `${FAMILY_NAMES[series.family]}${blades}, P/D ${formatNumber(series.pitchRatio, 3)}, ` +
    `${formatQuantity(diameter, MILLIMETRE)}, smooth and at its tests' Reynolds number`
  );
}

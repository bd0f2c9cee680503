import type { Doubtful } from "../../../../shared/model/drivePropeller.ts";
import type { Dimension } from "../../../../shared/quantity/units.data.ts";
import type { Allowed } from "../../../forms/quantityText.ts";
import { KeptQuantity } from "./KeptQuantity.tsx";

interface DoubtfulFieldsProps extends Allowed {
  readonly label: string;
  readonly symbol?: string;
  readonly dimension: Dimension;
  readonly unit?: string;
  readonly help?: string;
  readonly value: Doubtful;
  readonly onKeep: (value: Doubtful) => unknown;
}

/** A number and its standard uncertainty, side by side. */
export function DoubtfulFields({
  label,
  symbol,
  dimension,
  unit,
  help,
  value,
  onKeep,
  ...allowed
}: DoubtfulFieldsProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw a box round two fields
    <div class="build-pair" role="group" aria-label={label}>
      <KeptQuantity
        {...allowed}
        {...{ label, symbol, dimension, unit, help }}
        value={value.value}
        onKeep={(si) => si !== null && onKeep({ ...value, value: si })}
      />
      <KeptQuantity
        label="give or take"
        {...{ dimension: differenceOf(dimension), unit }}
        value={value.standardUncertainty}
        min={0}
        onKeep={(si) => si !== null && onKeep({ ...value, standardUncertainty: si })}
      />
    </div>
  );
}

/** A doubt of a temperature is a difference of temperatures. */
const differenceOf = (dimension: Dimension): Dimension =>
  dimension === "temperature" ? "temperatureDifference" : dimension;

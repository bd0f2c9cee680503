import type { SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { FAMILY_NAMES } from "../predictions/predictionDraft.ts";

interface SeriesFieldsProps {
  readonly value: SeriesWithoutPitch;
  readonly onChange: (series: SeriesWithoutPitch) => void;
}

const FAMILIES = Object.entries(FAMILY_NAMES).map(([value, label]) => ({
  value: value as SeriesWithoutPitch["family"],
  label,
}));

/** A screw of the B series to come back to when a nozzle series is left. */
const OPEN = { family: "wageningen-b", blades: 3, areaRatio: 0.5 } as const;

/** A published series, with blades and area ratio where the series leaves them open. */
export function SeriesFields({ value, onChange }: SeriesFieldsProps) {
  return (
    <>
      <SelectField
        label="Series"
        value={value.family}
        options={FAMILIES}
        onChange={(family) => onChange(family === "wageningen-b" ? OPEN : { family })}
      />
      {value.family === "wageningen-b" && (
        <>
          <QuantityField
            label="Number of blades"
            symbol="Z"
            dimension="number"
            value={value.blades}
            min={2}
            max={7}
            onChange={(blades) => blades !== null && onChange({ ...value, blades: Math.round(blades) })}
          />
          <QuantityField
            label="Expanded area ratio"
            symbol="A_E/A_0"
            dimension="number"
            value={value.areaRatio}
            positive
            max={2}
            onChange={(areaRatio) => areaRatio !== null && onChange({ ...value, areaRatio })}
          />
        </>
      )}
    </>
  );
}

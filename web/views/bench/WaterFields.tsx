import type { FluidState } from "../../../shared/model/fluid.ts";
import { CELSIUS_ZERO, STANDARD_ATMOSPHERE } from "../../../shared/quantity/constants.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";

export interface WaterFieldsProps {
  readonly label: string;
  readonly fluid: FluidState;
  readonly onCommit: (fluid: FluidState) => void;
}

/** Kind, temperature and what else settles the density and viscosity of a fluid. */
export function WaterFields({ label, fluid, onCommit }: WaterFieldsProps) {
  return (
    <>
      <SelectField
        label={label}
        value={fluid.kind}
        options={[
          { value: "fresh", label: "Fresh water" },
          { value: "sea", label: "Sea water" },
          { value: "air", label: "Air" },
        ]}
        onChange={(kind) => onCommit(fluidOfKind(kind, fluid.temperature))}
      />
      <QuantityField
        label="Temperature"
        dimension="temperature"
        unit="°C"
        value={fluid.temperature}
        min={CELSIUS_ZERO - 30}
        max={CELSIUS_ZERO + 60}
        onChange={() => undefined}
        onCommit={(temperature) =>
          temperature !== null && temperature !== fluid.temperature && onCommit({ ...fluid, temperature })
        }
      />
      {fluid.kind === "sea" && (
        <QuantityField
          label="Practical salinity"
          symbol="S"
          dimension="number"
          value={fluid.salinity}
          min={0}
          max={42}
          help="Open sea about 35; brackish water less."
          onChange={() => undefined}
          onCommit={(salinity) => salinity !== null && salinity !== fluid.salinity && onCommit({ ...fluid, salinity })}
        />
      )}
      {fluid.kind === "air" && (
        <>
          <QuantityField
            label="Air pressure"
            dimension="pressure"
            unit="hPa"
            value={fluid.pressure}
            positive
            onChange={() => undefined}
            onCommit={(pressure) =>
              pressure !== null && pressure !== fluid.pressure && onCommit({ ...fluid, pressure })
            }
          />
          <QuantityField
            label="Relative humidity"
            dimension="fraction"
            unit="%"
            value={fluid.humidity}
            min={0}
            max={1}
            onChange={() => undefined}
            onCommit={(humidity) =>
              humidity !== null && humidity !== fluid.humidity && onCommit({ ...fluid, humidity })
            }
          />
        </>
      )}
    </>
  );
}

/** A fluid of another kind at the same temperature, with the usual values of what the kind needs besides. */
function fluidOfKind(kind: FluidState["kind"], temperature: number): FluidState {
  if (kind === "sea") return { kind, temperature, salinity: 35 };
  if (kind === "air") return { kind, temperature, pressure: STANDARD_ATMOSPHERE, humidity: 0.5 };
  return { kind, temperature };
}

import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { advanceSpeed, charge, depth, direction, pack, supplyTemperature } from "./driveChoices.ts";

/** The state of the supply and the way the thruster runs. */
export function StateFields() {
  return (
    <div class="form-grid">
      <SelectField
        label="The propeller turns"
        value={direction.value}
        options={[
          { value: "ahead", label: "ahead" },
          { value: "astern", label: "astern" },
        ]}
        onChange={(way) => {
          direction.value = way;
        }}
      />
      <QuantityField
        label="Speed of the water into it"
        symbol="V_A"
        dimension="speed"
        unit="m/s"
        value={advanceSpeed.value}
        min={0}
        max={20}
        help="0 with the vehicle held still."
        onChange={(speed) => {
          if (speed !== null) advanceSpeed.value = speed;
        }}
      />
      <QuantityField
        label="Depth of the shaft"
        symbol="h"
        dimension="length"
        unit="m"
        value={depth.value}
        min={0}
        max={11000}
        optional
        help="For cavitation and air drawn in."
        onChange={(metres) => {
          depth.value = metres;
        }}
      />
      {pack.value?.document.cells !== undefined && (
        <QuantityField
          label="Charge left in the pack"
          symbol="s"
          dimension="fraction"
          unit="%"
          value={charge.value}
          min={0}
          max={1}
          optional
          help="Left empty, the voltage as it was stated."
          onChange={(share) => {
            charge.value = share;
          }}
        />
      )}
      <QuantityField
        label="Temperature of pack and wires"
        dimension="temperature"
        unit="°C"
        value={supplyTemperature.value}
        min={233}
        max={343}
        optional
        help="Left empty, 20 °C. Cold packs sag more."
        onChange={(kelvin) => {
          supplyTemperature.value = kelvin;
        }}
      />
    </div>
  );
}

import { bound, boundNumber } from "../../forms/bound.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { advanceSpeed, charge, depth, direction, pack, supplyTemperature } from "./driveChoices.ts";

/** The state of the supply and the way the thruster runs. */
export function StateFields() {
  return (
    <div class="form-grid">
      <SelectField
        label="The propeller turns"
        {...bound(direction)}
        options={[
          { value: "ahead", label: "ahead" },
          { value: "astern", label: "astern" },
        ]}
      />
      <QuantityField
        label="Speed of the water into it"
        symbol="V_A"
        dimension="speed"
        unit="m/s"
        {...boundNumber(advanceSpeed)}
        min={0}
        max={20}
        help="0 with the vehicle held still."
      />
      <QuantityField
        label="Depth of the shaft"
        symbol="h"
        dimension="length"
        unit="m"
        {...bound(depth)}
        min={0}
        max={11000}
        optional
        help="For cavitation and air drawn in."
      />
      <SupplyFields />
    </div>
  );
}

function SupplyFields() {
  return (
    <>
      {pack.value?.document.cells !== undefined && (
        <QuantityField
          label="Charge left in the pack"
          symbol="s"
          dimension="fraction"
          unit="%"
          {...bound(charge)}
          min={0}
          max={1}
          optional
          help="Left empty, the voltage as it was stated."
        />
      )}
      <QuantityField
        label="Temperature of pack and wires"
        dimension="temperature"
        unit="°C"
        {...bound(supplyTemperature)}
        min={233}
        max={343}
        optional
        help="Left empty, 20 °C. Cold packs sag more."
      />
    </>
  );
}

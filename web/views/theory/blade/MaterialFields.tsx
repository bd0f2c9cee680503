import type { PrintedMaterial } from "../../../../shared/model/bladeStrength.ts";
import { PRINTED_MATERIALS } from "../../../../shared/propeller/strength/printedMaterials.data.ts";
import { boundNumber } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { loadFactor, material } from "./bladeState.ts";

const set = (part: Partial<PrintedMaterial>) => {
  material.value = { ...material.value, ...part };
};

/** What the blade is printed of, how it lies in the layers, and how much more than predicted it has to bear. */
export function MaterialFields() {
  return (
    <div class="form-grid">
      <MaterialChoice />
      <StrengthField label="Strength in the layers" symbol="X_1" of="strengthInLayer" />
      <StrengthField label="Strength across the layers" symbol="X_2" of="strengthAcrossLayers" />
      <LayerAngleField />
      <WaterFactorField />
      <QuantityField
        label="Load over the predicted"
        symbol="k"
        dimension="number"
        {...boundNumber(loadFactor)}
        positive
        max={20}
        help="Above 1 for uneven inflow, or measured thrust over predicted."
      />
    </div>
  );
}

function MaterialChoice() {
  const now = material.value;
  return (
    <SelectField
      label="Printed material"
      value={now.name}
      options={PRINTED_MATERIALS.map(({ name }) => ({ value: name, label: name }))}
      help={`Starting values: ${now.source}. The maker's data sheet or your own pull test comes first.`}
      onChange={(name) => {
        material.value = PRINTED_MATERIALS.find((one) => one.name === name) ?? now;
      }}
    />
  );
}

interface StrengthFieldProps {
  readonly label: string;
  readonly symbol: string;
  readonly of: "strengthInLayer" | "strengthAcrossLayers";
}

function StrengthField({ label, symbol, of }: StrengthFieldProps) {
  return (
    <QuantityField
      label={label}
      symbol={symbol}
      dimension="pressure"
      unit="MPa"
      value={material.value[of]}
      positive
      onChange={(pascal) => {
        if (pascal !== null) set({ [of]: pascal, source: "typed" });
      }}
    />
  );
}

function LayerAngleField() {
  return (
    <QuantityField
      label="Blade against the layers"
      symbol="psi"
      dimension="angle"
      unit="°"
      value={material.value.layerAngle}
      min={0}
      max={Math.PI / 2}
      help="0° where the blade lies in the layers, 90° where the layers are stacked along it."
      onChange={(layerAngle) => {
        if (layerAngle !== null) set({ layerAngle });
      }}
    />
  );
}

function WaterFactorField() {
  return (
    <QuantityField
      label="Strength left in water"
      symbol="f_w"
      dimension="fraction"
      unit="%"
      value={material.value.waterFactor}
      positive
      max={1}
      onChange={(waterFactor) => {
        if (waterFactor !== null) set({ waterFactor });
      }}
    />
  );
}

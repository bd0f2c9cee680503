import { PRINTED_MATERIALS } from "../../../../shared/propeller/strength/printedMaterials.data.ts";
import { type WarningItem, Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { Findings } from "../Findings.tsx";
import { strengthRows, stressPicture } from "./bladeModel.ts";
import { loadFactor, material, strength, told } from "./bladeState.ts";

/** Whether the printed blade bears its load, with the cautions that belong to it. */
export function StrengthPart() {
  const now = strength.value;
  if (now === null) return null;
  return (
    <section aria-labelledby="theory-strength">
      <h3 id="theory-strength">Does the print bear it?</h3>
      <MaterialFields />
      {"problem" in now && <p class="warning">{now.problem}</p>}
      {"answer" in now && now.answer.state === "failed" && <p class="warning">{now.answer.reason}</p>}
      {"answer" in now && now.answer.state === "solved" && (
        <>
          <p role="status">{now.answer.sentence}</p>
          <Chart spec={stressPicture(now.answer)} height={280} />
          <Findings caption="Strength of the blade" rows={strengthRows(now.answer)} />
          <Warnings items={untold(now.answer.warnings)} />
          <div class="caution">
            <ul>
              {now.answer.cautions.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </div>
        </>
      )}
    </section>
  );
}

/** What the card says of the blade elements above is not said again. */
function untold(warnings: readonly WarningItem[]): readonly WarningItem[] {
  const above = told.value !== null && "solved" in told.value ? told.value.solved.warnings : [];
  return warnings.filter(({ message }) => !above.some((one) => one.message === message));
}

function MaterialFields() {
  const now = material.value;
  const set = (part: Partial<typeof now>) => {
    material.value = { ...now, ...part };
  };
  const stress = (label: string, symbol: string, key: "strengthInLayer" | "strengthAcrossLayers") => (
    <QuantityField
      label={label}
      symbol={symbol}
      dimension="pressure"
      unit="MPa"
      value={now[key]}
      positive
      onChange={(pascal) => {
        if (pascal !== null) set({ [key]: pascal, source: "typed" });
      }}
    />
  );
  return (
    <div class="form-grid">
      <SelectField
        label="Printed material"
        value={now.name}
        options={PRINTED_MATERIALS.map(({ name }) => ({ value: name, label: name }))}
        help={`Starting values: ${now.source}. The maker's data sheet or your own pull test comes first.`}
        onChange={(name) => {
          material.value = PRINTED_MATERIALS.find((one) => one.name === name) ?? now;
        }}
      />
      {stress("Strength in the layers", "X_1", "strengthInLayer")}
      {stress("Strength across the layers", "X_2", "strengthAcrossLayers")}
      <QuantityField
        label="Blade against the layers"
        symbol="psi"
        dimension="angle"
        unit="°"
        value={now.layerAngle}
        min={0}
        max={Math.PI / 2}
        help="0° where the blade lies in the layers, 90° where the layers are stacked along it."
        onChange={(layerAngle) => {
          if (layerAngle !== null) set({ layerAngle });
        }}
      />
      <QuantityField
        label="Strength left in water"
        symbol="f_w"
        dimension="fraction"
        unit="%"
        value={now.waterFactor}
        positive
        max={1}
        onChange={(waterFactor) => {
          if (waterFactor !== null) set({ waterFactor });
        }}
      />
      <QuantityField
        label="Load over the predicted"
        symbol="k"
        dimension="number"
        value={loadFactor.value}
        positive
        max={20}
        help="Above 1 for uneven inflow, or measured thrust over predicted."
        onChange={(factor) => {
          if (factor !== null) loadFactor.value = factor;
        }}
      />
    </div>
  );
}

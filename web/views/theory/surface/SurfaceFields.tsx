import type { SurfaceState } from "../../../../shared/model/surfaceState.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import {
  basisWords,
  choiceOf,
  GRITS,
  STATE_NAMES,
  type StateName,
  type SurfaceChoice,
  startOf,
} from "./surfaceChoice.ts";

interface SurfaceFieldsProps {
  readonly value: SurfaceChoice;
  readonly onChange: (value: SurfaceChoice) => void;
}

const OPTIONS: readonly { readonly value: StateName | ""; readonly label: string }[] = [
  { value: "", label: "By its numbers" },
  ...Object.entries(STATE_NAMES).map(([value, label]) => ({ value: value as StateName, label })),
];

/** The surface of blades by how they were made, or by roughness and lift factor; the numbers can be changed either way. */
export function SurfaceFields({ value, onChange }: SurfaceFieldsProps) {
  const { state, roughness, liftFactor } = value;
  return (
    <>
      <SelectField
        label="Surface"
        value={state?.state ?? ""}
        options={OPTIONS}
        help="How the blades were made, or the two numbers."
        onChange={(name) => onChange(name === "" ? { ...value, state: null } : startOf(name))}
      />
      {state !== null && <StateFields state={state} onChange={(changed) => onChange(choiceOf(changed))} />}
      <QuantityField
        label="Roughness height"
        symbol="k_p"
        dimension="length"
        unit="mm"
        value={roughness}
        min={0}
        max={0.005}
        help="0 is smooth."
        onChange={(height) => onChange({ ...value, state: null, roughness: height })}
      />
      <QuantityField
        label="Lift factor"
        symbol="k_L"
        dimension="number"
        value={liftFactor}
        positive
        max={2}
        help="1 is a clean section; less where the surface is ridged or the edges are blunt."
        onChange={(factor) => onChange({ ...value, state: null, liftFactor: factor })}
      />
      {state !== null && <p class="hint surface-basis">{basisWords(state)}</p>}
    </>
  );
}

interface StateFieldsProps {
  readonly state: SurfaceState;
  readonly onChange: (state: SurfaceState) => void;
}

function StateFields({ state, onChange }: StateFieldsProps) {
  if (state.state === "printed") return <PrintedFields state={state} onChange={onChange} />;
  if (state.state !== "sanded" && state.state !== "filledAndSanded") return null;
  return (
    <SelectField
      label="Last grit"
      value={state.grit}
      options={GRITS.map((grit) => ({ value: grit, label: grit }))}
      onChange={(grit) => onChange({ ...state, grit })}
    />
  );
}

function PrintedFields({
  state,
  onChange,
}: {
  readonly state: SurfaceState & { state: "printed" };
  readonly onChange: (state: SurfaceState) => void;
}) {
  return (
    <>
      <QuantityField
        label="Layer height"
        symbol="h"
        dimension="length"
        unit="mm"
        value={state.layerHeight}
        positive
        max={0.002}
        onChange={(layerHeight) => layerHeight !== null && onChange({ ...state, layerHeight })}
      />
      <SelectField
        label="Flow over the blade"
        value={state.flow}
        options={[
          { value: "acrossLayers", label: "across the layers" },
          { value: "alongLayers", label: "along the layers" },
        ]}
        onChange={(flow) => onChange({ ...state, flow })}
      />
      <QuantityField
        label="Surface against the layers"
        symbol="alpha"
        dimension="angle"
        unit="°"
        value={state.slope}
        min={0}
        max={Math.PI / 2}
        help="Printed on its hub face: the pitch angle."
        onChange={(slope) => slope !== null && onChange({ ...state, slope })}
      />
    </>
  );
}

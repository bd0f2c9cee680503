import { useState } from "preact/hooks";
import { fluidProperties } from "../../../shared/fluid/fluidProperties.ts";
import { floodedRotorDrag } from "../../../shared/motor/wetRotor.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { project } from "../../app/session.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { rotorText } from "./identifyModel.ts";

interface Sizes {
  readonly radius: number | null;
  readonly length: number | null;
  readonly radialGap: number | null;
  readonly axialGap: number | null;
  readonly rotationRate: number | null;
}

const FIELDS = [
  { key: "radius", label: "Radius of the turning surface in the gap", unit: "mm" },
  { key: "length", label: "Length of that surface", unit: "mm" },
  { key: "radialGap", label: "Radial gap", unit: "mm" },
  { key: "axialGap", label: "Axial gap at the end faces", unit: "mm" },
] as const;

/** What water in the gaps costs, where no wet run was made: an estimate from sizes, in the working water. */
export function RotorEstimate() {
  const [sizes, setSizes] = useState<Sizes>({
    ...{ radius: null, length: null, radialGap: null, axialGap: null, rotationRate: null },
  });
  const set = (key: keyof Sizes) => (value: number | null) => setSizes((now) => ({ ...now, [key]: value }));
  const text = estimateOf(sizes);
  return (
    <details>
      <summary>No wet run? Estimate what water in the gaps costs</summary>
      <div class="form-grid">
        {FIELDS.map(({ key, label, unit }) => (
          <QuantityField
            key={key}
            label={label}
            dimension="length"
            unit={unit}
            value={sizes[key]}
            positive
            optional
            onChange={set(key)}
          />
        ))}
        <QuantityField
          label="Rotation rate"
          dimension="rotationRate"
          unit="rpm"
          value={sizes.rotationRate}
          positive
          optional
          onChange={set("rotationRate")}
        />
      </div>
      {text !== "" && <p role="status">{text}</p>}
    </details>
  );
}

function estimateOf({ radius, length, radialGap, axialGap, rotationRate }: Sizes): string {
  if (radius === null || length === null || radialGap === null || rotationRate === null) return "";
  try {
    const { density, kinematicViscosity } = fluidProperties(project.value!.document.water);
    const rotor = { radius, length, radialGap, axialGap, rotationRate, density, kinematicViscosity };
    return rotorText(floodedRotorDrag(rotor), axialGap !== null);
  } catch (thrown) {
    return sentenceOf(thrown);
  }
}

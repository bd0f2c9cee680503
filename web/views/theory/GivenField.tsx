import type { Dimension } from "../../../shared/quantity/units.data.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";

const FIELDS = {
  thrust: { label: "Thrust", symbol: "T", dimension: "massAsForce", unit: "N" },
  shaftPower: { label: "Shaft power", symbol: "P", dimension: "power", unit: "W" },
  electricalPower: { label: "Electrical power", symbol: "P_e", dimension: "power", unit: "W" },
  rotationRate: { label: "Rotation rate", symbol: "n", dimension: "rotationRate", unit: "rpm" },
} as const satisfies Readonly<Record<string, { label: string; symbol: string; dimension: Dimension; unit: string }>>;

interface GivenFieldProps {
  /** Which quantity is given. */
  readonly given: keyof typeof FIELDS;
  /** SI. */
  readonly value: number;
  readonly onChange: (si: number) => void;
}

/** The one number that belongs to what is given: a thrust, a power or a rotation rate. */
export function GivenField({ given, value, onChange }: GivenFieldProps) {
  return (
    <QuantityField
      key={given}
      {...FIELDS[given]}
      value={value}
      positive
      onChange={(si) => {
        if (si !== null) onChange(si);
      }}
    />
  );
}

import type { Doubtful, DrivePropeller } from "../../../../shared/model/drivePropeller.ts";
import { DoubtfulFields } from "./DoubtfulFields.tsx";
import { KeptText } from "./KeptText.tsx";

interface TypedPropellerFieldsProps {
  readonly propeller: DrivePropeller;
  readonly onKeep: (propeller: DrivePropeller) => unknown;
}

/** Diameter and coefficients at rest; what it does at speed stays as it was. */
export function TypedPropellerFields({ propeller, onKeep }: TypedPropellerFieldsProps) {
  const { ahead } = propeller;
  const setAhead = (key: "thrustCoefficient" | "torqueCoefficient") => (value: Doubtful) =>
    onKeep({ ...propeller, ahead: { ...ahead, [key]: value } });
  return (
    <>
      <div class="form-grid build-broad">
        <KeptText
          label="Name of the propeller"
          value={propeller.name}
          maxLength={120}
          gap={(name) => (name.trim() === "" ? "Needed: a name." : "")}
          onKeep={(name) => onKeep({ ...propeller, name })}
        />
        <DoubtfulFields
          {...{ label: "Diameter", symbol: "D", dimension: "length", unit: "mm" }}
          value={propeller.diameter}
          positive
          max={2}
          onKeep={(diameter) => onKeep({ ...propeller, diameter })}
        />
        <DoubtfulFields
          {...{ label: "Thrust coefficient at rest", symbol: "K_T", dimension: "number" }}
          value={ahead.thrustCoefficient}
          positive
          max={2}
          onKeep={setAhead("thrustCoefficient")}
        />
        <DoubtfulFields
          {...{ label: "Torque coefficient at rest", symbol: "K_Q", dimension: "number" }}
          value={ahead.torqueCoefficient}
          positive
          max={1}
          onKeep={setAhead("torqueCoefficient")}
        />
      </div>
      {ahead.openWater === undefined && (
        <p class="hint">
          Known at rest only: speeds that follow from it are too high, because the thrust falls as the vehicle moves.
          Begin from a variant or a series to have its shape at speed.
        </p>
      )}
    </>
  );
}

import { useRef } from "preact/hooks";
import { QuantityField, type QuantityFieldProps } from "../../../forms/QuantityField.tsx";

interface KeptQuantityProps extends Omit<QuantityFieldProps, "onChange" | "onCommit"> {
  /** Called when the field is left or Enter is pressed, and only where something was typed. */
  readonly onKeep: (si: number | null) => unknown;
}

/** A quantity of a stored document: kept when it is whole and left, so that one change is one act to take back. */
export function KeptQuantity({ onKeep, ...field }: KeptQuantityProps) {
  // A field shows six digits: leaving it untouched must not store the shorter number.
  const typed = useRef(false);
  return (
    <QuantityField
      {...field}
      onChange={() => {
        typed.current = true;
      }}
      onCommit={(si) => {
        if (!typed.current) return;
        typed.current = false;
        void onKeep(si);
      }}
    />
  );
}

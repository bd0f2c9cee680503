import { SelectField } from "../../../forms/SelectField.tsx";
import { BAUD_RATES } from "./portLink.ts";

interface BaudRateFieldProps {
  readonly value: number;
  readonly onChange: (baudRate: number) => void;
}

export function BaudRateField({ value, onChange }: BaudRateFieldProps) {
  return (
    <SelectField
      label="Baud rate"
      value={String(value)}
      options={BAUD_RATES.map((rate) => ({ value: String(rate), label: String(rate) }))}
      help="As the program of the stand sets it. With a wrong one the lines come as gibberish."
      onChange={(rate) => onChange(Number(rate))}
    />
  );
}

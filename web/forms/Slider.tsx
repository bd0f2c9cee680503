import { formatNumber } from "../../shared/quantity/format.ts";
import { Field } from "./Field.tsx";

export interface SliderProps {
  readonly label: string;
  readonly symbol?: string | undefined;
  /** In the printed unit, not SI. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** Printed behind the number, e.g. "%". */
  readonly unit?: string | undefined;
  /** At each movement. */
  readonly onChange: (value: number) => void;
  /** When it is let go. */
  readonly onCommit?: ((value: number) => void) | undefined;
  readonly help?: string | undefined;
}

/** A slider with the same number beside it, to type. */
export function Slider({ label, symbol, value, min, max, step, unit = "", onChange, onCommit, help }: SliderProps) {
  const take = (text: string, then: ((value: number) => void) | undefined) => {
    const number = Number(text.replace(",", "."));
    if (text.trim() !== "" && number >= min && number <= max) then?.(number);
  };
  const spoken = `${formatNumber(value, 4)} ${unit}`.trim();
  return (
    <Field label={label} symbol={symbol} help={help}>
      {({ id, describedBy }) => (
        <div class="slider">
          <input
            id={id}
            type="range"
            {...{ min, max, step, value }}
            aria-valuetext={spoken}
            aria-describedby={describedBy}
            onInput={(event) => take(event.currentTarget.value, onChange)}
            onChange={(event) => take(event.currentTarget.value, onCommit)}
          />
          <input
            class="slider-number"
            type="number"
            {...{ min, max, step, value }}
            aria-label={unit ? `${label}, ${unit}` : label}
            onInput={(event) => take(event.currentTarget.value, onChange)}
            onChange={(event) => take(event.currentTarget.value, onCommit)}
          />
          {unit && <span class="slider-unit">{unit}</span>}
        </div>
      )}
    </Field>
  );
}

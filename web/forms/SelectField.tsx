import { Field } from "./Field.tsx";
import { useChosen } from "./useChosen.ts";

export interface Option<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly disabled?: boolean;
}

export interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly Option<T>[];
  /** A promise for a choice that is stored: the choice stays on show until it is kept. */
  readonly onChange: (value: T) => unknown;
  readonly help?: string | undefined;
  readonly problem?: string | null | undefined;
}

/** One of a few, from a list. */
export function SelectField<T extends string>({ label, value, options, onChange, help, problem }: SelectFieldProps<T>) {
  const [shown, choose] = useChosen(value, onChange);
  return (
    <Field label={label} help={help} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <select
          id={id}
          value={shown}
          aria-describedby={describedBy}
          aria-invalid={wrong}
          onChange={(event) => choose(event.currentTarget.value as T)}
        >
          {options.map((option) => (
            <option
              key={option.value}
              value={option.value}
              disabled={option.disabled}
              selected={option.value === shown}
            >
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

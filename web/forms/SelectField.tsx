import { Field } from "./Field.tsx";

export interface Option<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly disabled?: boolean;
}

export interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly Option<T>[];
  readonly onChange: (value: T) => void;
  readonly help?: string | undefined;
  readonly problem?: string | null | undefined;
}

/** One of a few, from a list. */
export function SelectField<T extends string>({ label, value, options, onChange, help, problem }: SelectFieldProps<T>) {
  return (
    <Field label={label} help={help} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <select
          id={id}
          value={value}
          aria-describedby={describedBy}
          aria-invalid={wrong}
          onChange={(event) => onChange(event.currentTarget.value as T)}
        >
          {options.map((option) => (
            <option
              key={option.value}
              value={option.value}
              disabled={option.disabled}
              selected={option.value === value}
            >
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

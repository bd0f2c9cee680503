import { Field } from "./Field.tsx";

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onCommit?: ((value: string) => void) | undefined;
  readonly help?: string | undefined;
  readonly problem?: string | null | undefined;
  readonly optional?: boolean | undefined;
  readonly maxLength?: number | undefined;
  /** Several lines. */
  readonly lines?: number | undefined;
}

/** Words. */
export function TextField(props: TextFieldProps) {
  const { label, value, onChange, onCommit, help, problem, optional, maxLength, lines } = props;
  return (
    <Field label={label} help={help} problem={problem} optional={optional}>
      {({ id, describedBy, problem: wrong }) => {
        const shared = {
          id,
          value,
          "aria-describedby": describedBy,
          "aria-invalid": wrong,
          ...(maxLength === undefined ? {} : { maxLength }),
        };
        return lines === undefined ? (
          <input
            {...shared}
            type="text"
            autocomplete="off"
            onInput={(event) => onChange(event.currentTarget.value)}
            onBlur={(event) => onCommit?.(event.currentTarget.value)}
          />
        ) : (
          <textarea
            {...shared}
            rows={lines}
            onInput={(event) => onChange(event.currentTarget.value)}
            onBlur={(event) => onCommit?.(event.currentTarget.value)}
          />
        );
      }}
    </Field>
  );
}

import { Field } from "../../forms/Field.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { type Draft, NONE, numberFrom, numberText } from "./partDraft.ts";
import type { PartField } from "./partFields.ts";

export interface PartInputFieldProps {
  readonly field: PartField;
  readonly value: Draft[string];
  readonly problem: string | null;
  readonly onChange: (value: Draft[string]) => void;
  /** Called with why what is typed can not be read, or null once it can. */
  readonly onUnread: (message: string | null) => void;
}

/** The control of one value of a part. */
export function PartInputField({ field, value, problem, onChange, onUnread }: PartInputFieldProps) {
  const { label, optional, help } = field;
  const shared = { label, optional, help, problem, onChange };
  switch (field.kind) {
    case "quantity":
      return (
        <QuantityField
          {...shared}
          symbol={field.symbol}
          dimension={field.dimension}
          unit={field.unit}
          value={value as number | null}
          check={field.check}
          onProblem={onUnread}
        />
      );
    case "scaled":
    case "count":
      return <NumberInput {...shared} field={field} value={value as number | string | null} onUnread={onUnread} />;
    case "yesNo":
      return (
        <label class="part-check">
          <input type="checkbox" checked={value === true} onChange={(event) => onChange(event.currentTarget.checked)} />{" "}
          {label}
        </label>
      );
    case "list":
      return <TextField {...shared} value={String(value ?? "")} lines={2} />;
    case "words":
      return (
        <TextField
          {...shared}
          value={String(value ?? "")}
          maxLength={field.maxLength}
          lines={field.lines > 1 ? field.lines : undefined}
        />
      );
  }
}

interface NumberInputProps extends Omit<PartInputFieldProps, "value"> {
  readonly field: PartField & { readonly kind: "scaled" | "count" };
  readonly value: number | string | null;
}

/** A number whose unit is fixed and stands beside it. */
function NumberInput({ field, value, problem, onChange, onUnread }: NumberInputProps) {
  const { label, optional, help, leaf } = field;
  const [symbol, unit, factor] = field.kind === "scaled" ? [field.symbol, field.unit, field.factor] : ["", "", 1];
  const type = (text: string) => {
    const isNone = leaf.nullable && text.trim().toLowerCase() === NONE;
    const read = isNone ? NONE : numberFrom(text, factor);
    onUnread(read === null && text.trim() !== "" ? "Needed: a number." : null);
    onChange(read);
  };
  return (
    <Field label={label} symbol={symbol} unit={unit} optional={optional} help={help} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <input
          id={id}
          type="text"
          inputMode={leaf.nullable ? "text" : "decimal"}
          autocomplete="off"
          defaultValue={typeof value === "string" ? value : numberText(value, factor)}
          aria-describedby={describedBy}
          aria-invalid={wrong}
          onInput={(event) => type(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

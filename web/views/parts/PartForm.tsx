import { useMemo, useState } from "preact/hooks";
import type { PartKind } from "../../../shared/model/parts/partKinds.ts";
import type { PartInput } from "../../api/client.ts";
import { Field } from "../../forms/Field.tsx";
import { FormButtons } from "../../forms/FormButtons.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { type Draft, documentOf, draftOf, draftProblems, numberFrom, numberText } from "./partDraft.ts";
import { fieldsOf, type PartField } from "./partFields.ts";

export interface PartFormProps<K extends PartKind> {
  readonly kind: K;
  /** The part to change; null for a new one. */
  readonly part: Readonly<Record<string, unknown>> | null;
  readonly onSave: (document: PartInput<K>) => void;
  readonly onCancel: () => void;
}

/** The form of a part, drawn from its schema. */
export function PartForm<K extends PartKind>({ kind, part, onSave, onCancel }: PartFormProps<K>) {
  const fields = useMemo(() => fieldsOf(kind), [kind]);
  const [draft, setDraft] = useState(() => draftOf(fields, part));
  const [unread, setUnread] = useState<Readonly<Record<string, string>>>({});
  const [tried, setTried] = useState(false);
  const problems = { ...draftProblems(fields, draft), ...unread };

  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (Object.keys(problems).length === 0) onSave(documentOf<K>(fields, draft, part));
  };
  return (
    <form class="form-grid" onSubmit={submit} noValidate>
      {fields.map((field) => (
        <PartInputField
          key={field.key}
          field={field}
          value={draft[field.key] ?? null}
          problem={tried ? (problems[field.key] ?? null) : null}
          onChange={(value) => setDraft((now) => ({ ...now, [field.key]: value }))}
          onUnread={(message) => setUnread((now) => withProblem(now, field.key, message))}
        />
      ))}
      <FormButtons onCancel={onCancel} gap={tried ? gapOf(Object.keys(problems).length) : ""} />
    </form>
  );
}

function gapOf(problems: number): string {
  if (problems === 0) return "";
  return problems === 1 ? "One field needs a look." : `${problems} fields need a look.`;
}

function withProblem(now: Readonly<Record<string, string>>, key: string, message: string | null) {
  const { [key]: _gone, ...rest } = now;
  return message === null ? rest : { ...rest, [key]: message };
}

interface PartInputFieldProps {
  readonly field: PartField;
  readonly value: Draft[string];
  readonly problem: string | null;
  readonly onChange: (value: Draft[string]) => void;
  readonly onUnread: (message: string | null) => void;
}

function PartInputField({ field, value, problem, onChange, onUnread }: PartInputFieldProps) {
  const { label, optional, help } = field;
  switch (field.kind) {
    case "quantity":
      return (
        <QuantityField
          {...{ label, optional, help, problem, onChange }}
          symbol={field.symbol}
          dimension={field.dimension}
          unit={field.unit}
          value={value as number | null}
          check={field.check}
          onProblem={onUnread}
        />
      );
    case "scaled":
      return (
        <NumberInput
          {...{ label, optional, help, problem, onChange }}
          symbol={field.symbol}
          unit={field.unit}
          factor={field.factor}
          value={value as number | null}
        />
      );
    case "count":
      return (
        <NumberInput
          {...{ label, optional, help, problem, onChange }}
          unit=""
          factor={1}
          value={value as number | null}
        />
      );
    case "yesNo":
      return (
        <label class="part-check">
          <input type="checkbox" checked={value === true} onChange={(event) => onChange(event.currentTarget.checked)} />{" "}
          {label}
        </label>
      );
    case "words":
      return (
        <TextField
          {...{ label, optional, help, problem, onChange }}
          value={String(value ?? "")}
          maxLength={field.maxLength}
          lines={field.lines > 1 ? field.lines : undefined}
        />
      );
  }
}

interface NumberInputProps {
  readonly label: string;
  readonly symbol?: string;
  readonly unit: string;
  readonly factor: number;
  readonly value: number | null;
  readonly optional: boolean;
  readonly help: string | undefined;
  readonly problem: string | null;
  readonly onChange: (value: number | null) => void;
}

/** A number whose unit is fixed and stands beside it. */
function NumberInput({ label, symbol, unit, factor, value, optional, help, problem, onChange }: NumberInputProps) {
  return (
    <Field label={unit ? `${label}, ${unit}` : label} symbol={symbol} optional={optional} help={help} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          defaultValue={numberText(value, factor)}
          aria-describedby={describedBy}
          aria-invalid={wrong}
          onInput={(event) => onChange(numberFrom(event.currentTarget.value, factor))}
        />
      )}
    </Field>
  );
}

import { useEffect, useId, useState } from "preact/hooks";
import { Field } from "../../forms/Field.tsx";

interface NoteFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly suggestions?: readonly string[];
  readonly help?: string;
}

/** Words that are stored when the field is left; earlier words are offered. */
export function NoteField({ label, value, onCommit, suggestions = [], help }: NoteFieldProps) {
  const [text, setText] = useState(value);
  const list = useId();
  useEffect(() => setText(value), [value]);
  const leave = () => {
    const next = text.trim();
    if (next !== value) onCommit(next);
  };
  return (
    <Field label={label} help={help}>
      {({ id, describedBy }) => (
        <>
          <input
            id={id}
            type="text"
            autocomplete="off"
            maxLength={60}
            list={list}
            aria-describedby={describedBy}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
            onBlur={leave}
            onKeyDown={(event) => event.key === "Enter" && leave()}
          />
          <datalist id={list}>
            {suggestions.map((one) => (
              <option key={one} value={one} />
            ))}
          </datalist>
        </>
      )}
    </Field>
  );
}

import { useEffect, useId, useRef, useState } from "preact/hooks";
import { Field } from "../../forms/Field.tsx";

interface NoteFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly suggestions?: readonly string[];
  readonly help?: string;
  /** Characters at most. */
  readonly longest?: number;
  /** Why a text can not be taken, or null where it can; what can not is not stored. */
  readonly problemOf?: (text: string) => string | null;
}

/** Words that are stored when the field is left; earlier words are offered. */
export function NoteField({ label, value, onCommit, suggestions = [], help, longest = 60, problemOf }: NoteFieldProps) {
  const [text, setText] = useState(value);
  const [problem, setProblem] = useState<string | null>(null);
  const list = useId();
  // What was sent by Enter is not sent again when the focus goes, to the question of a conflict for instance.
  const entered = useRef(false);
  useEffect(() => setText(value), [value]);
  const commit = () => {
    const next = text.trim();
    const wrong = problemOf?.(next) ?? null;
    setProblem(wrong);
    if (wrong === null && next !== value) onCommit(next);
  };
  return (
    <Field label={label} help={help} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <>
          <input
            id={id}
            type="text"
            autocomplete="off"
            maxLength={longest}
            list={list}
            aria-describedby={describedBy}
            aria-invalid={wrong}
            value={text}
            onInput={(event) => {
              entered.current = false;
              setText(event.currentTarget.value);
            }}
            onBlur={() => {
              if (!entered.current) commit();
            }}
            onKeyDown={(event) => {
              if (event.key !== "Enter") return;
              entered.current = true;
              commit();
            }}
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

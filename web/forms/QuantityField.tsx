import { useEffect, useRef, useState } from "preact/hooks";
import type { Dimension } from "../../shared/quantity/units.data.ts";
import { Field } from "./Field.tsx";
import { type Allowed, type ReadText, readText, takenFor, textOf, unitOfText } from "./quantityText.ts";

export interface QuantityFieldProps extends Allowed {
  readonly label: string;
  readonly symbol?: string | undefined;
  readonly dimension: Dimension;
  /** SI value; null for an empty field. */
  readonly value: number | null;
  /** Unit to show the value in until the person writes another, e.g. "mm". */
  readonly unit?: string | undefined;
  /** Called at each keystroke that makes a whole quantity; null where an optional field was emptied. */
  readonly onChange: (si: number | null) => void;
  /** Called when the field is left or Enter is pressed with a whole quantity in it. */
  readonly onCommit?: ((si: number | null) => void) | undefined;
  /** Called with the problem, or null once it is mended. */
  readonly onProblem?: ((message: string | null) => void) | undefined;
  readonly optional?: boolean | undefined;
  readonly help?: string | undefined;
  /** Said of the field from outside, e.g. that it must not stay empty. */
  readonly problem?: string | null | undefined;
  /** For electrical rotation rates. */
  readonly polePairs?: number | undefined;
}

/** A quantity typed with its unit. What can not be read is said under the field; the last whole value stays in force. */
export function QuantityField(props: QuantityFieldProps) {
  const { label, symbol, help, optional } = props;
  const { text, problem, taken, type, leave, enter } = useQuantityText(props);
  const told = [help, taken].filter(Boolean).join(" ");
  return (
    <Field label={label} symbol={symbol} help={told} optional={optional} problem={problem}>
      {({ id, describedBy, problem: wrong }) => (
        <input
          id={id}
          class="quantity"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={text}
          aria-describedby={describedBy}
          aria-invalid={wrong}
          required={!optional}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={(event) => event.key === "Enter" && enter()}
        />
      )}
    </Field>
  );
}

/** The text in the field, what is wrong with it, and what typing, leaving and Enter do. */
function useQuantityText(props: QuantityFieldProps) {
  const { dimension, value, unit } = props;
  const [text, setText] = useState(() => (value === null ? "" : textOf(value, dimension, unit)));
  const [left, setLeft] = useState(value !== null);
  const read = whole(text, props);

  // A value that came from elsewhere (undo, another field) replaces the text, in the unit the person last wrote.
  useEffect(() => {
    const shown = read.kind === "value" ? read.si : null;
    const same = shown !== null && value !== null && Math.abs(shown - value) <= 1e-9 * Math.abs(value);
    if (same || (shown === null && value === null) || (read.kind === "problem" && value === null)) return;
    setText(value === null ? "" : textOf(value, dimension, unitOfText(text, dimension) ?? unit));
  }, [value]);

  // What was committed by Enter is not committed again when the focus goes.
  const entered = useRef(false);
  const type = (next: string) => {
    entered.current = false;
    setText(next);
    const now = whole(next, props);
    props.onProblem?.(now.kind === "problem" ? now.message : null);
    if (now.kind !== "problem") props.onChange(now.kind === "value" ? now.si : null);
  };
  const commit = () => {
    setLeft(true);
    if (read.kind !== "problem") props.onCommit?.(read.kind === "value" ? read.si : null);
  };
  const leave = () => {
    if (entered.current) setLeft(true);
    else commit();
  };
  const enter = () => {
    entered.current = true;
    commit();
  };

  const problem = (left && read.kind === "problem" ? read.message : null) ?? props.problem;
  const taken = read.kind === "value" ? takenFor(text, dimension, read.si) : null;
  return { text, problem, taken, type, leave, enter };
}

function whole(
  text: string,
  { dimension, optional, polePairs, min, max, positive, unitNeeded, check, example }: QuantityFieldProps,
): ReadText {
  const allowed: Allowed = {
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    ...(positive ? { positive } : {}),
    ...(unitNeeded ? { unitNeeded } : {}),
    ...{ check, example },
  };
  const read = readText(text, dimension, allowed, polePairs);
  return read.kind === "empty" && !optional ? { kind: "problem", message: "Needed: a value with its unit." } : read;
}

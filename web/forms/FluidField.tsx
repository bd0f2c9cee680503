import { useEffect, useState } from "preact/hooks";
import { describeFluid, parseFluid } from "../../shared/fluid/parseFluid.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import { Field } from "./Field.tsx";

export interface FluidFieldProps {
  readonly label: string;
  readonly value: FluidState;
  /** Called at each keystroke that makes a whole fluid. */
  readonly onChange: (fluid: FluidState) => void;
  readonly onCommit?: ((fluid: FluidState) => void) | undefined;
}

/** A fluid in words: "fresh 18C", "sea 12C 35psu", "air 20C 1013hPa 50%". */
export function FluidField({ label, value, onChange, onCommit }: FluidFieldProps) {
  const [text, setText] = useState(() => describeFluid(value));
  const [left, setLeft] = useState(false);
  const read = readFluid(text);

  // A fluid that came from elsewhere replaces the words.
  useEffect(() => {
    if (!("fluid" in read) || JSON.stringify(read.fluid) !== JSON.stringify(value)) setText(describeFluid(value));
  }, [JSON.stringify(value)]);

  const type = (next: string) => {
    setText(next);
    const now = readFluid(next);
    if ("fluid" in now) onChange(now.fluid);
  };
  return (
    <Field
      label={label}
      help="For example fresh 18C, sea 12C 35psu, or air 20C 1013hPa 50%."
      problem={left && "problem" in read ? read.problem : null}
    >
      {({ id, describedBy, problem }) => (
        <input
          id={id}
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={text}
          aria-describedby={describedBy}
          aria-invalid={problem}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={() => {
            setLeft(true);
            if ("fluid" in read) onCommit?.(read.fluid);
          }}
        />
      )}
    </Field>
  );
}

function readFluid(text: string): { readonly fluid: FluidState } | { readonly problem: string } {
  try {
    return { fluid: parseFluid(text) };
  } catch (thrown) {
    if (thrown instanceof InputProblem || thrown instanceof OutOfDomain) return { problem: thrown.message };
    throw thrown;
  }
}

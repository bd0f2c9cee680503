import { useEffect, useState } from "preact/hooks";
import { TextField, type TextFieldProps } from "../../../forms/TextField.tsx";

interface KeptTextProps extends Omit<TextFieldProps, "onChange" | "onCommit" | "problem"> {
  readonly onKeep: (text: string) => unknown;
  /** Why a text can not be kept; empty where it can. */
  readonly gap?: (text: string) => string;
}

/** Words of a stored document, kept when the field is left. */
export function KeptText({ value, onKeep, gap = () => "", ...field }: KeptTextProps) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const problem = text === value ? "" : gap(text);
  return (
    <TextField
      {...field}
      value={text}
      problem={problem || null}
      onChange={setText}
      onCommit={(left) => {
        if (left !== value && gap(left) === "") void onKeep(left.trim());
      }}
    />
  );
}

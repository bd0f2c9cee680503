import { useEffect, useState } from "preact/hooks";

interface NameCellProps {
  readonly label: string;
  readonly value: string;
  /** Why a name can not be given; empty where it can. */
  readonly gap: (name: string) => string;
  readonly onKeep: (name: string) => unknown;
}

/** A name in the head cell of a row. */
export function NameCell({ label, value, gap, onKeep }: NameCellProps) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const problem = text.trim() === value ? "" : gap(text);
  const keep = () => {
    if (text.trim() !== value && problem === "") void onKeep(text.trim());
  };
  return (
    <th scope="row" class="build-cell build-name">
      <input
        type="text"
        autocomplete="off"
        maxLength={120}
        aria-label={label}
        aria-invalid={problem !== ""}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === "Enter") keep();
          if (event.key === "Escape") setText(value);
        }}
      />
      {problem !== "" && (
        <span class="field-message" role="alert">
          {problem}
        </span>
      )}
    </th>
  );
}

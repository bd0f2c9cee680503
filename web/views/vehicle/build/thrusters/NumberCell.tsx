import { useEffect, useId, useState } from "preact/hooks";
import type { Allowed } from "../../../../forms/quantityText.ts";
import { type CellUnit, cellText, readCell } from "./cellText.ts";

interface NumberCellProps extends CellUnit, Allowed {
  readonly label: string;
  /** SI. */
  readonly value: number;
  readonly onKeep: (si: number) => unknown;
}

/** A number in a cell of a table; kept when the cell is left or Enter is pressed. Escape brings the old one back. */
export function NumberCell({ label, value, onKeep, ...how }: NumberCellProps) {
  const id = useId();
  const stored = cellText(value, how);
  const [text, setText] = useState(stored);
  useEffect(() => setText(stored), [stored]);
  const read = readCell(text, how, how);
  const problem = text === stored ? "" : read.kind === "problem" ? read.message : read.kind === "empty" ? EMPTY : "";
  const keep = () => {
    if (text !== stored && read.kind === "value") void onKeep(read.si);
  };
  return (
    <td class="build-cell">
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        aria-label={label}
        aria-invalid={problem !== ""}
        aria-describedby={problem === "" ? undefined : id}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === "Enter") keep();
          if (event.key === "Escape") setText(stored);
        }}
      />
      {problem !== "" && (
        <span class="field-message" id={id} role="alert">
          {problem}
        </span>
      )}
    </td>
  );
}

const EMPTY = "Needed: a number.";

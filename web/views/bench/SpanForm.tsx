import { useState } from "preact/hooks";

interface Span {
  readonly start: number;
  readonly end: number;
}

interface SpanFormProps {
  /** What it adds, e.g. "a plateau". */
  readonly what: string;
  /** "s", or "" where rows are counted. */
  readonly unit: string;
  /** Why these ends can not be taken; empty when they can. */
  readonly gap: (span: Span) => string;
  readonly onSpan: (span: Span) => void;
}

/** Two ends to type: adds a stretch without a pointer. */
export function SpanForm({ what, unit, gap, onSpan }: SpanFormProps) {
  const [start, setStart] = useState("");
  const [end, setEnd] = useState("");
  const span = { start: Number(start), end: Number(end) };
  const filled = start !== "" && end !== "";
  const missing = filled ? gap(span) : "";
  const field = (label: string, text: string, take: (text: string) => void) => (
    <label>
      {label} <input type="number" step="any" value={text} onInput={(event) => take(event.currentTarget.value)} />{" "}
      {unit}
    </label>
  );
  return (
    <form
      class="bench-add"
      onSubmit={(event) => {
        event.preventDefault();
        if (!filled || missing !== "") return;
        onSpan(span);
        setStart("");
        setEnd("");
      }}
    >
      {field(`Add ${what} from${unit === "" ? " row" : ""}`, start, setStart)}
      {field("to", end, setEnd)}
      <button type="submit" disabled={!filled || missing !== ""}>
        Add {what}
      </button>
      {missing !== "" && <span class="hint">{missing}</span>}
    </form>
  );
}

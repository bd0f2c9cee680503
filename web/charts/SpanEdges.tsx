import { useState } from "preact/hooks";
import { useChosen } from "../forms/useChosen.ts";
import type { ChartAxis, ChartSpan } from "./chartSpec.ts";

export interface SpanEdgesProps {
  readonly axis: ChartAxis;
  readonly spans: readonly ChartSpan[];
  readonly onSpanChange: (id: string, start: number, end: number) => unknown;
}

/** The edges of the spans as numbers to type: what dragging does, for those who do not drag. */
export function SpanEdges({ axis, spans, onSpanChange }: SpanEdgesProps) {
  const take = (span: ChartSpan, edge: "start" | "end", text: string) => {
    const value = Number(text);
    if (text.trim() === "" || !Number.isFinite(value)) return undefined;
    const other = edge === "start" ? span.end : span.start;
    return onSpanChange(span.id, Math.min(value, other), Math.max(value, other));
  };
  return (
    <details class="span-edges">
      <summary>Edges as numbers</summary>
      <ul>
        {spans
          .filter(({ fixed }) => !fixed)
          .map((span) => (
            <li key={span.id}>
              <span class="span-name">{span.label}</span>
              {(["start", "end"] as const).map((edge) => (
                <EdgeField
                  key={edge}
                  label={`${span.label}, ${edge}${axis.unit && `, ${axis.unit}`}`}
                  value={span[edge]}
                  onTake={(text) => take(span, edge, text)}
                />
              ))}
              <span class="muted">{axis.unit}</span>
            </li>
          ))}
      </ul>
    </details>
  );
}

interface EdgeFieldProps {
  readonly label: string;
  readonly value: number;
  readonly onTake: (text: string) => unknown;
}

/** What is being typed stays, though the picture is drawn anew meanwhile; it is taken by Enter, or when the field is left. */
function EdgeField({ label, value, onTake }: EdgeFieldProps) {
  const [shown, take] = useChosen(String(Number(value.toPrecision(7))), onTake);
  const [typed, setTyped] = useState<string | null>(null);
  const commit = () => {
    setTyped(null);
    if (typed !== null && typed !== shown) take(typed);
  };
  return (
    <input
      type="number"
      step="any"
      value={typed ?? shown}
      aria-label={label}
      onInput={(event) => setTyped(event.currentTarget.value)}
      onBlur={commit}
      onKeyDown={(event) => event.key === "Enter" && commit()}
    />
  );
}

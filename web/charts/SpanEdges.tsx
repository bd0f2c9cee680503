import type { ChartAxis, ChartSpan } from "./chartSpec.ts";

export interface SpanEdgesProps {
  readonly axis: ChartAxis;
  readonly spans: readonly ChartSpan[];
  readonly onSpanChange: (id: string, start: number, end: number) => void;
}

/** The edges of the spans as numbers to type: what dragging does, for those who do not drag. */
export function SpanEdges({ axis, spans, onSpanChange }: SpanEdgesProps) {
  const take = (span: ChartSpan, edge: "start" | "end", text: string) => {
    const value = Number(text);
    if (text.trim() === "" || !Number.isFinite(value)) return;
    const other = edge === "start" ? span.end : span.start;
    onSpanChange(span.id, Math.min(value, other), Math.max(value, other));
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
                <input
                  key={edge}
                  type="number"
                  step="any"
                  value={Number(span[edge].toPrecision(7))}
                  aria-label={`${span.label}, ${edge}${axis.unit && `, ${axis.unit}`}`}
                  onChange={(event) => take(span, edge, event.currentTarget.value)}
                />
              ))}
              <span class="muted">{axis.unit}</span>
            </li>
          ))}
      </ul>
    </details>
  );
}

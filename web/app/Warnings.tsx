import { PrintedSymbol } from "../forms/Field.tsx";
import { plainMessage } from "./plainMessage.ts";

export interface WarningItem {
  readonly code: string;
  readonly message: string;
  readonly where?: string;
}

/** What a reader must know next to a result. */
export function Warnings({
  items,
  title = "To know",
}: {
  readonly items: readonly WarningItem[];
  readonly title?: string;
}) {
  if (items.length === 0) return null;
  return (
    <section class="warnings" aria-label={title}>
      <ul>
        {items.map((item) => (
          <li key={`${item.code} ${item.where} ${item.message}`} class="warning">
            {withSymbols(plainMessage(item))}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Symbols of coefficients as they are printed: "K_T" with its index below. */
function withSymbols(text: string) {
  return text
    .split(/\b([KC]_[TQP])\b/)
    .map((part, at) => (at % 2 === 1 ? <PrintedSymbol key={at} text={part} /> : part));
}

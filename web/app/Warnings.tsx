import { capitalised } from "./words.ts";

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
        {items.map(({ code, message, where }) => (
          <li key={`${code} ${where} ${message}`} class="warning">
            {capitalised(withoutFieldPath(message, where))}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The name of a field in the interface means nothing on the page, where the fields have labels. */
function withoutFieldPath(message: string, where: string | undefined): string {
  const isPath = where !== undefined && /^[a-z]\w*(\[\d+\])?(\.\w+(\[\d+\])?)*$/.test(where);
  return isPath && message.startsWith(`${where}: `) ? message.slice(where.length + 2) : message;
}

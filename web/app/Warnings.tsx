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
            {message}
          </li>
        ))}
      </ul>
    </section>
  );
}

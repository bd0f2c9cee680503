import type { ComponentChildren } from "preact";

export interface TableBoxProps {
  /** What the table holds, for a screen reader. */
  readonly label: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** A box in which a wide table scrolls by itself, so that the page never does; reachable from the keyboard for that. */
export function TableBox({ label, class: more = "", children }: TableBoxProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable from the keyboard
    <section class={`table-box ${more}`} tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}

import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { wantedSection } from "./sections.ts";

interface FoldProps {
  readonly id: string;
  readonly title: string;
  /** What stays to be read while it is folded. */
  readonly note?: string | undefined;
  readonly open?: boolean;
  /** It is asked for from elsewhere, e.g. by a plateau picked on the picture. */
  readonly wanted?: boolean;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** One section of the bench; it opens when the list of sections leads to it. */
export function Fold({ id, title, note, open = true, wanted = false, class: name = "", children }: FoldProps) {
  const [unfolded, setUnfolded] = useState(open);
  const led = wantedSection.value?.id === id;
  useEffect(() => {
    if (wanted || led) setUnfolded(true);
  }, [wanted, led]);
  return (
    <details
      class={`card bench-fold ${name}`}
      id={id}
      open={unfolded}
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>
        <h2>{title}</h2>
        {note && <span class="bench-fold-note">{note}</span>}
      </summary>
      <div class="bench-fold-body">{children}</div>
    </details>
  );
}

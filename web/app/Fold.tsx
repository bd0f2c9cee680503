import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import "./fold.css";
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
  /** Its inside is made only while it is open: nothing that takes long to compute runs before it is asked for. */
  readonly lazy?: boolean;
  readonly children: ComponentChildren;
}

/** One section of a long screen; it opens when the list of sections leads to it. */
export function Fold({
  id,
  title,
  note,
  open = true,
  wanted = false,
  class: name = "",
  lazy = false,
  children,
}: FoldProps) {
  const [unfolded, setUnfolded] = useState(open);
  const led = wantedSection.value?.id === id;
  useEffect(() => {
    if (wanted || led) setUnfolded(true);
  }, [wanted, led]);
  return (
    <details
      class={`card fold ${name}`}
      id={id}
      open={unfolded}
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>
        <h2>{title}</h2>
        {note && <span class="fold-note">{note}</span>}
      </summary>
      {(unfolded || !lazy) && <div class="fold-body">{children}</div>}
    </details>
  );
}

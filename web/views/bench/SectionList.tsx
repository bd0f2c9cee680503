import { useEffect } from "preact/hooks";
import { type Section, wantedSection } from "./sections.ts";

/** Leads to each section of the bench and unfolds it. */
export function SectionList({ sections }: { readonly sections: readonly Section[] }) {
  const wanted = wantedSection.value;
  useEffect(() => {
    if (wanted === null) return;
    const section = document.getElementById(wanted.id);
    section?.scrollIntoView({ block: "start" });
    const head = section?.querySelector<HTMLElement>("summary, h2, button");
    head?.focus({ preventScroll: true });
    wantedSection.value = null;
  }, [wanted]);
  return (
    <nav class="bench-sections" aria-label="Sections of this run">
      <ul>
        {sections.map(({ id, label }) => (
          <li key={id}>
            <button type="button" class="quiet" onClick={() => (wantedSection.value = { id })}>
              {label}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

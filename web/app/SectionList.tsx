import { useEffect } from "preact/hooks";
import "./fold.css";
import { type Section, wantedSection } from "./sections.ts";

/** Leads to each section of a long screen and unfolds it. */
export function SectionList({ label, sections }: { readonly label: string; readonly sections: readonly Section[] }) {
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
    <nav class="section-list" aria-label={label}>
      <ul>
        {sections.map((section) => (
          <li key={section.id}>
            <button type="button" class="quiet" onClick={() => (wantedSection.value = { id: section.id })}>
              {section.label}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

import { useEffect } from "preact/hooks";
import "./fold.css";
import { type Section, wantedSection } from "./sections.ts";

/** Leads to each section of a long screen and unfolds it. */
export function SectionList({ label, sections }: { readonly label: string; readonly sections: readonly Section[] }) {
  const wanted = wantedSection.value;
  const made = sections.map(({ id }) => id).join(" ");
  useEffect(() => {
    // A section that an address asks for may be made only when its answer has come.
    const section = wanted && document.getElementById(wanted.id);
    if (!section) return;
    section.scrollIntoView({ block: "start" });
    section.querySelector<HTMLElement>("summary, h2, button")?.focus({ preventScroll: true });
    wantedSection.value = null;
  }, [wanted, made]);
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

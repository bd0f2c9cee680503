import { computed } from "@preact/signals";
import { Warnings } from "../../../app/Warnings.tsx";
import { capitalised } from "../../../app/words.ts";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subject.ts";
import { lossBars, lossesTold, meritNote } from "./lossesModel.ts";
import "./losses.css";

const told = computed(() => lossesTold(subject.value));
/** The variant and its static merit, which is all that its losses leave. */
export const lossesNote = computed(() => meritNote(subject.value));

/** How far from ideal and from a good propeller, and where the power goes: a paragraph for a report and its picture. */
export function LossesPanel() {
  const now = told.value;
  return (
    <>
      <div class="form-grid">
        <SubjectField />
      </div>
      {"problem" in now ? (
        <p class="hint">{now.problem}</p>
      ) : (
        <>
          <p role="status">{capitalised(now.report.short)}</p>
          <ul class="loss-bars" aria-label="Parts of the shaft power">
            {lossBars(now.report).map(({ name, percent, words }) => (
              <li key={name}>
                <span>{name}</span>
                <span class="loss-bar" aria-hidden="true">
                  <span style={{ width: `${percent}%` }} />
                </span>
                <span class="number">{words}</span>
              </li>
            ))}
          </ul>
          <details>
            <summary>As a paragraph for a report</summary>
            <p>{capitalised(now.report.long)}</p>
          </details>
          <Warnings items={now.report.warnings} />
        </>
      )}
    </>
  );
}

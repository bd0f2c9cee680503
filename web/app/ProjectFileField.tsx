import { useState } from "preact/hooks";
import { sentenceOf } from "../api/apiProblem.ts";
import { openBundle } from "../api/bundles.ts";
import { openProject, projects } from "./session.ts";
import { tell } from "./toast.ts";
import { counts, joined } from "./words.ts";

/** Opens a file that a project was saved as; it becomes a project of its own. */
export function ProjectFileField({ onOpened }: { readonly onOpened: () => void }) {
  const [state, setState] = useState<"idle" | "opening" | { readonly why: string }>("idle");
  const take = async (file: File) => {
    setState("opening");
    try {
      const opened = await openBundle(file);
      projects.value = [...projects.value, opened.project];
      await openProject(opened.project.id);
      tell({ tone: "done", text: openedText(opened) });
      onOpened();
    } catch (thrown) {
      setState({ why: sentenceOf(thrown) });
    }
  };
  return (
    <details>
      <summary>Open a project file</summary>
      <label>
        A file that a project was saved as. It becomes a project of its own; nothing that is here changes.
        <input
          type="file"
          accept=".zip,application/zip"
          disabled={state === "opening"}
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            currentTarget.value = "";
            if (file) void take(file);
          }}
        />
      </label>
      {state === "opening" && <p role="status">Opening, and checking every byte …</p>}
      {typeof state === "object" && (
        <p role="alert" class="field-message">
          {state.why}
        </p>
      )}
    </details>
  );
}

function openedText({ project, counts: held, notIncluded, warnings }: Awaited<ReturnType<typeof openBundle>>): string {
  const what = joined([
    counts(held.runs, "run"),
    counts(held.parts, "part"),
    counts(held.shortlists, "kept shortlist"),
  ]);
  const without =
    notIncluded.length === 0 ? "" : ` Not in the file, as they were still running: ${joined(notIncluded)}.`;
  return [`${project.document.name} is open, with ${what}.${without}`, ...warnings.map(({ message }) => message)].join(
    " ",
  );
}

import { useState } from "preact/hooks";
import type { Project } from "../../shared/model/project.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { sentenceOf } from "../api/apiProblem.ts";
import { bundleAddress } from "../api/bundles.ts";
import { createProject, deleteProject, restoreProject } from "../api/client.ts";
import { FluidField } from "../forms/FluidField.tsx";
import { TextField } from "../forms/TextField.tsx";
import { Dialog } from "./Dialog.tsx";
import { editProject } from "./edits.ts";
import { ProjectFileField } from "./ProjectFileField.tsx";
import { openFirstProject, openProject, project, projects } from "./session.ts";
import { tell } from "./toast.ts";

const FRESH_18: Project["water"] = { kind: "fresh", temperature: 291.15 };

/** Opens, makes, changes and deletes projects. */
export default function ProjectDialog({ onClose }: { readonly onClose: () => void }) {
  const current = project.value;
  return (
    <Dialog title="Projects" onClose={onClose}>
      {projects.value.length > 0 && (
        <ul class="project-list">
          {projects.value.map(({ id, document }) => (
            <li key={id}>
              <button
                type="button"
                aria-current={id === current?.id ? "true" : undefined}
                onClick={() => void openProject(id).then(onClose)}
              >
                {document.name}
                {id === current?.id && <span class="muted"> open</span>}
              </button>
            </li>
          ))}
        </ul>
      )}
      {current && <OpenProject current={current} onClose={onClose} />}
      <details open={!current}>
        <summary>New project</summary>
        <ProjectForm
          start={{ name: "", note: "", water: FRESH_18, invented: false }}
          save="Make project"
          onSave={(next) => void make(next).then((made) => made && onClose())}
        />
      </details>
      <ProjectFileField onOpened={onClose} />
    </Dialog>
  );
}

interface OpenProjectProps {
  readonly current: StoredDocument<Project>;
  readonly onClose: () => void;
}

/** Changes, saves or deletes the project that is open. */
function OpenProject({ current: { id, version, document }, onClose }: OpenProjectProps) {
  return (
    <details>
      <summary>Change {document.name}</summary>
      <ProjectForm
        start={document}
        save="Save"
        onSave={(next) => void editProject(`Changed ${next.name}`, () => next).then((stored) => stored && onClose())}
      />
      <p>
        <a href={bundleAddress(id)} download>
          Save the project as one file
        </a>
        , with every log, part, run and kept shortlist.
      </p>
      <button type="button" class="danger" onClick={() => void putAway(id, version).then(onClose)}>
        Delete this project
      </button>
    </details>
  );
}

interface ProjectFormProps {
  readonly start: Project;
  readonly save: string;
  readonly onSave: (project: Project) => void;
}

function ProjectForm({ start, save, onSave }: ProjectFormProps) {
  const [draft, setDraft] = useState(start);
  const [tried, setTried] = useState(false);
  const named = draft.name.trim() !== "";
  return (
    <form
      class="form-grid"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (named) onSave(draft);
      }}
    >
      <TextField
        label="Name"
        value={draft.name}
        maxLength={120}
        problem={tried && !named ? "Needed: a name, so that you find the project again." : null}
        onChange={(name) => setDraft({ ...draft, name })}
      />
      <FluidField
        label="Water the vehicle works in"
        value={draft.water}
        onChange={(water) => setDraft({ ...draft, water })}
      />
      <TextField label="Note" optional lines={3} value={draft.note} onChange={(note) => setDraft({ ...draft, note })} />
      <div class="row form-buttons">
        <button type="submit" class="primary">
          {save}
        </button>
      </div>
    </form>
  );
}

async function make(document: Project): Promise<boolean> {
  return told(async () => {
    const stored = await createProject(document);
    projects.value = [...projects.value, stored];
    await openProject(stored.id);
  });
}

async function putAway(id: string, version: number): Promise<boolean> {
  return told(async () => {
    await deleteProject(id, version);
    await openFirstProject();
    tell({
      tone: "done",
      text: "The project is deleted.",
      action: { label: "Undo", run: () => void told(() => restoreProject(id).then(openFirstProject)) },
    });
  });
}

async function told(work: () => Promise<unknown>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
    return false;
  }
}

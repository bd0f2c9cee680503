import { lazy, Suspense } from "preact/compat";
import { useEffect } from "preact/hooks";
import { SCREENS } from "../views/registry.ts";
import { ConflictDialog } from "./ConflictDialog.tsx";
import { ErrorBoundary } from "./ErrorBoundary.tsx";
import { Header } from "./Header.tsx";
import { NoProject } from "./NoProject.tsx";
import { ProjectDialogWhenOpen } from "./projectDialogState.tsx";
import { Rail } from "./Rail.tsx";
import { route } from "./route.ts";
import { openFirstProject, opening, openProject, projectId, projects } from "./session.ts";
import { Toasts } from "./Toasts.tsx";
import { followTheme } from "./theme.ts";

const VIEWS = new Map(SCREENS.map(({ id, load }) => [id, lazy(() => load().catch(tellStale))]));

/** A screen's file is gone after an update, and out of reach when the workbench is stopped. */
function tellStale(): never {
  throw new Error("the workbench was updated or stopped after this page was opened");
}

/** The whole page: rail, header, the screen that the address names, messages. */
export function Shell() {
  useEffect(followTheme, []);
  const { screen, project } = route.value;
  const entry = SCREENS.find(({ id }) => id === screen) ?? SCREENS[0]!;

  useEffect(() => {
    document.title = `${entry.label} · Bollard Bench`;
  }, [entry]);
  // An address of another project, pasted or reached by the Back button, opens that project.
  useEffect(() => {
    if (project && project !== projectId.value && projects.value.some(({ id }) => id === project))
      void openProject(project);
  }, [project]);

  return (
    <>
      <button type="button" class="skip" onClick={() => document.getElementById("content")?.focus()}>
        To the content
      </button>
      <Header />
      <Rail current={entry.id} />
      <main id="content" tabIndex={-1}>
        <Content id={entry.id} label={entry.label} />
      </main>
      <Toasts />
      <ConflictDialog />
      <ProjectDialogWhenOpen />
    </>
  );
}

function Content({ id, label }: { readonly id: string; readonly label: string }) {
  const state = opening.value;
  if (state.state === "opening") return <p class="wait">Opening …</p>;
  if (state.state === "none") return <NoProject />;
  if (state.state === "refused") {
    return (
      <div class="screen">
        <p class="answer answer-problem" role="alert">
          {state.why}
        </p>
        <button type="button" class="primary" onClick={() => void openFirstProject()}>
          Try again
        </button>
      </div>
    );
  }
  const View = VIEWS.get(id)!;
  // A new key for each screen and project: what a screen remembers belongs to what it showed.
  return (
    <ErrorBoundary key={`${id} ${projectId.value}`} screen={label}>
      <Suspense fallback={<p class="wait">Loading {label} …</p>}>
        <View />
      </Suspense>
    </ErrorBoundary>
  );
}

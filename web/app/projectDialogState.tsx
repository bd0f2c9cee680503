import { signal } from "@preact/signals";
import { lazy, Suspense } from "preact/compat";

const open = signal(false);
const ProjectDialog = lazy(() => import("./ProjectDialog.tsx"));

export function showProjectDialog(): void {
  open.value = true;
}

/** The dialog of the projects, loaded when it is first opened. */
export function ProjectDialogWhenOpen() {
  if (!open.value) return null;
  return (
    <Suspense fallback={null}>
      <ProjectDialog
        onClose={() => {
          open.value = false;
        }}
      />
    </Suspense>
  );
}

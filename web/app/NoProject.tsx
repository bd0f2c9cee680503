import { showProjectDialog } from "./projectDialogState.tsx";
import { Screen } from "./Screen.tsx";

/** What is shown before there is any project. */
export function NoProject() {
  return (
    <Screen
      question="What shall be measured?"
      answer="There is no project yet. A project holds your parts, your logs and the water your vehicle works in."
      tone="open"
    >
      <button type="button" class="primary" onClick={showProjectDialog}>
        Make a project
      </button>
    </Screen>
  );
}

import { headerModel } from "./headerModel.ts";
import { Icon } from "./Icon.tsx";
import { showProjectDialog } from "./projectDialogState.tsx";
import { project, runs } from "./session.ts";
import { type Choice, chooseTheme, themeChoice } from "./theme.ts";
import { canRedo, canUndo, nextRedo, nextUndo, redo, undo } from "./undo.ts";

/** Which project is open and in which water; undo, redo, theme. */
export function Header() {
  const open = project.value;
  const model =
    open &&
    headerModel(
      open.document,
      runs.value.map(({ document }) => document),
    );
  return (
    <header class="bar">
      <a class="bar-mark" href="#/overview" aria-label="Bollard Bench, overview">
        <Mark />
        <span class="bar-name">Bollard Bench</span>
      </a>
      <button type="button" class="bar-project" onClick={showProjectDialog} aria-haspopup="dialog">
        <span class="bar-project-name">{model?.name ?? "No project"}</span>
        {model?.invented && <span class="chip chip-invented">invented data</span>}
      </button>
      {model && <Waters bench={model.benchWater} working={model.workingWater} />}
      <div class="bar-tools">
        <IconButton
          label={nextUndo.value ? `Undo: ${nextUndo.value}` : "Undo"}
          off={!canUndo.value}
          run={undo}
          icon="M9 7 4 12l5 5M4 12h10a6 6 0 0 1 6 6"
        />
        <IconButton
          label={nextRedo.value ? `Redo: ${nextRedo.value}` : "Redo"}
          off={!canRedo.value}
          run={redo}
          icon="M15 7l5 5-5 5M20 12H10a6 6 0 0 0-6 6"
        />
        <ThemeButton />
      </div>
    </header>
  );
}

/** A bollard, and the pull on it. */
function Mark() {
  return (
    <svg viewBox="0 0 32 32" width="28" height="28" aria-hidden="true">
      <path d="M6 25h20M9 25V13h6v12M7 13h10" />
      <path class="bar-mark-arrow" d="M16 19h9m-3.5-3.5L25 19l-3.5 3.5" />
    </svg>
  );
}

type HeaderModel = ReturnType<typeof headerModel>;

function Waters({ bench, working }: { bench: HeaderModel["benchWater"]; working: HeaderModel["workingWater"] }) {
  return (
    <dl class="bar-waters">
      {bench && (
        <div>
          <dt>Bench</dt>
          <dd>{bench}</dd>
        </div>
      )}
      <div>
        <dt>Working water</dt>
        <dd>{working}</dd>
      </div>
    </dl>
  );
}

interface IconButtonProps {
  readonly label: string;
  readonly icon: string;
  readonly run: () => unknown;
  readonly off?: boolean;
}

function IconButton({ label, icon, run, off = false }: IconButtonProps) {
  return (
    <button type="button" class="icon" aria-label={label} title={label} disabled={off} onClick={() => void run()}>
      <Icon path={icon} />
    </button>
  );
}

const NEXT: Readonly<Record<Choice, Choice>> = { system: "light", light: "dark", dark: "system" };
const THEME_WORDS: Readonly<Record<Choice, string>> = { system: "as the computer", light: "light", dark: "dark" };
const THEME_ICONS: Readonly<Record<Choice, string>> = {
  system: "M4 5h16v11H4zM9 20h6M12 16v4",
  light: "M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8zM12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M5 19l2-2M17 7l2-2",
  dark: "M20 14a8 8 0 1 1-10-10 7 7 0 0 0 10 10z",
};

function ThemeButton() {
  const choice = themeChoice.value;
  const label = `Theme: ${THEME_WORDS[choice]}. Change to ${THEME_WORDS[NEXT[choice]]}`;
  return <IconButton label={label} icon={THEME_ICONS[choice]} run={() => chooseTheme(NEXT[choice])} />;
}

import { computed, signal } from "@preact/signals";

export type Choice = "system" | "light" | "dark";

const KEPT = "bollard-bench.theme";

/** What the person chose; "system" follows the computer. */
export const themeChoice = signal<Choice>(kept());
const systemIsDark = signal(false);
/** What is shown. */
export const theme = computed<"light" | "dark">(() =>
  themeChoice.value === "system" ? (systemIsDark.value ? "dark" : "light") : themeChoice.value,
);

/** Shows the kept theme and follows the computer from now on. */
export function followTheme(): void {
  const query = matchMedia("(prefers-color-scheme: dark)");
  systemIsDark.value = query.matches;
  query.addEventListener("change", () => {
    systemIsDark.value = query.matches;
  });
  show(themeChoice.value);
}

export function chooseTheme(choice: Choice): void {
  themeChoice.value = choice;
  show(choice);
  try {
    localStorage.setItem(KEPT, choice);
  } catch {
    // A browser that keeps nothing still shows the theme until the page is closed.
  }
}

function show(choice: Choice): void {
  if (choice === "system") delete document.documentElement.dataset["theme"];
  else document.documentElement.dataset["theme"] = choice;
}

function kept(): Choice {
  try {
    const choice = globalThis.localStorage?.getItem(KEPT);
    return choice === "light" || choice === "dark" ? choice : "system";
  } catch {
    return "system";
  }
}

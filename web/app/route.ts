import { signal } from "@preact/signals";

/** What the address says: `#/bench?project=…&run=…`. */
export interface Route {
  readonly screen: string;
  readonly project: string | null;
  /** Everything else after the question mark; a screen keeps what it shows here, so that an address can be shared. */
  readonly choices: URLSearchParams;
}

export const route = signal<Route>(parseRoute(globalThis.location?.hash ?? ""));

globalThis.addEventListener?.("hashchange", () => {
  route.value = parseRoute(location.hash);
});

/** Reads the part of an address behind the `#`. */
export function parseRoute(hash: string): Route {
  const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  const choices = new URLSearchParams(query);
  const project = choices.get("project");
  choices.delete("project");
  return { screen: path || "overview", project, choices };
}

/** Address of a screen of the open project. */
export function addressOf(screen: string, choices: Readonly<Record<string, string>> = {}): string {
  const project = route.value.project;
  const query = new URLSearchParams({ ...(project ? { project } : {}), ...choices }).toString();
  return `#/${screen}${query && `?${query}`}`;
}

/** Notes what the screen shows in the address, without a step for the Back button. */
export function noteChoice(name: string, value: string | null): void {
  const choices = new URLSearchParams(route.value.choices);
  if (value === null) choices.delete(name);
  else choices.set(name, value);
  replace({ ...route.value, choices });
}

/** Names the open project in the address. What was chosen in another project means nothing here. */
export function goToProject(project: string): void {
  const { project: before, choices } = route.value;
  if (before === project) return;
  replace({ ...route.value, project, choices: before === null ? choices : new URLSearchParams() });
}

function replace(next: Route): void {
  route.value = next;
  history.replaceState(null, "", addressOf(next.screen, Object.fromEntries(next.choices)));
}

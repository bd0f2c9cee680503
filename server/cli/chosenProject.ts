import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Words } from "./options.ts";
import { ask } from "./workbenchCalls.ts";

const WORKBENCH = "http://127.0.0.1:8730";

export const WORKBENCH_OPTION = {
  workbench: { value: "ADDRESS", text: `where it runs (${WORKBENCH} if absent)` },
} as const;
export const PROJECT_OPTION = {
  project: { value: "NAME", text: "project that is meant; may be absent where there is one only" },
} as const;

interface Project {
  readonly id: string;
  readonly document: { readonly name: string };
}

/** Address of the interface of the workbench that is named. Throws InputProblem `cli.no-workbench`. */
export function workbenchApi(words: Words): string {
  const workbench = (words.text("workbench") ?? WORKBENCH).replace(/\/+$/, "");
  if (URL.canParse(workbench)) return `${workbench}/api`;
  throw new InputProblem({
    code: "cli.no-workbench",
    where: "--workbench",
    found: `"${workbench}" is not an address`,
    needed: "the address that the workbench prints at its start",
    mend: `For example --workbench ${WORKBENCH}`,
  });
}

/** The project that is named, or the only one. Throws InputProblem `cli.no-such-project`. */
export async function chosenProject(words: Words): Promise<{ readonly name: string; readonly address: string }> {
  const api = `${workbenchApi(words)}/projects`;
  const { projects } = await ask<{ projects: Project[] }>("GET", api);
  const wanted = words.text("project");
  const fitting = projects.filter(({ id, document }) => wanted === undefined || [id, document.name].includes(wanted));
  const [only, ...others] = fitting;
  if (only === undefined || others.length > 0) throw noSuchProject(wanted, projects);
  return { name: only.document.name, address: `${api}/${only.id}` };
}

function noSuchProject(wanted: string | undefined, projects: readonly Project[]): InputProblem {
  const names = projects.map(({ document }) => document.name).join(", ");
  return new InputProblem({
    code: "cli.no-such-project",
    where: "--project",
    found:
      wanted === undefined ? `${projects.length} projects are there: ${names}` : `no one project is called "${wanted}"`,
    needed: `one of: ${names || "none is there yet"}`,
    mend:
      projects.length === 0 ? "Make one on the page first" : `For example --project "${projects[0]!.document.name}"`,
  });
}

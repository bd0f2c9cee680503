import type { OpenedBundle } from "../../shared/model/bundle.ts";
import { ask } from "./request.ts";

/** Address of a whole project as one file. */
export const bundleAddress = (projectId: string) => `/api/projects/${encodeURIComponent(projectId)}/bundle`;

/** Makes a new project of a file that a project was saved as. */
export function openBundle(file: File): Promise<OpenedBundle> {
  const form = new FormData();
  form.append("file", file, file.name);
  return ask<OpenedBundle>("/api/bundles", { method: "POST", form });
}

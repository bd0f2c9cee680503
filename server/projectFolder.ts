import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder with package.json: found by going up, since built and unbuilt code stand at different depths. */
export const PROJECT_FOLDER = upTo("package.json", dirname(fileURLToPath(import.meta.url)));

function upTo(name: string, folder: string): string {
  if (existsSync(join(folder, name)) || dirname(folder) === folder) return folder;
  return upTo(name, dirname(folder));
}

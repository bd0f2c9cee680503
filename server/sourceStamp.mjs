// A short text that changes when any source the build rests on changes.
import { createHash } from "node:crypto";
import { readdirSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const SOURCES = ["shared", "server", "web", "samples", "package-lock.json", "package.json"];

function* files(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) {
    yield `${path} ${stat.size} ${stat.mtimeMs}`;
    return;
  }
  for (const name of readdirSync(path).sort()) yield* files(`${path}/${name}`);
}

/** Names, sizes and times of all sources, hashed: a look at the folder, not at the bytes, so that it costs milliseconds. */
export function sourceStamp() {
  const hash = createHash("sha256");
  for (const source of SOURCES) for (const line of files(`${root}${source}`)) hash.update(`${line}\n`);
  return hash.digest("hex");
}

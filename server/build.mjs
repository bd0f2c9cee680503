// Builds the page and the server into .build/. Used by `npm run build`, and by launch.mjs when sources are newer than the build.
import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Bundles the server's entry points; packages stay in node_modules and are loaded from there. */
async function buildServer() {
  const { rolldown } = await import("rolldown");
  const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));
  const bundle = await rolldown({
    input: {
      main: `${root}server/main.ts`,
      cli: `${root}server/cli.ts`,
      reduceWorker: `${root}server/work/reduceWorker.ts`,
    },
    platform: "node",
    external: /^(?!\.|\/|[A-Za-z]:)/,
    transform: { define: { "process.env.BOLLARD_VERSION": JSON.stringify(version) } },
  });
  await bundle.write({
    dir: `${root}.build/server`,
    format: "esm",
    sourcemap: true,
    entryFileNames: "[name].js",
    chunkFileNames: "part-[hash].js",
  });
  await bundle.close();
}

async function buildPage() {
  const { build } = await import("vite");
  await build({ configFile: `${root}web/vite.config.ts`, logLevel: "warn" });
}

/** The stamp of the build that stands in .build/, or null. */
export function builtStamp() {
  try {
    return readFileSync(`${root}.build/stamp`, "utf8");
  } catch {
    return null;
  }
}

/** Takes the build folder for this process; false while another process builds there. */
function takeLock() {
  mkdirSync(`${root}.build`, { recursive: true });
  try {
    mkdirSync(`${root}.build/lock`);
    return true;
  } catch {
    // A build takes seconds: an older lock was left by a process that was killed.
    const age = Date.now() - (statSync(`${root}.build/lock`, { throwIfNoEntry: false })?.mtimeMs ?? 0);
    if (age > 60_000) rmSync(`${root}.build/lock`, { recursive: true, force: true });
    return false;
  }
}

/** Builds everything unless `stamp` is what stands there already; two callers at once build once. */
export async function buildAll(stamp) {
  while (!takeLock()) await new Promise((resolve) => setTimeout(resolve, 100));
  try {
    if (builtStamp() === stamp) return;
    rmSync(`${root}.build/stamp`, { force: true });
    rmSync(`${root}.build/server`, { recursive: true, force: true });
    await Promise.all([buildServer(), buildPage()]);
    writeFileSync(`${root}.build/stamp`, stamp);
  } finally {
    rmSync(`${root}.build/lock`, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { sourceStamp } = await import("./sourceStamp.mjs");
  await buildAll(sourceStamp());
}

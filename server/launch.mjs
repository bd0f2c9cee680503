// Starts the built workbench or command line; builds first when there is no build or a source has changed.
import { existsSync, readFileSync } from "node:fs";
import { sourceStamp } from "./sourceStamp.mjs";

const ENTRIES = { workbench: "../.build/server/main.js", cli: "../.build/server/cli.js" };
const [entry = "workbench", ...rest] = process.argv.slice(2);

const stamp = sourceStamp();
const stampFile = new URL("../.build/stamp", import.meta.url);
if (!existsSync(stampFile) || readFileSync(stampFile, "utf8") !== stamp) {
  if (entry === "workbench") console.log("Building the workbench (once, a few seconds) ...");
  const { buildAll } = await import("./build.mjs");
  await buildAll(stamp);
}
process.argv = [process.argv[0], process.argv[1], ...rest];
await import(ENTRIES[entry]);

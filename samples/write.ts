import { mkdirSync, writeFileSync } from "node:fs";
import { sampleLogs } from "./generator/logs.ts";

/** Writes the logs of the demonstration project to `samples/logs/`. */
const folder = new URL("./logs/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { fileName, text } of sampleLogs()) {
  writeFileSync(new URL(fileName, folder), text, "utf-8");
  console.log(`${fileName}: ${Buffer.byteLength(text, "utf-8")} bytes`);
}

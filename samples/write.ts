import { mkdirSync, writeFileSync } from "node:fs";
import { sampleDocuments } from "./documents.ts";
import { sampleLogs } from "./generator/logs.ts";

/** Writes the logs of the demonstration project to `samples/logs/`, and its documents beside it. */
const folder = new URL("./logs/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { fileName, text } of sampleLogs()) {
  writeFileSync(new URL(fileName, folder), text, "utf-8");
  console.log(`${fileName}: ${Buffer.byteLength(text, "utf-8")} bytes`);
}
for (const [fileName, document] of Object.entries(sampleDocuments())) {
  writeFileSync(new URL(fileName, import.meta.url), `${JSON.stringify(document, null, 2)}\n`, "utf-8");
  console.log(fileName);
}

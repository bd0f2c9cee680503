// Writes documents and logs without end and says each one that was acknowledged; meant to be killed.
import { writeSync } from "node:fs";
import { openStore } from "../../server/store/openStore.ts";
import { bytesOf, PROJECT, runOf } from "./exampleDocuments.ts";

const store = await openStore(process.argv[2] as string);
const say = (line: object) => writeSync(1, `${JSON.stringify(line)}\n`);
const project = store.projects.list()[0] ?? store.projects.add(PROJECT);
say({ project: project.id, version: project.version });

let { version } = project;
for (let i = 0; ; i += 1) {
  version = store.projects.write(project.id, version, {
    ...PROJECT,
    note: `write ${i} ${"x".repeat((i * 37) % 2000)}`,
  }).version;
  say({ project: project.id, version });
  const received = await store.files.receive(bytesOf(`time,thrust\n${process.pid},${i}\n`.repeat(1 + (i % 50))));
  await store.files.keep(received);
  const run = store.transaction(() => {
    store.noteFile(received);
    return store.runs(project.id).add(runOf(received.sha256, received.size));
  });
  say({ project: project.id, run: run.id });
}

import { rmSync } from "node:fs";
import { expect, test } from "vitest";
import { connect } from "../../server/store/connection.ts";
import { standLog } from "./standLog.ts";
import { type Started, startedProcess } from "./startedProcess.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

async function startedAt(folder: string): Promise<Started & { readonly api: string }> {
  const started = startedProcess(["--port", "0", "--no-demo", "--data", folder]);
  await started.spoke;
  return { ...started, api: `${started.address()}api/projects` };
}

async function json(method: string, address: string, body?: object) {
  const response = await fetch(address, {
    method,
    ...(body && { headers: { "content-type": "application/json" }, body: JSON.stringify(body) }),
  });
  return response.json();
}

test("a workbench that is killed while lines come keeps every line it acknowledged, and the recording goes on", async () => {
  const folder = temporaryFolder();
  const log = standLog();
  let workbench = await startedAt(folder);
  const water = { kind: "sea", temperature: 285.15, salinity: 33 };
  const project = await json("POST", workbench.api, { name: "Dabchick", note: "", water, invented: true });
  const recordings = () => `${workbench.api}/${project.id}/recordings`;
  const { id } = await json("POST", recordings(), { name: "Live" });

  let acknowledged = 0;
  // Pieces that fit no line, and a kill while the next of them is on its way.
  for (const kills of [1, 2, 3]) {
    const until = (log.length * kills) / 3;
    let dying: NodeJS.Timeout | undefined;
    try {
      while (acknowledged < until) {
        const piece = log.slice(acknowledged, acknowledged + 331);
        const response = await fetch(`${recordings()}/${id}/lines?offset=${acknowledged}`, {
          method: "POST",
          body: piece,
        });
        acknowledged = (await response.json()).bytes;
        // From its first answer on, so that a slow machine has said something as well.
        dying ??= setTimeout(() => workbench.child.kill("SIGKILL"), 60);
      }
    } catch {
      // Killed before it answered: whether that piece is held is not known, and need not be.
    }
    clearTimeout(dying);
    workbench.child.kill("SIGKILL");
    await workbench.ended;
    workbench = await startedAt(folder);
    const { held } = await json("GET", `${recordings()}/${id}`);
    expect(held.bytes).toBeGreaterThanOrEqual(acknowledged);
    expect(await (await fetch(`${recordings()}/${id}/file`)).text()).toBe(log.slice(0, held.bytes));
  }
  expect(acknowledged).toBeGreaterThan(331);

  const rest = await fetch(`${recordings()}/${id}/lines?offset=${acknowledged}`, {
    method: "POST",
    body: log.slice(acknowledged),
  });
  expect(await rest.json()).toMatchObject({ bytes: log.length, lines: log.split("\n").length - 1 });
  const { run } = await json("POST", `${recordings()}/${id}/end`);
  expect(await (await fetch(`${workbench.api}/${project.id}/runs/${run.id}/file`)).text()).toBe(log);
});

test("a recording that was begun but got no file before the kill is there, empty, and takes lines", async () => {
  const folder = temporaryFolder();
  const first = await startedAt(folder);
  const water = { kind: "fresh", temperature: 291.15 };
  const project = await json("POST", first.api, { name: "Dabchick", note: "", water, invented: true });
  const { id } = await json("POST", `${first.api}/${project.id}/recordings`, { name: "Live" });
  first.child.kill("SIGKILL");
  await first.ended;
  // As if the kill had come between the database and the file.
  rmSync(`${folder}/recordings/${id}`);
  const second = await startedAt(folder);
  const [recording] = (await json("GET", `${second.api}/${project.id}/recordings`)).recordings;
  expect(recording).toMatchObject({ id, held: { bytes: 0, lines: 0, receivedAt: null } });
});

test("a data folder from before there were recordings is brought up to date and keeps what it holds", async () => {
  const folder = temporaryFolder();
  const first = await startedAt(folder);
  const water = { kind: "fresh", temperature: 291.15 };
  const project = await json("POST", first.api, { name: "Dabchick", note: "", water, invented: true });
  first.child.kill("SIGTERM");
  await first.ended;
  const connection = connect(`${folder}/bollard.sqlite`);
  connection.run("DROP TABLE recordings");
  connection.run("DROP TABLE shortlists");
  connection.rows("PRAGMA user_version = 1");
  connection.close();
  const second = await startedAt(folder);
  expect((await json("GET", second.api)).projects).toMatchObject([{ id: project.id }]);
  expect((await json("POST", `${second.api}/${project.id}/recordings`, { name: "Live" })).version).toBe(1);
});

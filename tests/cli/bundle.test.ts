import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { PROPELLER } from "../api/exampleDocuments.ts";
import { listeningApp } from "../api/startedApp.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { runCli } from "./runCli.ts";

test("a project is saved as one file and opened again, and no half file is left by a refusal", async () => {
  const { address, store, projectId } = await listeningApp();
  store.parts(projectId, "propellers").add(PROPELLER);
  const folder = temporaryFolder();
  const file = join(folder, "dabchick.zip");

  const saved = await runCli("bundle", "save", file, "--workbench", address);
  expect([saved.code, saved.stderr]).toEqual([0, ""]);
  expect(saved.stdout).toContain("Dabchick is saved in");
  expect(readFileSync(file).subarray(0, 2).toString()).toBe("PK");

  const again = await runCli("bundle", "save", file, "--workbench", address);
  expect(again.code).toBe(2);
  expect(again.stderr).toContain("A file of this name is there");

  const opened = await runCli("bundle", "open", file, "--workbench", address, "--json");
  expect(opened.code).toBe(0);
  const { project, counts } = JSON.parse(opened.stdout);
  expect(counts).toEqual({ parts: 1, runs: 0, shortlists: 0, files: 0 });
  expect(store.parts(project.id, "propellers").list()[0]?.document).toEqual(PROPELLER);

  writeFileSync(file, readFileSync(file).subarray(0, 100));
  const cut = await runCli("bundle", "open", file, "--workbench", address);
  expect(cut.code).toBe(2);
  expect(cut.stderr).toContain("not a project file of the workbench");
  expect(store.projects.list()).toHaveLength(2);

  const none = await runCli("bundle", "save", join(folder, "other.zip"), "--workbench", address, "--project", "Grebe");
  expect(none.code).toBe(2);
  expect(existsSync(join(folder, "other.zip"))).toBe(false);
  expect(readdirSync(folder)).toEqual(["dabchick.zip"]);
});

test("what is not understood is refused with an example", async () => {
  const { code, stderr } = await runCli("bundle", "keep", "x.zip");
  expect(code).toBe(2);
  expect(stderr).toContain("bundle save dabchick.zip");
});

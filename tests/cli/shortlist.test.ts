import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { BOX, listed, REQUIREMENT } from "../unit/shortlistBox.ts";
import { runCli } from "./runCli.ts";
import { startedCli } from "./startedCli.ts";

function files(requirement: unknown = REQUIREMENT, box: unknown = BOX): string[] {
  const folder = temporaryFolder();
  const [asked, parts] = [join(folder, "requirement.json"), join(folder, "parts.json")];
  writeFileSync(asked, typeof requirement === "string" ? requirement : JSON.stringify(requirement));
  writeFileSync(parts, JSON.stringify(box));
  return ["--requirement", asked, "--parts", parts];
}

test("shortlist --json gives the numbers of the search, and exits with 0 where something meets", async () => {
  const { code, stdout } = await startedCli("shortlist", ...files(), "--rows", "500", "--misses", "200", "--json");
  expect(code).toBe(0);
  expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(listed())));
});

test("shortlist prints the best, why others fail, the nearest misses and cautions", async () => {
  const { code, stdout } = await startedCli("shortlist", ...files(), "--rows", "3");
  expect(code).toBe(0);
  expect(stdout).toMatch(/^14 of 48 combinations meet the requirement\./);
  for (const part of ["Why combinations fail", "Nearest misses", "What easing would gain", "Caution:"]) {
    expect(stdout).toContain(part);
  }
  expect(stdout).not.toMatch(/NaN|undefined|null/);
});

test("exit code 1 says that nothing meets the requirement", async () => {
  const { code, stdout } = await startedCli("shortlist", ...files({ ...REQUIREMENT, thrustAhead: 500 }));
  expect(code).toBe(1);
  expect(stdout).toMatch(/^None of 48 combinations meets the requirement\./);
});

test("shortlist --csv is a table with a head and a line for each of the best", async () => {
  const { stdout } = await startedCli("shortlist", ...files(), "--rows", "4", "--csv");
  expect(stdout.trimEnd().split("\r\n")).toHaveLength(5);
});

test.each([
  { words: () => [], says: /--requirement: this option is missing/ },
  { words: () => ["--requirement", "nowhere.json", "--parts", "nowhere.json"], says: /no file of this name/ },
  { words: () => files("{"), says: /not complete JSON/ },
  { words: () => files({ ...REQUIREMENT, thrustAhead: -3 }), says: /thrustAhead/ },
  { words: () => files(REQUIREMENT, { ...BOX, motors: [] }), says: /holds no motor/ },
])("unusable words exit with 2 and say $says", async ({ words, says }) => {
  const { code, stdout, stderr } = await runCli("shortlist", ...words());
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(says);
});

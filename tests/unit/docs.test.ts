import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
const DOCUMENTS = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "samples/README.md"];
const SEARCHED = ["shared", "server", "web", "samples", "tests"];

const paths = SEARCHED.flatMap((top) => [
  `/${top}`,
  ...readdirSync(join(ROOT, top), { recursive: true, encoding: "utf8" }).map((path) => `/${top}/${path}`),
]);

/** Words in backticks that can only be a file or a folder; an address of the interface begins with a slash. */
function pathsNamed(text: string): string[] {
  const quoted = [...text.matchAll(/`([^`\s]+)`/g)].map((match) => match[1]!);
  return quoted.filter(
    (word) => /^[\w.-]+(\/[\w.-]*)*$/.test(word) && /\/|\.(ts|tsx|mjs|css|md|csv|tsv|txt)$/.test(word),
  );
}

/** Of a table row about one folder, the other columns name what is in it. */
const isThere = (word: string) => {
  // "name-1..3.csv" stands for three files; the last of them tells.
  const path = word.replace(/\/$/, "").replace(/\d\.\.(?=\d)/, "");
  return existsSync(join(ROOT, path)) || paths.some((known) => known.endsWith(`/${path}`));
};

/** Patterns for files that a contributor makes, not files that exist. */
const PATTERNS = ["xModel.ts", "XView.tsx", "x.css"];

test.each(DOCUMENTS)("every file and folder that %s names is there", (document) => {
  const named = pathsNamed(readFileSync(join(ROOT, document), "utf8"));
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((word) => !PATTERNS.includes(word) && !isThere(word))).toEqual([]);
});

test.each(DOCUMENTS)("every link of %s leads to a file that is there", (document) => {
  const text = readFileSync(join(ROOT, document), "utf8");
  const links = [...text.matchAll(/\]\(([^)#\s]+)/g)].map((match) => match[1]!).filter((link) => !/^\w+:/.test(link));
  expect(links.filter((link) => !existsSync(join(ROOT, dirname(document), link)))).toEqual([]);
});

test("every npm script that the documents name is there", () => {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as { scripts: object };
  const text = DOCUMENTS.map((document) => readFileSync(join(ROOT, document), "utf8")).join("\n");
  const named = [...text.matchAll(/npm run (?:--silent )?([\w-]+)/g)].map((match) => match[1]!);
  expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
});

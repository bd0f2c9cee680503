import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { PROBLEM_CODES } from "../../shared/model/problemCodes.data.ts";

const LIST = "shared/model/problemCodes.data.ts";
const listed = Object.keys(PROBLEM_CODES);
const rooms = [...new Set(listed.map((code) => code.split(".")[0]))];

const sources = ["shared", "server", "web"].flatMap((top) =>
  readdirSync(top, { recursive: true, encoding: "utf8" })
    .map((path) => `${top}/${path}`)
    .filter((path) => /\.tsx?$/.test(path) && path !== LIST),
);

/** Comments name codes too, and would keep a code alive that nothing raises any more. */
const withoutComments = (text: string) => text.replaceAll(/\/\*[\s\S]*?\*\//g, "").replaceAll(/^\s*\/\/.*$/gm, "");

const texts = sources.map((path) => ({ path, text: withoutComments(readFileSync(path, "utf8")) }));

/** A quoted text of the form room.kebab-case: of a room that has codes, or standing where a code is given. */
function codesIn(text: string): string[] {
  const quoted = new RegExp(`["'\`]((?:${rooms.join("|")})\\.[a-z0-9]+(?:-[a-z0-9]+)*)["'\`]`, "g");
  const given = /\bcode: ["'`]([a-z]+\.[^"'`]+)["'`]/g;
  return [...text.matchAll(quoted), ...text.matchAll(given)].map((match) => match[1]!);
}

const raised = new Set(texts.flatMap(({ text }) => codesIn(text)));

describe("codes of problems and warnings", () => {
  test("every code that the sources raise is listed with its meaning", () => {
    expect([...raised].filter((code) => !Object.hasOwn(PROBLEM_CODES, code))).toEqual([]);
  });

  test("every code that is listed is raised by the sources", () => {
    expect(listed.filter((code) => !raised.has(code))).toEqual([]);
  });

  test("no source puts a code together from pieces, which could not be looked up", () => {
    const pieced = new RegExp(`\\bcode: \`[^\`]*\\$\\{|\`(?:${rooms.join("|")})\\.[a-z-]*\\$\\{`);
    expect(texts.filter(({ text }) => pieced.test(text)).map(({ path }) => path)).toEqual([]);
  });

  test("codes are room.kebab-case, sorted, and each meaning is one sentence", () => {
    expect(listed).toEqual([...listed].sort());
    for (const [code, meaning] of Object.entries(PROBLEM_CODES)) {
      expect(code).toMatch(/^[a-z]+\.[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(meaning, code).toMatch(/^[A-Z].*[.?]$/);
    }
  });
});

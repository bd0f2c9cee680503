import { readdirSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");

/** Rooms of shared/ from the ground up: a room may use those on floors below its own, and itself. */
const FLOORS: readonly (readonly string[])[] = [
  ["quantity"],
  ["model", "numeric"],
  ["fluid"],
  ["propeller", "motor", "supply", "log"],
  ["calibration", "sections", "partsTable"],
  ["drive", "bench"],
  ["compare", "vehicle", "shortlist"],
];
const floorOf = (room: string) => FLOORS.findIndex((rooms) => rooms.includes(room));

interface Import {
  readonly file: string;
  readonly target: string;
}

function importsOf(file: string): Import[] {
  const text = readFileSync(resolve(ROOT, file), "utf8");
  const pattern = /(?:from\s+|import\s*\(\s*|import\s+)["'](\.[^"']+)["']/g;
  return [...text.matchAll(pattern)].map((match) => ({
    file,
    target: relative(ROOT, resolve(ROOT, dirname(file), match[1]!)),
  }));
}

const sources = (folder: string) =>
  readdirSync(resolve(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .map((name) => `${folder}/${name}`);

test("every room of shared/ has a floor", () => {
  const rooms = new Set(sources("shared").map((file) => file.split("/")[1]!));
  expect([...rooms].filter((room) => !room.endsWith(".ts") && floorOf(room) < 0)).toEqual([]);
});

test("inside shared/ a room knows nothing of rooms on its own floor or above", () => {
  const wrong = sources("shared")
    .flatMap(importsOf)
    .filter(({ file, target }) => {
      const [from, to] = [file.split("/")[1]!, target.split("/")[1]!];
      return from !== to && floorOf(to) >= floorOf(from);
    })
    .map(({ file, target }) => `${file} imports ${target}: move what both need to a lower room`);
  expect(wrong).toEqual([]);
});

test("shared/ is used by server/ and web/ and uses neither; web/ and server/ do not meet", () => {
  const allowed: Record<string, readonly string[]> = {
    shared: ["shared"],
    server: ["shared", "server", "samples", "package.json"],
    web: ["shared", "web"],
    samples: ["shared", "samples"],
  };
  const wrong = Object.entries(allowed).flatMap(([folder, may]) =>
    sources(folder)
      .flatMap(importsOf)
      .filter(({ target }) => !target.startsWith(".build/") && !may.includes(target.split("/")[0]!))
      .map(({ file, target }) => `${file} imports ${target}: ${folder}/ may import ${may.join(", ")} only`),
  );
  expect(wrong).toEqual([]);
});

test("shared/ does no input, keeps no clock and draws no random numbers", () => {
  const forbidden = /\bMath\.random\b|\bDate\.now\b|\bnew Date\(\)|from "node:|\bfetch\(|\bprocess\.|\bconsole\./;
  const wrong = sources("shared").filter((file) => forbidden.test(readFileSync(resolve(ROOT, file), "utf8")));
  expect(wrong).toEqual([]);
});

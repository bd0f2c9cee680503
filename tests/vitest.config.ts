import { defineConfig } from "vitest/config";

/** Tests of servers, of started programs and of the page. Everything else is pure. */
const SERVED = ["tests/api/**/*.test.ts", "tests/cli/**/*.test.ts"];
const PAGES = ["tests/browser/**/*.test.ts"];

/** One kind of tests. They come one after the other, so that a process that has loaded the program keeps it. */
function kind(
  name: string,
  groupOrder: number,
  rest: { maxWorkers: number; include: string[]; exclude?: string[]; globalSetup?: string[] },
) {
  return { extends: true as const, test: { name, sequence: { groupOrder }, ...rest } };
}

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    // Reading the program takes longer than most tests of it, so the files of a process share what they import; servers and
    // folders belong to one test each, and are gone when it is over.
    pool: "forks",
    isolate: false,
    setupFiles: ["tests/fixedSeed.ts"],
    // For a test that hangs: how fast the machine is, is no matter of the tests.
    testTimeout: 180_000,
    hookTimeout: 120_000,
    // A page that is busy on two shared cores answers late; one second, the default, is no contract of it.
    expect: { poll: { timeout: 20_000 } },
    reporters: ["default"],
    // Two cores are what the suite is planned for; where tests wait for a program or a page, a third process has room.
    projects: [
      kind("pure", 0, { maxWorkers: 2, include: ["tests/**/*.test.ts"], exclude: [...SERVED, ...PAGES] }),
      kind("served", 1, { maxWorkers: 3, include: SERVED, globalSetup: ["tests/freshBuild.mjs"] }),
      kind("pages", 2, {
        maxWorkers: 3,
        include: PAGES,
        globalSetup: ["tests/freshBuild.mjs", "tests/browser/preparedDemo.ts", "tests/browser/sharedChromium.ts"],
      }),
    ],
  },
});

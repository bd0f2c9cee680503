import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    // Two cores are what the suite is planned for; each file gets a fresh process so that servers and temporary folders never meet.
    pool: "forks",
    setupFiles: ["tests/fixedSeed.ts"],
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A page that is busy on two shared cores answers late; one second, the default, is no contract of it.
    expect: { poll: { timeout: 20_000 } },
    reporters: ["default"],
  },
});

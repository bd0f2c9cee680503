import { text } from "node:stream/consumers";
import { setTimeout } from "node:timers/promises";
import { expect, test } from "vitest";
import { liveEvents } from "../../server/recording/liveEvents.ts";
import type { LiveResult } from "../../shared/model/recording.ts";

/** About 100 kB as an event, as a trace is. */
const LARGE = { sha256: "0".repeat(100_000) } as LiveResult;
const MANY = 40;

test("a reader that does not read holds the watching up, and gets every event once it does", async () => {
  let told = 0;
  const events = liveEvents(async ({ result }) => {
    for (; told < MANY; told++) await result(LARGE);
  });
  await setTimeout(50);
  expect(told).toBeLessThan(5);
  expect((await text(events)).match(/^event: result$/gm)).toHaveLength(MANY);
});

test("a reader that goes away while events wait ends the watching", async () => {
  let isOver = false;
  const events = liveEvents(async ({ result, signal }) => {
    while (!signal.aborted) await result(LARGE);
    isOver = true;
  });
  await setTimeout(20);
  events.destroy();
  await expect.poll(() => isOver).toBe(true);
});

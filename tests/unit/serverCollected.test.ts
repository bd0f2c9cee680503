import { expect, test } from "vitest";
import { collectBeyond } from "../../server/work/collected.ts";

const BYTES = 80e6;

const heldInArrays = () => process.memoryUsage().arrayBuffers;

/** Arrays that nobody holds when it is over. */
function leaveBehind(): void {
  new Float64Array(BYTES / 8).fill(1);
}

test("arrays that nobody holds any more are given back, those that are held stay", async () => {
  collectBeyond(-Infinity);
  const before = heldInArrays();
  const held = new Float64Array(BYTES / 8).fill(2);
  leaveBehind();
  let after = Number.POSITIVE_INFINITY;
  // Out of the stack frame that made them; what the engine frees beside the program may take a turn more.
  for (let turn = 0; turn < 20 && after >= 1.5 * BYTES; turn++) {
    await new Promise((resolve) => setImmediate(resolve));
    collectBeyond(before);
    after = heldInArrays() - before;
  }
  expect(after).toBeGreaterThan(0.9 * BYTES);
  expect(after).toBeLessThan(1.5 * BYTES);
  expect(held.every((value) => value === 2)).toBe(true);
});

import { collectBeyond } from "../../server/work/collected.ts";

/**
 * Prints, in bytes, what arrays take once nobody holds one of two of `BYTES`; a process of its own, where nothing else comes
 * and goes.
 */
const BYTES = 80e6;

const heldInArrays = () => process.memoryUsage().arrayBuffers;

/** An array that nobody holds when it is over. */
function leaveBehind(): void {
  new Float64Array(BYTES / 8).fill(1);
}

collectBeyond(-Infinity);
const before = heldInArrays();
const held = new Float64Array(BYTES / 8).fill(2);
leaveBehind();
const made = heldInArrays() - before;
let after = made;
// Out of the stack frame that made them; what the engine frees beside the program may take a turn more.
for (let turn = 0; turn < 20 && after >= 1.5 * BYTES; turn++) {
  await new Promise((resolve) => setImmediate(resolve));
  collectBeyond(before);
  after = heldInArrays() - before;
}
console.log(JSON.stringify({ one: BYTES, made, after, heldIsWhole: held.every((value) => value === 2) }));

import { CLOCKS } from "./brokenLogs/clocks.ts";
import { FILES } from "./brokenLogs/files.ts";
import type { BrokenLog } from "./brokenLogs/inventedRun.ts";
import { LAYOUTS } from "./brokenLogs/layouts.ts";
import { NUMBERS } from "./brokenLogs/numbers.ts";
import { PRINTED_LINES } from "./brokenLogs/printedLines.ts";
import { STANDS } from "./brokenLogs/stands.ts";

/** Every log that must be read, or refused at the right place: one invented run, spoiled in one way each. */
export const BROKEN_LOGS: readonly BrokenLog[] = [
  ...FILES,
  ...LAYOUTS,
  ...NUMBERS,
  ...CLOCKS,
  ...PRINTED_LINES,
  ...STANDS,
];

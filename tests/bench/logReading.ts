import { spawn } from "node:child_process";
import { once } from "node:events";
import { createReadStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import Papa from "papaparse";
import type { BenchRow } from "./benchRow.ts";
import { writeLongLog } from "./longLog.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const ROWS = 1_000_000;
/** Ten times the rows may take ten to the power of this. */
const LINEAR = 1.1;

/** Seconds that the parser alone takes: every cell cut out and turned into a number, nothing else done. */
function parserAlone(path: string): Promise<number> {
  const start = performance.now();
  const columns = Array.from({ length: 8 }, () => new Float64Array(ROWS));
  let row = 0;
  return new Promise((done, fail) => {
    Papa.parse<string[]>(createReadStream(path, { encoding: "utf8", highWaterMark: 1 << 20 }), {
      header: false,
      chunk({ data }) {
        for (const cells of data) {
          if (cells.length === 8 && row < ROWS) for (let i = 0; i < 8; i++) columns[i]![row] = Number(cells[i]);
          row += 1;
        }
      },
      complete: () => done((performance.now() - start) / 1000),
      error: fail,
    });
  });
}

interface Timed {
  readonly seconds: number;
  readonly peakMegabytes: number;
}

/** The whole command, process start included; peak memory as the kernel reports it. */
async function reduceByCommand(path: string): Promise<Timed> {
  const words = ["server/launch.mjs", "cli", "reduce", path, "--diameter", "76mm", "--water", "fresh 18C", "--json"];
  // Not resourceUsage().maxRSS: on Linux that begins with the memory of the process that started this one.
  const report =
    'import{readFileSync}from"node:fs";process.on("exit",()=>process.stderr.write("peak "+' +
    '/VmHWM:\\s+(\\d+)/.exec(readFileSync("/proc/self/status","utf8"))[1]+"\\n"))';
  const preload = `data:text/javascript,${encodeURIComponent(report)}`;
  const start = performance.now();
  const child = spawn(process.execPath, ["--import", preload, ...words], {
    cwd: ROOT,
    stdio: ["ignore", "ignore", "pipe"],
  });
  let stderr = "";
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    stderr += text;
  });
  const [code] = await once(child, "close");
  const peak = /peak (\d+)/.exec(stderr);
  if (code !== 0 || !peak) throw new Error(`reduce failed with ${code}: ${stderr}`);
  return { seconds: (performance.now() - start) / 1000, peakMegabytes: Number(peak[1]) / 1024 };
}

export async function measureLogReading(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "bollard-bench-"));
  try {
    const path = join(folder, "long.csv");
    await writeLongLog(path, ROWS);
    const parser = Math.min(await parserAlone(path), await parserAlone(path));
    const first = await reduceByCommand(path);
    const second = await reduceByCommand(path);
    const seconds = Math.min(first.seconds, second.seconds);
    const peak = Math.max(first.peakMegabytes, second.peakMegabytes);
    const longest = join(folder, "longest.csv");
    await writeLongLog(longest, 10 * ROWS);
    const tenfold = await reduceByCommand(longest);
    return [
      {
        what: `reduce 1,000,000 x 8 by command, over parser alone (${seconds.toFixed(2)} s over ${parser.toFixed(2)} s)`,
        measured: `${(seconds / parser).toFixed(2)} x`,
        wanted: "at most 1.50 x",
        met: seconds <= 1.5 * parser,
      },
      {
        what: "peak memory of that command",
        measured: `${peak.toFixed(0)} MB`,
        wanted: "under 400 MB",
        met: peak < 400,
      },
      {
        what: `reduce 10,000,000 x 8 by command, over 1,000,000 (${tenfold.seconds.toFixed(2)} s)`,
        measured: `${(tenfold.seconds / seconds).toFixed(1)} x`,
        wanted: `at most ${(10 ** LINEAR).toFixed(1)} x`,
        met: tenfold.seconds <= 10 ** LINEAR * seconds,
      },
      {
        what: "peak memory of that command",
        measured: `${tenfold.peakMegabytes.toFixed(0)} MB`,
        wanted: "under 900 MB",
        met: tenfold.peakMegabytes < 900,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

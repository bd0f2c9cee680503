import { spawn } from "node:child_process";
import { createReadStream, createWriteStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { once } from "node:events";
import Papa from "papaparse";
import type { BenchRow } from "./benchRow.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const ROWS = 1_000_000;

/** A long log at 1 kHz: steps of the command with rests between, eight columns, about 50 MB. */
async function writeLongLog(path: string): Promise<void> {
  const out = createWriteStream(path);
  out.write("time (s),throttle (us),thrust (gf),speed (rpm),voltage (V),current (A),temperature (C),torque (mNm)\n");
  let seed = 1;
  const noise = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647 - 0.5;
  };
  for (let row = 0; row < ROWS; ) {
    const lines: string[] = [];
    for (const end = Math.min(ROWS, row + 10_000); row < end; row++) {
      const step = Math.floor(row / 50_000);
      const throttle = step % 2 === 0 ? 1000 : 1150 + 80 * ((step - 1) / 2);
      const rpm = throttle === 1000 ? 0 : 3 * (throttle - 900) + noise() * 8;
      const load = 0.000155 * rpm * rpm + 31 + row * 2e-6 + noise() * 6;
      lines.push(
        `${(row / 1000).toFixed(3)},${throttle},${load.toFixed(2)},${rpm.toFixed(1)},${(15.2 - rpm * 2e-4 + noise() * 0.02).toFixed(3)},${(rpm * rpm * 2e-6 + noise() * 0.05).toFixed(3)},${(22 + row * 1e-6).toFixed(2)},${(rpm * rpm * 3e-5 + noise() * 2).toFixed(2)}`,
      );
    }
    if (!out.write(`${lines.join("\n")}\n`)) await once(out, "drain");
  }
  out.end();
  await once(out, "finish");
}

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
  const report = 'process.on("exit",()=>process.stderr.write("peak "+process.resourceUsage().maxRSS+"\\n"))';
  const preload = `data:text/javascript,${encodeURIComponent(report)}`;
  const start = performance.now();
  const child = spawn(process.execPath, ["--import", preload, ...words], { cwd: ROOT, stdio: ["ignore", "ignore", "pipe"] });
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
    await writeLongLog(path);
    const parser = Math.min(await parserAlone(path), await parserAlone(path));
    const first = await reduceByCommand(path);
    const second = await reduceByCommand(path);
    const seconds = Math.min(first.seconds, second.seconds);
    const peak = Math.max(first.peakMegabytes, second.peakMegabytes);
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
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

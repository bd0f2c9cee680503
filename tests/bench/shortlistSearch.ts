import { spawn } from "node:child_process";
import { join } from "node:path";
import type { BenchRow } from "./benchRow.ts";
import { millionRequest } from "./shortlistMillion.ts";

const HERE = import.meta.dirname;

/** What a command prints; null where it is not there or fails. */
function printed(command: string, words: readonly string[], input = ""): Promise<string | null> {
  return new Promise((done) => {
    const child = spawn(command, words, { stdio: ["pipe", "pipe", "inherit"] });
    let text = "";
    child.stdout.setEncoding("utf8").on("data", (chunk: string) => {
      text += chunk;
    });
    child.on("error", () => done(null));
    child.on("close", (code) => done(code === 0 ? text : null));
    child.stdin.on("error", () => {});
    child.stdin.end(input);
  });
}

interface Alone {
  readonly one: number;
  readonly two: number;
  readonly peakMegabytes: number | null;
  readonly counts: { readonly combinations: number; readonly meeting: number };
}

interface Vectorised {
  readonly seconds: number;
  readonly meeting: number;
}

/** One million combinations of parts: time, memory and threads, and the same in numpy where it is there. */
export async function measureShortlist(): Promise<BenchRow[]> {
  const text = await printed(process.execPath, ["--import", "tsx", join(HERE, "shortlistAlone.ts")]);
  if (text === null) throw new Error("the search of a million combinations failed");
  const alone = JSON.parse(text) as Alone;
  const { combinations, meeting } = alone.counts;
  const rate = combinations / alone.two;
  const what = `${combinations.toLocaleString("en")} combinations of parts, ${meeting.toLocaleString("en")} meet`;
  const peak = alone.peakMegabytes;
  const rows: BenchRow[] = [
    {
      what: `${what}: time on two threads (${Math.round(rate / 1e4) / 100} M/s)`,
      measured: `${alone.two.toFixed(2)} s`,
      wanted: "under 5 s",
      met: alone.two < 5,
    },
    {
      what: "the same: one thread over two",
      measured: `${(alone.one / alone.two).toFixed(2)} x`,
      wanted: "at least 1.6 x",
      met: alone.one / alone.two >= 1.6,
    },
    {
      what: "the same: peak memory of the process",
      measured: peak === null ? "not known" : `${peak.toFixed(0)} MB`,
      wanted: "under 500 MB",
      met: (peak ?? 0) < 500,
    },
  ];
  const python = await printed("python3", [join(HERE, "shortlistNumpy.py")], JSON.stringify(millionRequest()));
  return python === null ? rows : [...rows, vectorisedRow(alone, JSON.parse(python) as Vectorised)];
}

function vectorisedRow(alone: Alone, { seconds, meeting }: Vectorised): BenchRow {
  const same = meeting === alone.counts.meeting;
  return {
    what: `the same in vectorised numpy (${seconds.toFixed(2)} s, ${same ? "the same" : `${meeting}`} meet) over two threads`,
    measured: `${(seconds / alone.two).toFixed(2)} x`,
    wanted: "the same outcome, at least 0.5 x",
    met: same && seconds / alone.two >= 0.5,
  };
}

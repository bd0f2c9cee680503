import { mkdtempSync, openAsBlob, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { startWorkbench, type Workbench } from "../browser/workbench.ts";
import type { BenchRow } from "./benchRow.ts";
import { writeLongLog } from "./longLog.ts";

const ROWS = 1_000_000;
/** Time between two questions while the workbench is busy, ms. */
const PAUSE = 10;
const REPEATS = 15;

const WATER = { kind: "fresh", temperature: 288.15 };

type StoredRun = StoredDocument<Run>;

/** The HTTP interface as a person's page uses it, timed. */
class Client {
  private constructor(
    readonly address: string,
    readonly project: string,
  ) {}

  static async open({ address }: Workbench): Promise<Client> {
    const api = `${address}/api`;
    const { id } = await answer<{ id: string }>(`${api}/projects`, body("POST", { name: "Long runs", water: WATER }));
    const project = `${api}/projects/${id}`;
    const propeller = { name: "Measured", diameter: 0.076, diameterUncertainty: 1e-4 };
    await answer(`${project}/parts/propellers`, body("POST", propeller));
    return new Client(address, project);
  }

  async send(path: string): Promise<StoredRun> {
    const form = new FormData();
    form.append("file", await openAsBlob(path), "long.csv");
    return (await answer<{ run: StoredRun }>(`${this.project}/runs`, { method: "POST", body: form })).run;
  }

  async edit(run: StoredRun, recipe: object): Promise<StoredRun> {
    const document = { ...run.document, recipe: { ...run.document.recipe, ...recipe } };
    return answer<StoredRun>(`${this.project}/runs/${run.id}`, body("PUT", { version: run.version, document }));
  }

  read = (run: StoredRun, what: string): Promise<unknown> => answer(`${this.project}/runs/${run.id}/${what}`);
}

function body(method: string, content: object): RequestInit {
  return { method, headers: { "content-type": "application/json" }, body: JSON.stringify(content) };
}

async function answer<T>(address: string, init?: RequestInit): Promise<T> {
  const response = await fetch(address, init);
  if (!response.ok) throw new Error(`${address}: ${response.status} ${await response.text()}`);
  return (await response.json()) as T;
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!;
}

interface Latencies {
  readonly busy: readonly number[];
  /** Of a second workbench that has nothing to do, asked in turn with the first: what machine and client add. */
  readonly idle: readonly number[];
}

/** Latencies of two cheap questions, ms, asked in turn until `work` is done. */
async function latenciesDuring(client: Client, idleOne: Client, work: Promise<unknown>): Promise<Latencies> {
  let busy = true;
  const done = work.finally(() => {
    busy = false;
  });
  const latencies = { busy: [] as number[], idle: [] as number[] };
  while (busy) {
    for (const [of, { address, project }] of [["busy", client] as const, ["idle", idleOne] as const]) {
      for (const asked of [`${address}/api/health`, `${project}/runs`]) {
        latencies[of].push(await timed(() => answer(asked)));
        await new Promise((next) => setTimeout(next, PAUSE));
      }
    }
  }
  await done;
  return latencies;
}

function latencyRows(what: string, { busy, idle }: Latencies): BenchRow[] {
  const words = (latencies: readonly number[]) =>
    [0.5, 0.99, 1].map((part) => quantile(latencies, part).toFixed(1)).join(", ");
  const both = `p50, p99, longest ${words(busy)} ms; of an idle workbench ${words(idle)} ms`;
  return [row(`longest wait for health or runs ${what} (${busy.length} asked; ${both})`, quantile(busy, 1), 50)];
}

function row(what: string, milliseconds: number, limit: number): BenchRow {
  const [measured, wanted] = [`${milliseconds.toFixed(1)} ms`, `under ${limit} ms`];
  return { what, measured, wanted, met: milliseconds < limit };
}

/** Median of repeated questions, the first left out. */
async function usual(ask: (i: number) => Promise<unknown>): Promise<number> {
  await ask(0);
  const times: number[] = [];
  for (let i = 1; i <= REPEATS; i++) times.push(await timed(() => ask(i)));
  return quantile(times, 0.5);
}

async function traceRows(client: Client, run: StoredRun, rows: number): Promise<BenchRow[]> {
  const span = rows / 1000;
  const of = (from: number, to: number) => client.read(run, `trace?points=1200&from=${from}&to=${to}`);
  const name = rows.toLocaleString("en");
  return [
    row(`trace of 1,200 steps of ${name} rows, whole`, await usual(() => client.read(run, "trace?points=1200")), 20),
    row(`the same, a third of it`, await usual((i) => of(i, i + span / 3)), 20),
    row(`the same, raw samples of one second`, await usual((i) => of(i, i + 1)), 20),
  ];
}

interface Found {
  readonly plateaus: readonly { readonly start: number; readonly end: number }[];
  readonly tare: { readonly windows: readonly { readonly start: number; readonly end: number }[] };
}

/** One edit of each kind; the recipe goes back to what it was between them. */
function editsOf({ plateaus, tare }: Found): Readonly<Record<string, (i: number) => object>> {
  const moved = (spans: Found["plateaus"], i: number) =>
    spans.map(({ start, end }, k) => ({ start: k === 3 ? start + (i + 1) / 100 : start, end }));
  return {
    fluid: (i) => ({ fluid: { kind: "fresh", temperature: 290 + i / 10 } }),
    "thrust factor": (i) => ({ corrections: { thrust: { factor: 1 + i / 1000 } } }),
    "thrust zero": (i) => ({ corrections: { thrust: { offset: i / 1000 } } }),
    "torque factor": (i) => ({ corrections: { torque: { factor: 1 + i / 1000 } } }),
    "current factor": (i) => ({ corrections: { current: { factor: 1 + i / 1000 } } }),
    "rotation rate factor": (i) => ({ corrections: { rotationRate: { factor: 1 + i / 1000 } } }),
    "plateau edge": (i) => ({ plateaus: { mode: "spans", spans: moved(plateaus, i) } }),
    "tare window": (i) => ({ tare: { mode: "windows", windows: moved(tare.windows, i) } }),
    "shape of the tare": (i) => ({ tare: { mode: "zeroThrottle", shape: i % 2 === 0 ? "line" : "piecewise" } }),
  };
}

/** Reductions after an edit, and the longest of them as a part of the first reduction of the same run. */
async function editRows(client: Client, run: StoredRun, what: string): Promise<BenchRow[]> {
  const start = performance.now();
  const found = (await client.read(run, "reduction")) as Found;
  const first = performance.now() - start;
  const edits = editsOf(found);
  const rows: BenchRow[] = [];
  let latest = run;
  for (const [name, edit] of Object.entries(edits)) {
    const times: number[] = [];
    for (let i = 0; i <= REPEATS; i++) {
      latest = await client.edit({ ...latest, document: run.document }, edit(i));
      times.push(await timed(() => client.read(latest, "reduction")));
    }
    const usualTime = quantile(times.slice(1), 0.5);
    const part = `${((100 * usualTime) / first).toFixed(0)} % of the first`;
    rows.push(row(`reduction of ${what} after an edit of the ${name} (${part})`, usualTime, 50));
  }
  return rows;
}

/** Share of a reduction at which it is given up. */
const IN_THE_MIDDLE = 0.3;

/** Time from giving a reduction up in its middle until the same log is answered about again, ms. */
async function cancelRow(client: Client, run: StoredRun): Promise<BenchRow> {
  const changed = await client.edit(run, { corrections: { rotationRate: { factor: 1.01 } } });
  await client.read(changed, "trace?points=10");
  const abort = new AbortController();
  const given = await fetch(`${client.project}/runs/${run.id}/reduction/progress`, { signal: abort.signal });
  const share = await untilShare(given, IN_THE_MIDDLE);
  abort.abort();
  const waited = await timed(() => client.read(changed, "trace?points=10&from=0&to=1"));
  const what = `from giving a reduction of 10,000,000 rows up, ${(100 * share).toFixed(0)} % done, to the next answer about them`;
  return row(what, waited, 1000);
}

/** Reads server-sent events of progress until one tells `least` or more; gives what it told. */
async function untilShare(response: Response, least: number): Promise<number> {
  const decoder = new TextDecoder();
  let text = "";
  for await (const chunk of response.body!) {
    text += decoder.decode(chunk as Uint8Array, { stream: true });
    const shares = [...text.matchAll(/"fraction":([\d.e-]+)/g)].map(([, share]) => Number(share));
    const latest = shares.at(-1) ?? 0;
    if (latest >= least) return latest;
  }
  throw new Error(`the reduction ended before it could be given up: ${text.slice(-200)}`);
}

/** Peak memory of a process, MB, as the kernel counts it; undefined where it does not. */
function peakMegabytes(pid: number): number | undefined {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1]) / 1024;
  } catch {
    return undefined;
  }
}

export async function measureLongRuns(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "bollard-bench-"));
  const workbench = await startWorkbench();
  const idle = await startWorkbench();
  try {
    const client = await Client.open(workbench);
    const idleOne = await Client.open(idle);
    const [long, longest] = [join(folder, "long.csv"), join(folder, "longest.csv")];
    await writeLongLog(long, ROWS);
    await writeLongLog(longest, 10 * ROWS);
    const run = await client.send(long);
    const rows = [...(await traceRows(client, run, ROWS)), ...(await editRows(client, run, "1,000,000 rows"))];
    const sent: StoredRun[] = [];
    const sending = client.send(longest).then((one) => void sent.push(one));
    rows.push(...latencyRows("while 10,000,000 rows come in", await latenciesDuring(client, idleOne, sending)));
    const reducing = client.read(sent[0]!, "reduction");
    rows.push(...latencyRows("while they are reduced", await latenciesDuring(client, idleOne, reducing)));
    const peak = peakMegabytes(workbench.pid);
    const measured = peak === undefined ? "not known" : `${peak.toFixed(0)} MB`;
    rows.push({
      what: "peak memory of the workbench so far",
      measured,
      wanted: "under 900 MB",
      met: (peak ?? 0) < 900,
    });
    rows.push(...(await traceRows(client, sent[0]!, 10 * ROWS)));
    rows.push(await cancelRow(client, sent[0]!));
    return rows;
  } finally {
    await workbench.stop();
    await idle.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

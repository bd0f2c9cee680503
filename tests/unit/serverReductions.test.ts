import { expect, test } from "vitest";
import type { ReduceJob } from "../../server/work/jobs.ts";
import { Reductions } from "../../server/work/reductions.ts";
import { WorkCancelled, type WorkOptions, type WorkPool } from "../../server/work/workPool.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { PROPELLER, runOf } from "../api/exampleDocuments.ts";

const job = (sha256: string, diameter = 0.076): ReduceJob => ({
  kind: "reduce",
  file: { path: "", sha256, name: "log.csv" },
  recipe: runOf(sha256, 1).recipe,
  propeller: { ...PROPELLER, diameter },
  program: "Bollard Bench test",
});

interface Asked {
  readonly options: WorkOptions;
  readonly resolve: (reduction: Reduction) => void;
  readonly reject: (reason: Error) => void;
}

/** A pool that notes what it is asked and lets the test answer. */
function notingPool() {
  const asked: Asked[] = [];
  const run = (_: unknown, options: WorkOptions) =>
    new Promise((resolve, reject) => {
      options.signal?.addEventListener("abort", () => reject(new WorkCancelled()));
      asked.push({ options, resolve, reject });
    });
  return { reductions: new Reductions({ run } as unknown as Pick<WorkPool, "run">), asked };
}

const REDUCTION = { source: { rows: 7 } } as unknown as Reduction;

test("the same question a second time is answered from memory", async () => {
  const { reductions, asked } = notingPool();
  const first = reductions.reduce(job("a"));
  asked[0]?.resolve(REDUCTION);
  expect(await first).toBe(REDUCTION);
  expect(await reductions.reduce(job("a"))).toBe(REDUCTION);
  expect(asked).toHaveLength(1);
});

test("another diameter is another question", async () => {
  const { reductions, asked } = notingPool();
  void reductions.reduce(job("a"));
  void reductions.reduce(job("a", 0.08));
  expect(asked).toHaveLength(2);
});

test("the same question twice at once is worked on once, and both hear of its progress", async () => {
  const { reductions, asked } = notingPool();
  const told: string[] = [];
  const one = reductions.reduce(job("a"), { onProgress: (fraction) => told.push(`one ${fraction}`) });
  const two = reductions.reduce(job("a"), { onProgress: (fraction) => told.push(`two ${fraction}`) });
  asked[0]?.options.onProgress?.(0.5);
  asked[0]?.resolve(REDUCTION);
  expect(await Promise.all([one, two])).toEqual([REDUCTION, REDUCTION]);
  expect(asked).toHaveLength(1);
  expect(told).toEqual(["one 0.5", "two 0.5"]);
});

test("the work goes on while one still waits, and stops when the last one leaves", async () => {
  const { reductions, asked } = notingPool();
  const [one, two] = [new AbortController(), new AbortController()];
  const first = reductions.reduce(job("a"), { signal: one.signal });
  const second = reductions.reduce(job("a"), { signal: two.signal });
  one.abort();
  await expect(first).rejects.toBeInstanceOf(WorkCancelled);
  expect(asked[0]?.options.signal?.aborted).toBe(false);
  two.abort();
  await expect(second).rejects.toBeInstanceOf(WorkCancelled);
  expect(asked[0]?.options.signal?.aborted).toBe(true);
});

test("after it was stopped the same question begins anew", async () => {
  const { reductions, asked } = notingPool();
  const abort = new AbortController();
  const first = reductions.reduce(job("a"), { signal: abort.signal });
  abort.abort();
  await expect(first).rejects.toBeInstanceOf(WorkCancelled);
  const again = reductions.reduce(job("a"));
  asked[1]?.resolve(REDUCTION);
  expect(await again).toBe(REDUCTION);
});

test("a refusal is told to all who wait and is not remembered", async () => {
  const { reductions, asked } = notingPool();
  const problem = { code: "bench.no-plateau", where: "log.csv", found: "none", needed: "", mend: "" };
  const [one, two] = [reductions.reduce(job("a")), reductions.reduce(job("a"))];
  asked[0]?.reject(new InputProblem(problem));
  await expect(one).rejects.toMatchObject({ problem });
  await expect(two).rejects.toMatchObject({ problem });
  void reductions.reduce(job("a"));
  expect(asked).toHaveLength(2);
});

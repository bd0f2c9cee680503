import { expect, test } from "vitest";
import type { ReduceJob } from "../../server/work/jobs.ts";
import { runJob } from "../../server/work/runJob.ts";
import type { Progress, Tables } from "../../server/work/tables.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { propellerOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

const JOB: ReduceJob = {
  kind: "reduce",
  file: { path: "", sha256: "0".repeat(64), name: "run.csv" },
  recipe: recipeOf(USES),
  propeller: propellerOf(),
  program: "test",
};

/** A table at hand; the shares of its reading are told before. */
function tablesThat(told: readonly number[]): Tables {
  const table = tableOf(quietColumns());
  const tableOf_ = async (_: unknown, { onProgress }: Progress) => {
    for (const share of told) onProgress(share);
    return table;
  };
  return { tableOf: tableOf_ } as unknown as Tables;
}

async function sharesOf(readShares: readonly number[]): Promise<number[]> {
  const shares: number[] = [];
  const progress = { onProgress: (share: number) => void shares.push(share), signal: new AbortController().signal };
  expect(await runJob(JOB, tablesThat(readShares), progress)).toEqual(
    reduce({ ...JOB, table: tableOf(quietColumns()) }),
  );
  return shares;
}

test("a reduction tells shares that never fall, to the end", async () => {
  for (const read of [[], [0.5, 1]]) {
    const shares = await sharesOf(read);
    expect(shares.toSorted((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBeCloseTo(1, 9);
  }
});

test("where the table was at hand the shares begin at nothing, else where reading ended", async () => {
  const first = (shares: number[]) => shares[0]!;
  expect(first(await sharesOf([]))).toBeLessThan(0.2);
  expect((await sharesOf([0.5, 1])).filter((share) => share < 0.8)).toEqual([0.4]);
});

test.each([1, 2, 5, 12])("a reduction that is cancelled after share %i ends before the next", async (last) => {
  const abort = new AbortController();
  let told = 0;
  const onProgress = () => {
    told += 1;
    if (told === last) abort.abort();
  };
  const asked = runJob(JOB, tablesThat([]), { onProgress, signal: abort.signal });
  await expect(asked).rejects.toMatchObject({ name: "AbortError" });
  expect(told).toBe(last);
});

import { createHash } from "node:crypto";
import { statSync } from "node:fs";
import { request } from "node:http";
import { expect, test } from "vitest";
import type { Report } from "../../server/work/jobs.ts";
import { WorkPool } from "../../server/work/workPool.ts";
import type { ThreadEvents } from "../../server/work/workThread.ts";
import { listeningApp } from "./startedApp.ts";

const MEGABYTE = 1 << 20;
const LENGTH = 200;

/** Looks at nothing: this is about what the receiving side holds. */
const unlooking = (_: unknown, { onReport }: ThreadEvents) => {
  const shape = {
    encoding: "utf-8",
    delimiter: ",",
    decimalMark: ".",
    headerLine: 1,
    unitsLine: null,
    firstDataLine: 2,
  };
  const inspection = {
    shape: { ...shape, commentMark: null, columns: [] },
    guesses: [],
    preview: [],
    rows: 0,
    repairs: [],
    warnings: [],
  };
  return {
    order: ({ id }: { id: number }) =>
      void setImmediate(() => onReport({ id, outcome: inspection } as unknown as Report)),
    stop: async () => {},
  };
};

/** Sends `LENGTH` megabytes no faster than they are taken; tells the most memory that this process held meanwhile. */
async function sendLarge(
  address: string,
  block: Buffer,
): Promise<{ status: number; body: string; greatestMemory: number }> {
  const boundary = "----between";
  const headers = { "content-type": `multipart/form-data; boundary=${boundary}` };
  let greatestMemory = 0;
  const sending = request(address, { method: "POST", headers });
  const answered = new Promise<{ status: number; body: string }>((resolve, reject) => {
    sending.on("error", reject);
    sending.on("response", (answer) => {
      let body = "";
      answer.on("data", (chunk) => {
        body += chunk;
      });
      answer.on("end", () => resolve({ status: answer.statusCode ?? 0, body }));
    });
  });
  sending.write(`--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="long.csv"\r\n\r\n`);
  for (let i = 0; i < LENGTH; i += 1) {
    if (!sending.write(block)) await new Promise((resolve) => sending.once("drain", resolve));
    greatestMemory = Math.max(greatestMemory, process.memoryUsage().rss);
  }
  sending.end(`\r\n--${boundary}--\r\n`);
  return { ...(await answered), greatestMemory };
}

test("a log of 200 MB is taken as a stream: it is kept whole, and the memory of the server hardly grows", async () => {
  const { runs, store } = await listeningApp({ pool: new WorkPool({ start: unlooking }) });
  const block = Buffer.alloc(MEGABYTE, "1.234,5.678,9.012\n");
  const before = process.memoryUsage().rss;
  const { status, body, greatestMemory } = await sendLarge(runs, block);
  expect(status).toBe(201);
  const { sha256, size } = JSON.parse(body).run.document.file;
  const hash = createHash("sha256");
  for (let i = 0; i < LENGTH; i += 1) hash.update(block);
  expect(sha256).toBe(hash.digest("hex"));
  expect(size).toBe(LENGTH * MEGABYTE);
  expect(statSync(store.files.path(sha256)).size).toBe(LENGTH * MEGABYTE);
  expect(greatestMemory - before).toBeLessThan(100 * MEGABYTE);
});

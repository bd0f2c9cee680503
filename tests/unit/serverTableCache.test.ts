import { expect, test } from "vitest";
import { TableCache, tableBytes } from "../../server/work/tableCache.ts";
import type { LogTable } from "../../shared/log/logTable.ts";

/** 100 rows and two columns: 1600 bytes of numbers and 400 of line numbers. */
const table = (): LogTable =>
  ({
    rows: 100,
    columns: [new Float64Array(100), new Float64Array(100)],
    lineNumbers: new Uint32Array(100),
  }) as unknown as LogTable;

test("a table counts as the bytes of its columns and line numbers", () => {
  expect(tableBytes(table())).toBe(2000);
});

test("the least lately used goes first when the room is used up", () => {
  const cache = new TableCache(4500);
  const [a, b, c] = [table(), table(), table()];
  cache.put("a", a);
  cache.put("b", b);
  expect(cache.get("a")).toBe(a);
  cache.put("c", c);
  expect([cache.get("a"), cache.get("b"), cache.get("c")]).toEqual([a, undefined, c]);
});

test("the same table put twice takes its room once", () => {
  const cache = new TableCache(4500);
  const b = table();
  cache.put("b", b);
  for (const _ of [1, 2, 3]) cache.put("a", table());
  expect(cache.get("b")).toBe(b);
});

test("a table larger than all the room is not kept and pushes nothing out", () => {
  const cache = new TableCache(2500);
  const a = table();
  cache.put("a", a);
  cache.put("large", { ...table(), columns: [new Float64Array(1000)] });
  expect([cache.get("a"), cache.get("large")]).toEqual([a, undefined]);
});

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

test("a table larger than all the room is kept alone, and goes when the next is to be read", () => {
  const cache = new TableCache(2500);
  const large = { ...table(), columns: [new Float64Array(1000)] };
  cache.put("a", table());
  cache.put("large", large);
  expect([cache.get("a"), cache.get("large")]).toEqual([undefined, large]);
  cache.makeRoom(100);
  expect(cache.get("large")).toBeUndefined();
});

test("room is made by letting the least lately used go, and no more than needed", () => {
  const cache = new TableCache(6500);
  const c = table();
  cache.put("a", table());
  cache.put("b", table());
  cache.put("c", c);
  cache.makeRoom(4000);
  expect([cache.get("a"), cache.get("b"), cache.get("c")]).toEqual([undefined, undefined, c]);
});

import { expect, test } from "vitest";
import { alignLogs } from "../../shared/bench/alignLogs.ts";
import { recipeOf } from "../unit/benchTable.ts";
import { electricalTable, thrustTable } from "./twoClocks.ts";
const FIRST = { table: thrustTable(), recipe: recipeOf([["time", "s"], ["thrust", "gf"]]) };
const second = (clock: Parameters<typeof electricalTable>[0]) => ({ table: electricalTable(clock), recipe: recipeOf([["time", "s"], ["current", "A"], ["voltage", "V"]]) });
test("x", () => {
  for (const c of [{ at: 1000 }, { at: -37.4 }, { at: 3, rate: 0.002 }, {at: 3, rate: -0.0003}]) {
    const t0 = performance.now();
    console.log(JSON.stringify(alignLogs({ first: FIRST, second: second(c), lag: { mode: "automatic" } }).alignment), performance.now() - t0);
  }
});

import { reduceRun } from "../../shared/bench/reduceRun.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { propellerOf, recipeOf, SOURCE, tableOf } from "../unit/benchTable.ts";
import type { BenchRow } from "./benchRow.ts";

/** So many times the rows or plateaus may take this power of the number in time. */
const POWER = 1.1;
/** Work that costs the same for any size hides how the rest grows; of so short a time nothing is said, ms. */
const REPEATS = 3;

interface Size {
  readonly rows: number;
  readonly plateaus: number;
}

/** A log of `plateaus` held steps with a rest before each, at 1 kHz, and the recipe that names every one of them. */
function madeRun({ rows, plateaus }: Size) {
  const per = Math.floor(rows / (2 * plateaus));
  let seed = 1;
  const noise = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647 - 0.5;
  };
  const [time, thrust, rate, torque] = Array.from({ length: 4 }, () => new Float64Array(rows));
  for (let row = 0; row < rows; row++) {
    const step = Math.floor(row / per);
    const n = step % 2 === 0 ? 0 : 20 + (40 * (step % 37)) / 37;
    time![row] = row / 1000;
    rate![row] = n === 0 ? 0 : n + 0.1 * noise();
    thrust![row] = 0.8 + 0.0066 * rate![row]! ** 2 + 0.05 * noise();
    torque![row] = 0.01 + 8e-5 * rate![row]! ** 2 + 1e-3 * noise();
  }
  const inside = (step: number) => ({ start: (step * per + 1) / 1000, end: ((step + 1) * per - 1) / 1000 });
  const spans = Array.from({ length: plateaus }, (_, i) => inside(2 * i + 1));
  const windows = Array.from({ length: plateaus }, (_, i) => inside(2 * i));
  const uses = [
    ["time", "s"],
    ["thrust", "N"],
    ["rotationRate", "rev/s"],
    ["torque", "N m"],
  ] as const;
  const byHand = { plateaus: { mode: "spans", spans }, tare: { mode: "windows", windows } };
  const table = tableOf({ time: time!, thrust: thrust!, rate: rate!, torque: torque! });
  return { table, automatic: recipeOf(uses), byHand: recipeOf(uses, byHand) };
}

/** The same numbers in arrays of which nothing is remembered yet. */
const untouched = (table: LogTable): LogTable => ({
  ...table,
  columns: table.columns.map((column) => column.slice()),
  lineNumbers: table.lineNumbers.slice(),
});

/** Least time of a first reduction, ms. */
function reductionTime(size: Size, how: "automatic" | "byHand"): number {
  const run = madeRun(size);
  const times = Array.from({ length: REPEATS }, () => {
    const table = untouched(run.table);
    const start = performance.now();
    reduceRun({ table, recipe: run[how], propeller: propellerOf(), source: SOURCE });
    return performance.now() - start;
  });
  return Math.min(...times);
}

function growthRow(what: string, how: "automatic" | "byHand", small: Size, large: Size): BenchRow {
  const [before, after] = [reductionTime(small, how), reductionTime(large, how)];
  const times = Math.max(large.rows / small.rows, large.plateaus / small.plateaus);
  const limit = times ** POWER;
  return {
    what: `first reduction, ${what} (${before.toFixed(0)} ms, then ${after.toFixed(0)} ms)`,
    measured: `${(after / before).toFixed(1)} x`,
    wanted: `at most ${limit.toFixed(1)} x`,
    met: after <= limit * before,
  };
}

/** How the time of a first reduction grows with rows and with plateaus. */
export function measureGrowth(): BenchRow[] {
  const rows = 1_000_000;
  return [
    growthRow("1e5 to 1e6 rows, 10 plateaus found", "automatic", { rows: 1e5, plateaus: 10 }, { rows, plateaus: 10 }),
    growthRow("1e6 to 1e7 rows, 10 plateaus found", "automatic", { rows, plateaus: 10 }, { rows: 1e7, plateaus: 10 }),
    growthRow("10 to 100 plateaus found in 1e6 rows", "automatic", { rows, plateaus: 10 }, { rows, plateaus: 100 }),
    growthRow(
      "200 to 2,000 plateaus and windows set by hand",
      "byHand",
      { rows, plateaus: 200 },
      { rows, plateaus: 2000 },
    ),
  ];
}

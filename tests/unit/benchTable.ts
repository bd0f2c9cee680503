import { type RunRequest, reduceRun } from "../../shared/bench/reduceRun.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

/** Columns by header, as a log reader hands them over. */
export function tableOf(
  columns: Readonly<Record<string, ArrayLike<number>>>,
  more: Partial<Pick<LogTable, "restarts" | "resolutions">> = {},
): LogTable {
  const headers = Object.keys(columns);
  const rows = Object.values(columns)[0]?.length ?? 0;
  return {
    fileName: "run.csv",
    shape: {
      ...{ encoding: "utf-8", delimiter: ",", decimalMark: ".", headerLine: 1, unitsLine: null, firstDataLine: 2 },
      commentMark: null,
      columns: headers.map((header) => ({ header, name: header, unit: null })),
    },
    rows,
    columns: Object.values(columns).map((values) => Float64Array.from(values)),
    lineNumbers: Uint32Array.from({ length: rows }, (_, row) => row + 2),
    resolutions: headers.map(() => null),
    restarts: [],
    repairs: [],
    preview: [],
    columnReaderRows: rows,
    ...more,
  };
}

/** Fresh water of 18 °C and columns in the order given: `["time", "s"]` and so on. */
export function recipeOf(uses: readonly (readonly [string, string])[], more: object = {}): Recipe {
  return Recipe.parse({
    columns: uses.map(([role, unit], column) => ({ column, role, unit })),
    fluid: { kind: "fresh", temperature: 291.15 },
    ...more,
  });
}

export const propellerOf = (more: object = {}): Propeller =>
  Propeller.parse({ name: "three blades", diameter: 0.076, diameterUncertainty: 0, ...more });

export const SOURCE = { sha256: "0".repeat(64), program: "test" };

export const reduce = (request: Omit<RunRequest, "source" | "propeller"> & Partial<RunRequest>) =>
  reduceRun({ propeller: propellerOf(), source: SOURCE, ...request });

/** Time, thrust, rotation rate and command in the order of `quietColumns`. */
export const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
] as const;

export const codes = ({ warnings }: Reduction) => warnings.map(({ code }) => code);

/** The sentence of the warning with this code, empty where there is none. */
export const messageOf = ({ warnings }: Reduction, code: string) =>
  warnings.find((found) => found.code === code)?.message ?? "";

/** The problem that `action` is refused with. */
export function problemOf(action: () => unknown): InputProblem["problem"] {
  try {
    action();
  } catch (error) {
    if (error instanceof InputProblem) return error.problem;
    throw error;
  }
  throw new Error("nothing was refused");
}

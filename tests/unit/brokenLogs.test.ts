import { expect, test } from "vitest";
import { mergedLog } from "../../shared/bench/mergedLog.ts";
import { readingChoices } from "../../shared/bench/readingChoices.ts";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import { readLog } from "../../shared/log/readLog.ts";
import type { ColumnRole, Recipe } from "../../shared/model/recipe.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { propellerOf, reduce } from "./benchTable.ts";
import { type BrokenLog, TRUE_THRUST_COEFFICIENT } from "./brokenLogs/inventedRun.ts";
import { BROKEN_LOGS } from "./brokenLogs.ts";

const FRESH = { kind: "fresh", temperature: 291.15 } as const;

/** From bytes to the answer as the command line goes, with every code that was told on the way. */
function answerOf({ bytes, companion, stated = {}, polePairs, reading = {} }: BrokenLog) {
  const asFound = readLog(bytes, "stand.csv");
  const table = readLog(bytes, "stand.csv", reading);
  const guessed = recipeFromGuesses({ guesses: guessRoles(table), fluid: FRESH, polePairs });
  const told = [...asFound.repairs, ...table.repairs, ...inspectLog(table).warnings].map(({ code }) => code);
  told.push(
    ...readingChoices({ table, recipe: guessed, propeller: propellerOf() }).map(() => "bench.reading-doubtful"),
  );
  const columns = guessed.columns.map((use) => {
    const [role, unit] = (stated[use.column] ?? "").split(" ");
    return role ? { ...use, role: role as ColumnRole, unit: unit! } : use;
  });
  const both = together({ table, recipe: { ...guessed, columns } }, companion);
  const reduction = reduce(both);
  return { reduction, told: new Set([...told, ...both.warnings, ...reduction.warnings.map(({ code }) => code)]) };
}

function together(first: { table: ReturnType<typeof readLog>; recipe: Recipe }, companion: Uint8Array | undefined) {
  if (companion === undefined) return { ...first, warnings: [] };
  const companionTable = readLog(companion, "meter.csv");
  const { columns } = recipeFromGuesses({ guesses: guessRoles(companionTable), fluid: FRESH });
  const merged = mergedLog({ ...first, companionTable, companion: { columns, lag: { mode: "automatic" } } });
  expect(merged.alignment.lag.value).toBeCloseTo(-412.3, 1);
  return { ...merged, warnings: merged.warnings.map(({ code }) => code) };
}

test.each(BROKEN_LOGS.filter(({ refused }) => !refused))(
  "$name: $what: the answer is right and says what was done",
  (log) => {
    const { reduction, told } = answerOf(log);
    const { interval95 } = reduction.thrustCoefficient;
    const truth = (log.sign ?? 1) * TRUE_THRUST_COEFFICIENT;
    expect(interval95[0]).toBeLessThanOrEqual(truth);
    expect(interval95[1]).toBeGreaterThanOrEqual(truth);
    expect(Math.abs(interval95[1] - interval95[0])).toBeLessThan(0.02 * TRUE_THRUST_COEFFICIENT);
    for (const code of log.told) expect([...told]).toContain(code);
  },
);

test.each(BROKEN_LOGS.filter(({ refused }) => refused))("$name: $what: it is refused at the right place", (log) => {
  const attempt = () => answerOf(log);
  expect(attempt).toThrow(InputProblem);
  try {
    attempt();
  } catch (error) {
    const { code, where } = (error as InputProblem).problem;
    expect({ code, where }).toEqual(log.refused);
  }
});

test("the list of broken logs is the one that is tested", async () => {
  const rows = BROKEN_LOGS.map(({ name, what, told, refused, sign }) => {
    const answer = refused
      ? `refused: \`${refused.code}\` at ${refused.where}`
      : `K_T ${sign === -1 ? "−" : ""}0.2 within its interval`;
    return `| ${name} | ${what} | ${answer} | ${told.map((code) => `\`${code}\``).join(", ") || "–"} |`;
  });
  const text = [
    "# Logs that must be read",
    "",
    "Each of these is made in `tests/unit/brokenLogs/` from one invented run with a thrust coefficient of 0.2, and goes from its bytes to the answer in `tests/unit/brokenLogs.test.ts`. That test also holds this table to what it tests; `-u` writes it again.",
    "",
    "| Log | What is wrong | Answer | Told besides |",
    "| --- | --- | --- | --- |",
    ...rows,
    "",
  ].join("\n");
  await expect(text).toMatchFileSnapshot("../../samples/broken-logs.md");
});

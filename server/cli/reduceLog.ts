import { basename } from "node:path";
import { readingWarning } from "../../shared/bench/checks/readingChecks.ts";
import { mergedLog } from "../../shared/bench/mergedLog.ts";
import { readingChoices } from "../../shared/bench/readingChoices.ts";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { sha256OfFile } from "../intake/fileHash.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import { PROGRAM } from "../program.ts";
import { settledRoles, statedRoles } from "./columnOptions.ts";
import { doubtfulGuesses } from "./doubtfulGuesses.ts";
import { withoutEffect } from "./logOptionDoubts.ts";
import { monteCarloOf } from "./monteCarloOption.ts";
import { requireFile } from "./namedFile.ts";
import type { Words } from "./options.ts";
import { repairsOf, statedReading } from "./readingOption.ts";
import { controllerOf, diameterDoubts, motorOf, propellerOf } from "./standOptions.ts";
import { recipeOf } from "./statedRecipe.ts";
import { thrustInstrumentOf } from "./thrustInstrument.ts";

/**
 * A log read and reduced as the words say. Runs of one propeller share what its diameter is off by; `propellerName` tells
 * them from runs of another.
 */
export async function reduceLog(
  path: string,
  words: Words,
  propellerName = "propeller",
): Promise<Reduction & { readonly monteCarlo?: MonteCarlo }> {
  const fileName = basename(path);
  const reading = statedReading(words);
  await requireFile(path, { where: fileName, needed: "a log file that can be read" });
  const [table, sha256] = await Promise.all([readLogFile(path, fileName, { reading }), sha256OfFile(path)]);
  const both = await withElectricalLog(table, recipeOf(table, words), words);
  const motor = motorOf(words);
  const run = {
    table: both.table,
    recipe: both.recipe,
    propeller: propellerOf(words, propellerName),
    instruments: await thrustInstrumentOf(words),
    ...(motor && { motor, controller: controllerOf(words) }),
  };
  const request = { ...run, source: { sha256, program: PROGRAM } };
  const reduction = reduceRun(request);
  const open = readingChoices({ ...run, decided: statedRoles(words) }).map(readingWarning);
  const told = new Set(reduction.warnings.map(({ where, code }) => `${code} ${where}`));
  const fresh = open.filter(({ where, code }) => !told.has(`${code} ${where}`));
  const stated = { roles: settledRoles(words), columns: run.recipe.columns };
  const doubts = doubtfulGuesses(table, guessRoles(table), stated);
  const warnings = [
    ...[...repairsOf(table), ...both.warnings, ...reduction.warnings, ...fresh, ...doubts],
    ...withoutEffect(words, run.recipe),
    ...diameterDoubts(words),
  ];
  return { ...reduction, warnings, ...monteCarloOf(request, words) };
}

/** The log together with the channels of --electrical-log, where that is given. */
async function withElectricalLog(table: LogTable, recipe: Recipe, words: Words) {
  const path = words.text("electrical-log");
  if (path === undefined) return { table, recipe, warnings: [] };
  const companionTable = await readLogFile(path, basename(path));
  const { columns } = recipeFromGuesses({ guesses: guessRoles(companionTable), fluid: recipe.fluid });
  const stated = words.quantity("lag", "time")?.value;
  const lag = stated === undefined ? ({ mode: "automatic" } as const) : ({ mode: "stated", seconds: stated } as const);
  const merged = mergedLog({ table, recipe, companionTable, companion: { columns, lag } });
  return { ...merged, warnings: [...repairsOf(companionTable), ...merged.warnings] };
}

import { basename } from "node:path";
import { readingWarning } from "../../shared/bench/checks/readingChecks.ts";
import { mergedLog } from "../../shared/bench/mergedLog.ts";
import { readingChoices } from "../../shared/bench/readingChoices.ts";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { ROLE_DIMENSIONS, requireRoleUnit, roleOfText } from "../../shared/log/roleUnits.ts";
import { unitOfStatedRole } from "../../shared/log/statedRole.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import type { ChannelCorrection, ColumnRole, ColumnUse, Recipe } from "../../shared/model/recipe.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { StandFacts } from "../../shared/model/stand.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";
import { sha256OfFile } from "../intake/fileHash.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import { PROGRAM } from "../program.ts";
import { checked } from "./checked.ts";
import { doubtfulGuesses } from "./doubtfulGuesses.ts";
import { monteCarloOf } from "./monteCarloOption.ts";
import type { Option, Words } from "./options.ts";
import { READING_OPTION, repairsOf, statedReading } from "./readingOption.ts";
import { CALIBRATION_OPTIONS, thrustInstrumentOf } from "./thrustInstrument.ts";

/** Options of every verb that reads logs. */
export const LOG_OPTIONS = {
  diameter: { value: "QUANTITY", text: "propeller diameter; ± its standard uncertainty if known" },
  water: { value: "FLUID", text: 'what it turned in, e.g. "fresh 18C", "sea 12C 33", "air 20C 1013hPa 50%"' },
  column: {
    value: 'ROLE="HEADER"',
    text: "what a column stands for, where the guess is wrong; #3 is the third column",
    many: true,
  },
  unit: { value: "ROLE=UNIT", text: "unit of a column, where the header does not say it, e.g. thrust=gf", many: true },
  ...READING_OPTION,
  factor: {
    value: "ROLE=NUMBER",
    text: "multiplier of a channel: lever ratio, calibration; negative turns the sign",
    many: true,
  },
  "calibration-uncertainty": {
    value: "FRACTION",
    text: "relative standard uncertainty of the thrust calibration, e.g. 0.5%",
  },
  ...CALIBRATION_OPTIONS,
  "pole-pairs": { value: "COUNT", text: "magnet pole pairs, where the log counts electrical turns" },
  "advance-speed": {
    value: "QUANTITY",
    text: "speed through the water during the whole run, where no column has it; ± its standard uncertainty",
  },
  order: {
    value: "NUMBER",
    text: "order of the curves against the advance ratio, 1 to 4; chosen by the points where absent",
  },
  sweep: { text: "the log is a slow ramp without held steps: regression on the whole trace" },
  "no-tare": { text: "take the zero of the thrust as it stands in the log" },
  immersion: { value: "QUANTITY", text: "depth of the shaft under the surface, for the checks of the run" },
  nozzle: { text: "the propeller ran in a nozzle" },
  kv: { value: "QUANTITY", text: "motor speed constant: with the next two gives shaft power without a torque cell" },
  resistance: { value: "QUANTITY", text: "motor winding resistance" },
  "no-load-current": { value: "QUANTITY", text: "motor no-load current" },
  "controller-resistance": { value: "QUANTITY", text: "controller resistance" },
  json: { text: "print the whole result as JSON, SI units" },
} as const satisfies Record<string, Option>;

/** Options of the verb that reads one log. */
export const ELECTRICAL_LOG_OPTIONS = {
  "electrical-log": { value: "LOG", text: "log of voltage and current of the same run, on a clock of its own" },
  lag: {
    value: "QUANTITY",
    text: "added to the clock of the electrical log, e.g. --lag=-2.5s; found from both logs where absent",
  },
} as const satisfies Record<string, Option>;

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
    ...[...assumptions(words), ...withoutEffect(words, run.recipe)],
  ];
  return { ...reduction, warnings, ...monteCarloOf(request, words) };
}

/** The roles whose column or unit the words state. */
function statedRoles(words: Words): ReadonlySet<ColumnRole> {
  return new Set(words.pairs("unit").map(([role]) => roleOf(role, "--unit")));
}

/** The roles whose column, unit or calibration the words state. */
function settledRoles(words: Words): ReadonlySet<ColumnRole> {
  const columns = words.pairs("column").map(([role]) => roleOf(role, "--column"));
  return new Set([...statedRoles(words), ...columns]);
}

/** Options that change nothing because the log has no column for them. */
function withoutEffect(words: Words, { columns }: Recipe): Warning[] {
  const has = (role: ColumnRole) => columns.some((use) => use.role === role);
  const factors = words
    .pairs("factor")
    .map(([text]) => roleOf(text, "--factor"))
    .filter((role) => !has(role))
    .map((role) =>
      warning({
        code: "cli.no-effect",
        where: "--factor",
        found: `no column of the log is ${role}, so that its factor changed nothing`,
        needed: "",
        mend: `Say which column it is: --column ${role}="HEADER"`,
      }),
    );
  if (!words.has("kv") || has("torque") || has("electricalPower") || (has("voltage") && has("current"))) return factors;
  return [
    ...factors,
    warning({
      code: "cli.no-effect",
      where: "--kv",
      found: "the log has no voltage and current, so that the motor's constants gave no shaft power",
      needed: "",
      mend: 'Say which columns they are: --column voltage="HEADER" --column current="HEADER", or add --electrical-log',
    }),
  ];
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

function propellerOf(words: Words, name: string): Propeller {
  const diameter = words.required("diameter", "length");
  const document = {
    name,
    diameter: diameter.value,
    diameterUncertainty: diameter.standardUncertainty ?? 0,
    nozzle: words.has("nozzle"),
  };
  return checked(Propeller, document, () => "diameter");
}

/** Options that become the motor on the stand, with the field each fills. */
const MOTOR_OPTIONS = { kv: "speedConstant", resistance: "resistance", "no-load-current": "noLoadCurrent" } as const;

function motorOf(words: Words): Motor | undefined {
  if (!Object.keys(MOTOR_OPTIONS).some((name) => words.has(name))) return undefined;
  const document = {
    name: "motor on the stand",
    speedConstant: words.required("kv", "speedConstant").value,
    resistance: words.required("resistance", "resistance").value,
    noLoadCurrent: words.required("no-load-current", "current").value,
  };
  return checked(Motor, document, (field) => Object.entries(MOTOR_OPTIONS).find(([, key]) => key === field)?.[0]);
}

function controllerOf(words: Words): Controller {
  const resistance = words.quantity("controller-resistance", "resistance")?.value ?? 0;
  return checked(Controller, { name: "controller on the stand", resistance }, () => "controller-resistance");
}

const ASSUMED_WATER = "fresh 18C";

function assumptions(words: Words): Warning[] {
  if (words.has("water")) return [];
  return [
    {
      code: "cli.water-assumed",
      message: `--water was not given: ${ASSUMED_WATER} was taken. Coefficients scale with the density.`,
      where: "--water",
    },
  ];
}

export function recipeOf(table: LogTable, words: Words): Recipe {
  const polePairs = words.whole("pole-pairs", 1);
  const guessed = recipeFromGuesses({
    guesses: guessRoles(table),
    fluid: parseFluid(words.text("water") ?? ASSUMED_WATER, "--water"),
    ...(polePairs !== undefined && { polePairs }),
  });
  return {
    ...guessed,
    columns: statedColumns(table, guessed.columns, words),
    corrections: { ...guessed.corrections, ...statedCorrections(words) },
    ...statedAdvance(words),
    ...statedStand(words),
    ...(words.has("sweep") && { plateaus: { mode: "sweep" as const } }),
    ...(words.has("no-tare") && { tare: { mode: "none" as const } }),
  };
}

/** What is stated of the stand, for the checks of the run. */
function statedStand(words: Words): Pick<Recipe, "stand"> {
  const shaftImmersion = words.quantity("immersion", "length")?.value;
  return shaftImmersion === undefined ? {} : { stand: StandFacts.parse({ shaftImmersion }) };
}

/** Advance speed and order of the curves as --advance-speed and --order state them. */
function statedAdvance(words: Words): Pick<Recipe, "advanceSpeeds" | "advanceOrder"> {
  const speed = words.quantity("advance-speed", "speed");
  const order = words.whole("order", 1);
  if (order !== undefined && order > HIGHEST_ORDER) {
    throw new InputProblem({
      code: "cli.order",
      where: "--order",
      found: `order ${order}`,
      needed: `1 to ${HIGHEST_ORDER}`,
      mend: "Curves of higher order follow the scatter of the plateaus",
    });
  }
  return {
    ...(speed && {
      advanceSpeeds: {
        mode: "constant",
        speed: speed.value,
        relativeUncertainty: speed.value === 0 ? 0 : Math.abs((speed.standardUncertainty ?? 0) / speed.value),
      },
    }),
    ...(order !== undefined && { advanceOrder: order }),
  };
}

const HIGHEST_ORDER = 4;

/** The guessed columns, with what --column and --unit say put over them. */
function statedColumns(table: LogTable, guessed: readonly ColumnUse[], words: Words): ColumnUse[] {
  const uses = new Map(guessed.map((use) => [use.column, use]));
  for (const [roleText, header] of words.pairs("column")) {
    const role = roleOf(roleText, "--column");
    const column = columnOf(table, header);
    for (const use of uses.values()) if (use.role === role) uses.set(use.column, { ...use, role: "ignore" });
    uses.set(column, { column, role, unit: role === "ignore" ? "1" : unitOfStatedRole(table, column, role).unit });
  }
  for (const [roleText, unit] of words.pairs("unit")) {
    const role = roleOf(roleText, "--unit");
    const use = [...uses.values()].find((one) => one.role === role);
    if (!use) throw noColumn(role, table);
    uses.set(use.column, { ...use, unit: requireRoleUnit(role, unit, "--unit") });
  }
  return [...uses.values()].sort((a, b) => a.column - b.column);
}

function statedCorrections(words: Words): Partial<Record<ColumnRole, ChannelCorrection>> {
  const corrections: Partial<Record<ColumnRole, ChannelCorrection>> = {};
  for (const [roleText, text] of words.pairs("factor")) {
    const factor = Number(text.replace(",", "."));
    if (!Number.isFinite(factor) || factor === 0) {
      throw new InputProblem({
        code: "cli.not-a-factor",
        where: "--factor",
        found: `"${text}" can not be a multiplier`,
        needed: "a number other than 0",
        mend: "For example --factor thrust=2.5",
      });
    }
    corrections[roleOf(roleText, "--factor")] = { factor, offset: 0, relativeUncertainty: 0 };
  }
  const relativeUncertainty = words.quantity("calibration-uncertainty", "fraction")?.value;
  if (relativeUncertainty !== undefined && !(relativeUncertainty >= 0)) {
    throw new InputProblem({
      code: "cli.negative-uncertainty",
      where: "--calibration-uncertainty",
      found: `the uncertainty is ${100 * relativeUncertainty} %`,
      needed: "0 % or more",
      mend: "Give it without a sign: --calibration-uncertainty 1%",
    });
  }
  if (relativeUncertainty !== undefined) {
    corrections.thrust = { factor: 1, offset: 0, ...corrections.thrust, relativeUncertainty };
  }
  return corrections;
}

function roleOf(text: string, where: string): ColumnRole {
  const role = roleOfText(text);
  if (role) return role;
  throw new InputProblem({
    code: "cli.unknown-role",
    where,
    found: `"${text}" is not something a column can stand for`,
    needed: Object.keys(ROLE_DIMENSIONS).join(", "),
    mend: 'For example --column thrust="Load (gf)"',
  });
}

function columnOf(table: LogTable, wanted: string): number {
  const { columns } = table.shape;
  const numbered = /^#(\d+)$/.exec(wanted);
  if (numbered && Number(numbered[1]) >= 1 && Number(numbered[1]) <= columns.length) return Number(numbered[1]) - 1;
  const fold = (text: string) => text.trim().toLowerCase();
  for (const spelling of ["header", "name"] as const) {
    const found = columns.findIndex((column) => fold(column[spelling]) === fold(wanted));
    if (found >= 0) return found;
  }
  throw new InputProblem({
    code: "cli.no-such-column",
    where: `--column, ${table.fileName}`,
    found: `no column has the header "${wanted}"`,
    needed: columns.map((column, index) => `#${index + 1} "${column.header}"`).join(", "),
    mend: "Use one of these headers, or # and the number of the column",
  });
}

function noColumn(role: ColumnRole, table: LogTable): InputProblem {
  return new InputProblem({
    code: "cli.no-column-for-role",
    where: `--unit, ${table.fileName}`,
    found: `no column stands for ${role}`,
    needed: "a column that this unit belongs to",
    mend: `Say which: --column ${role}="HEADER"`,
  });
}

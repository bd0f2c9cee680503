import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import type { ChannelCorrection, ColumnRole, Recipe } from "../../shared/model/recipe.ts";
import { StandFacts } from "../../shared/model/stand.ts";
import { parseQuantity } from "../../shared/quantity/parseQuantity.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { roleOf, statedColumns } from "./columnOptions.ts";
import type { Words } from "./options.ts";

/** The recipe that the program would choose for this log, with what the words state put over it. */
export function recipeOf(table: LogTable, words: Words): Recipe {
  const polePairs = words.whole("pole-pairs", 1);
  const water = words.text("water");
  const guessed = recipeFromGuesses({
    guesses: guessRoles(table),
    fluid: water === undefined ? undefined : parseFluid(water, "--water"),
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
  const stated = words.text("calibration-uncertainty");
  const doubts = [
    ...(stated === undefined ? [] : [["thrust", stated, "--calibration-uncertainty"] as const]),
    ...words.pairs("meter-uncertainty").map(([role, text]) => [role, text, "--meter-uncertainty"] as const),
  ];
  for (const [roleText, text, where] of doubts) {
    const role = roleOf(roleText, where);
    corrections[role] = { factor: 1, offset: 0, ...corrections[role], relativeUncertainty: partOf(text, where) };
  }
  return corrections;
}

/** A relative standard uncertainty, which must say whether it is per cent. */
function partOf(text: string, where: string): number {
  const part = parseQuantity(text, "fraction", { where, unitNeeded: true });
  if (part >= 0) return part;
  throw new InputProblem({
    code: "cli.negative-uncertainty",
    where,
    found: `the uncertainty is ${100 * part} %`,
    needed: "0 % or more",
    mend: "Give it without a sign, e.g. 1%",
  });
}

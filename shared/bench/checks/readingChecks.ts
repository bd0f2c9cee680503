import type { ReadingChoice } from "../../model/readingChoice.ts";
import type { Warning } from "../../quantity/warning.ts";
import { readingChoices } from "../readingChoices.ts";
import type { RunFacts } from "../runFacts.ts";

const BOTH = new Set(["thrust", "rotationRate"] as const);

/** A unit that can not be right where another one can. What is merely open is asked when the columns are confirmed. */
export function readingChecks({ table, recipe, propeller, standMotor }: RunFacts): Warning[] {
  const motor = standMotor?.motor;
  return readingChoices({ table, recipe, propeller, motor, decided: BOTH }).map(readingWarning);
}

/** The choice as a warning: every reading with what it would mean. */
export function readingWarning({ header, sentence }: ReadingChoice): Warning {
  return { code: "bench.reading-doubtful", where: `column ${header}`, message: sentence };
}

import type { ReadingChoice } from "../../model/readingChoice.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { readingChoices } from "../readingChoices.ts";
import type { RunFacts } from "../runFacts.ts";

const DECIDED = new Set(["thrust", "rotationRate", "torque"] as const);

/** Columns that are plainly taken for something else. What is merely open is asked when the columns are confirmed. */
export function readingChecks(facts: RunFacts): Warning[] {
  return [...unitChecks(facts), ...swappedSupply(facts)];
}

/** Current follows the load from next to nothing; the voltage of a supply sags by a part of itself. */
const CURRENT_GROWS = 2;
const VOLTAGE_SAGS = 1.5;

function swappedSupply({ used, channels: { voltage, current } }: RunFacts): Warning[] {
  if (!voltage || !current) return [];
  const growth = (values: readonly (number | undefined)[]) => {
    const sizes = values.map((value) => Math.abs(value ?? Number.NaN)).filter((size) => size > 0);
    return sizes.length > 1 ? Math.max(...sizes) / Math.min(...sizes) : 1;
  };
  const ofVoltage = growth(used.map(({ measured }) => measured.voltage?.mean));
  const ofCurrent = growth(used.map(({ measured }) => measured.current?.mean));
  if (ofVoltage < CURRENT_GROWS || ofCurrent > VOLTAGE_SAGS) return [];
  return [
    warning({
      code: "bench.swapped-channels",
      where: `columns ${voltage.header} and ${current.header}`,
      found: `from the slowest to the fastest plateau the voltage grows ${formatNumber(ofVoltage, 2)} times and the current ${formatNumber(ofCurrent, 2)} times: the two seem to be swapped`,
      needed: "a current that grows with the load and a voltage that hardly changes",
      mend: "Exchange what the two columns stand for; their product, the power, is the same either way",
    }),
  ];
}

/** A unit that can not be right where another one can. */
function unitChecks({ table, recipe, propeller, standMotor, channels }: RunFacts): Warning[] {
  // The calibration of an instrument settles what its readings are worth.
  if (channels.thrust.calibration !== null || channels.rotationRate.calibration !== null) return [];
  const motor = standMotor?.motor;
  return readingChoices({ table, recipe, propeller, motor, decided: DECIDED }).map(readingWarning);
}

/** The choice as a warning: every reading with what it would mean. */
export function readingWarning({ header, sentence }: ReadingChoice): Warning {
  return { code: "bench.reading-doubtful", where: `column ${header}`, message: sentence };
}

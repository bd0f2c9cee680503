import { median } from "../../numeric/median.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { Channel } from "../channels.ts";
import { lateReading } from "../lateReading.ts";
import type { RunFacts } from "../runFacts.ts";

/** Current at rest from which on it is told, A: more than the electronics of a controller usually take. */
const TOLD_REST_CURRENT = 0.05;
/** Of a supply at rest, V: less is no supply. */
const NO_VOLTAGE = 1;

/** Voltage and current as they stand while the propeller rests. */
export function channelChecks(facts: RunFacts): Warning[] {
  const { voltage, current } = facts.channels;
  const restCurrent = atRest(current, facts);
  const restVoltage = atRest(voltage, facts);
  if (restCurrent === null || !current) return [];
  if (voltage && restVoltage !== null && looksSwapped(facts, restVoltage, restCurrent)) {
    return [swapped(voltage, current, restVoltage, restCurrent)];
  }
  return Math.abs(restCurrent) > TOLD_REST_CURRENT ? [restCurrentTold(current, restCurrent)] : [];
}

/** A supply holds its voltage while the current comes and goes: the other way round the two columns are exchanged. */
function looksSwapped({ used }: RunFacts, restVoltage: number, restCurrent: number): boolean {
  const fastest = used.reduce((a, b) => (a.measured.rotationRate.mean > b.measured.rotationRate.mean ? a : b)).measured;
  if (!fastest.voltage || !fastest.current) return false;
  const steadyCurrent = Math.abs(fastest.current.mean - restCurrent) < 0.3 * Math.abs(restCurrent);
  return Math.abs(restVoltage) < NO_VOLTAGE && Math.abs(restCurrent) > 2 && steadyCurrent;
}

function atRest(channel: Channel | undefined, { thrustTare, rest, timeline }: RunFacts): number | null {
  if (!channel) return null;
  const spans = rest.stretches.length > 0 && timeline.kind !== "readings" ? rest.stretches : [];
  const means = spans.flatMap(({ from, to }) => {
    const late = lateReading(channel, { from, to });
    return late === null ? [] : [late];
  });
  return means.length > 0 && thrustTare.windows.length > 0 ? median(means) : null;
}

function swapped(voltage: Channel, current: Channel, restVoltage: number, restCurrent: number): Warning {
  return warning({
    code: "bench.voltage-current-swapped",
    where: `columns ${voltage.header} and ${current.header}`,
    found: `at rest the voltage reads ${formatNumber(restVoltage)} V and the current ${formatNumber(restCurrent)} A, and the current hardly changes under load`,
    needed: "a voltage that is there at rest, and a current that comes with the load",
    mend: "The two columns look exchanged: exchange their roles",
  });
}

function restCurrentTold(current: Channel, restCurrent: number): Warning {
  return warning({
    code: "bench.rest-current",
    where: `column ${current.header}`,
    found: `${formatNumber(restCurrent)} A flow while the propeller rests`,
    needed: "",
    mend: "It was not taken off: the electronics of a controller do draw current. If the sensor has an offset, give it as correction of the current",
  });
}

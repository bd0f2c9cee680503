import type { QualityCheck } from "../../model/quality.ts";
import { median } from "../../numeric/median.ts";
import type { Channel } from "../channels.ts";
import { lateReading } from "../lateReading.ts";
import { remembered } from "../remembered.ts";
import type { RowSpan } from "../rest.ts";
import type { RunFacts } from "../runFacts.ts";
import { type Change, changeWithin, pooledChange } from "./changeWithin.ts";
import { repeatedRates } from "./repeatedRates.ts";
import { flagged, inPercent, passed, percentText, unjudged } from "./verdict.ts";

/** Fall of the voltage within a plateau and over the run that matters. Common practice, no source. */
const WITHIN = 0.01;
const OVER_RUN = 0.03;
/** Chance of it by accident below which a fall within plateaus is told. */
const TOO_RARE = 0.01;

const SUBJECT = {
  code: "bench.pack-sag",
  name: "Pack sag",
  limit: `voltage falls by less than ${percentText(WITHIN)} within a plateau and ${percentText(OVER_RUN)} over the run (common practice)`,
};

/** Does the pack run down while it is measured? Within plateaus, at rest before and after, and at one speed up and down. */
export function packSag(facts: RunFacts): QualityCheck {
  const { voltage } = facts.channels;
  const plateaus = facts.used.map(({ measured }) => measured);
  const within = voltage && pooledChange(plateaus.map(({ span }) => voltageChange(voltage, span, facts.table.rows)));
  const overRun = voltage ? (changeAtRest(voltage, facts) ?? changeUpDown(plateaus)) : null;
  if (!voltage || (within === null && overRun === null)) {
    return unjudged(
      SUBJECT,
      voltage ? "The voltage was not logged at rest or long enough to see a fall." : "The log has no voltage.",
      "Log the voltage at the controller, with a rest before and after the run.",
    );
  }
  const sagsWithin = within && within.change < -WITHIN && within.pValue < TOO_RARE;
  const sagsOverRun = overRun !== null && overRun < -OVER_RUN;
  const texts = [
    ...(within ? [`${percentText(within.change, true)} within a plateau`] : []),
    ...(overRun === null ? [] : [`${percentText(overRun, true)} over the run`]),
  ];
  const value = sagsOverRun || !within ? overRun! : within.change;
  const measured = { ...inPercent(value), text: texts.join(", ") };
  if (!sagsWithin && !sagsOverRun) return passed(SUBJECT, measured, "The voltage holds.");
  return flagged(SUBJECT, {
    measured,
    sentence: `The voltage changes by ${texts.join(" and ")}: the coefficients rest on the measured rotation rate and stand, but thrust at a given throttle is that of a pack running down.`,
    mend: "Start with a full pack or use a bench supply, keep the leads short and thick, rest between steps, and visit the steps in mixed order.",
  });
}

/** Within one plateau; as a part, so that no calibration factor matters. */
function voltageChange({ raw, writtenZero }: Channel, { from, to }: RowSpan, rows: number): Change | null {
  const kept = { weight: to - from, budget: rows };
  return remembered(raw, { stage: "sag", dependsOn: [from, to, writtenZero], ...kept }, () => {
    const readings = raw.slice(from, to);
    for (let i = 0; i < readings.length; i++) readings[i] = readings[i]! - writtenZero;
    return changeWithin(readings);
  });
}

/** From the first rest to the last; the second half of each, when the pack has recovered. */
function changeAtRest(voltage: Channel, { rest, timeline }: RunFacts): number | null {
  if (timeline.kind === "readings") return null;
  const levels = rest.stretches.flatMap(({ from, to }) => {
    const late = lateReading(voltage, { from, to });
    return late === null ? [] : [late];
  });
  const [first, last] = [levels[0], levels.at(-1)];
  // A supply behind a relay reads nothing at rest.
  return levels.length >= 2 && first! > 1 && last! > 1 ? last! / first! - 1 : null;
}

function changeUpDown(plateaus: Parameters<typeof repeatedRates>[0]): number | null {
  const changes = repeatedRates(plateaus).flatMap(([a, b]) =>
    a.voltage && b.voltage && a.voltage.mean > 0 ? [b.voltage.mean / a.voltage.mean - 1] : [],
  );
  return changes.length > 0 ? median(changes) : null;
}

import type { QualityCheck } from "../../model/quality.ts";
import { median } from "../../numeric/median.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Channel, channelsByRole, samplesOf } from "../channels.ts";
import type { RunFacts } from "../runFacts.ts";
import { everyNth } from "../settling.ts";
import { flagged, passed, unjudged } from "./verdict.ts";

/** Change of temperature over the run that matters, K. Common practice, no source. */
const LARGEST = 5;

const SUBJECT = {
  code: "bench.temperature-drift",
  name: "Temperature drift",
  limit: `the logged temperature changes by less than ${LARGEST}\u202fK (common practice)`,
};

/** Did the logged temperature change between the plateaus? */
export function temperatureDrift({ table, recipe, used }: Pick<RunFacts, "table" | "recipe" | "used">): QualityCheck {
  const channel = channelsByRole(table, recipe).get("temperature");
  const levels = channel ? used.flatMap(({ measured: { span } }) => levelOf(channel, span.from, span.to)) : [];
  if (!channel || levels.length < 2) {
    return unjudged(
      SUBJECT,
      channel ? `Column ${channel.header} holds no temperature on the plateaus.` : "The log has no temperature.",
      "Log the temperature of the water, the motor or the load cell, whichever is easiest.",
    );
  }
  const change = levels.at(-1)! - levels[0]!;
  const range = Math.max(...levels) - Math.min(...levels);
  const text = `${formatNumber(range, 2)}\u202fK between plateaus`;
  const measured = { value: range, unit: "K", text };
  if (range < LARGEST)
    return passed(SUBJECT, measured, `Column ${channel.header} holds within ${formatNumber(range, 2)}\u202fK.`);
  return flagged(SUBJECT, {
    measured,
    sentence: `Column ${channel.header} changes by ${formatNumber(range, 2)}\u202fK between plateaus (${change > 0 ? "warmer" : "colder"} at the end).`,
    mend: "Water: give the mean temperature, and let it settle. Motor or controller: rest between steps. Load cell: warm it up before the run and take the tare more often.",
  });
}

function levelOf(channel: Channel, from: number, to: number): number[] {
  const readings = everyNth(samplesOf(channel, from, to), 512);
  return readings.length > 0 ? [median(readings)] : [];
}

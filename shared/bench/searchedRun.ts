import { blocksOf } from "./blocks.ts";
import { channelsKey, channelsOf } from "./channels.ts";
import { plateauSpansOf } from "./plateauSpans.ts";
import type { RunRequest } from "./reduceRun.ts";
import { identityOf, remembered } from "./remembered.ts";
import { restOf } from "./rest.ts";
import { tareLineOf } from "./tareLine.ts";
import { tareWindowsOf } from "./tareWindows.ts";
import { timelineOf } from "./timeline.ts";

/** Share of a whole reduction that is done after each step. */
const DONE = { blocks: 0.1, windows: 0.13, tare: 0.16 };

/**
 * From the table to the spans of steady running, each step looked at again only when what it depends on has changed.
 * It pauses between the steps and gives the share of a whole reduction that is done.
 */
export function* searchedRun({ table, recipe, instruments }: RunRequest) {
  const channels = channelsOf(table, recipe, instruments);
  const timeline = timelineOf(table, channels.time);
  const { thrust, rotationRate, command, advanceSpeed } = channels;
  const moving = [table.fileName, identityOf(timeline), channelsKey([rotationRate, command, advanceSpeed])];
  const { blocks, rest } = remembered(rotationRate.raw, { stage: "rest", dependsOn: moving }, () => {
    const found = blocksOf(channels, timeline);
    return { blocks: found, rest: restOf(found) };
  });
  yield DONE.blocks;
  // Settling and rests are seen in parts of the thrust: what its calibration makes of it does not move them.
  const dependsOn = [identityOf(thrust.raw), thrust.writtenStep, recipe.tare];
  const tareWindows = remembered(rest, { stage: "tareWindows", dependsOn }, () =>
    tareWindowsOf(channels, timeline, rest, recipe),
  );
  yield DONE.windows;
  const shape = recipe.tare.mode === "none" ? undefined : recipe.tare.shape;
  const thrustTare = tareLineOf(thrust, tareWindows.spans, timeline, shape);
  const torqueTare = channels.torque ? tareLineOf(channels.torque, tareWindows.spans, timeline, shape) : null;
  yield DONE.tare;
  const search = { channels, timeline, blocks, rest, tare: thrustTare, recipe };
  const bySearch = { stage: "spans", dependsOn: [thrustTare.dependsOn, recipe.plateaus] };
  const spans = remembered(rest, bySearch, () => plateauSpansOf(search));
  return { channels, timeline, rest, tareWindows, thrustTare, torqueTare, spans };
}

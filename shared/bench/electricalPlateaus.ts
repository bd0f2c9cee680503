import type { LogTable } from "../log/logTable.ts";
import type { ElectricalPlateau, ElectricalRun } from "../model/electrical.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { ColumnRole, Recipe } from "../model/recipe.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { blocksOf } from "./blocks.ts";
import { type Channel, type Channels, channelsByRole, channelsFrom, headerOf, samplesOf } from "./channels.ts";
import { type MeasuredPlateau, measurePlateau } from "./measuredPlateau.ts";
import { plateauSpansOf } from "./plateauSpans.ts";
import { restOf } from "./rest.ts";
import { plainMean, type SampleMean } from "./sampleMean.ts";
import { tareLineOf } from "./tareLine.ts";
import { tareWindowsOf } from "./tareWindows.ts";
import { timelineOf } from "./timeline.ts";

export interface ElectricalRequest {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly instruments?: UsedInstruments | undefined;
}

/**
 * Voltage, current and rotation rate of the steady stretches of a log, with or without a thrust in it: what a run says
 * of the motor. The current read with the motor at rest is taken off: it is the zero of the meter or what the
 * controller draws by itself, and neither turns the rotor.
 *
 * Throws   InputProblem `bench.missing-role` without voltage, current or rotation rate, and as `channelsByRole`;
 *          `bench.no-steady-running` where no stretch is steady.
 */
export function electricalPlateaus({ table, recipe, instruments }: ElectricalRequest): ElectricalRun {
  const channels = electricalChannels(table, recipe, instruments);
  const timeline = timelineOf(table, channels.time);
  const blocks = blocksOf(channels, timeline);
  const rest = restOf(blocks);
  const windows = tareWindowsOf(channels, timeline, rest, recipe).spans;
  const still = tareLineOf(channels.thrust, [], timeline);
  const torqueTare = channels.torque ? tareLineOf(channels.torque, windows, timeline) : null;
  const tare = channels.thrust === channels.rotationRate ? still : tareLineOf(channels.thrust, windows, timeline);
  const { spans } = plateauSpansOf({ channels, timeline, blocks, rest, tare, recipe });
  const source = { table, channels, timeline, thrustTare: tare, torqueTare };
  const measured = spans.flatMap((span) => {
    const plateau = measurePlateau(source, span);
    return plateau && plateau.rotationRate.mean > 0 ? [plateau] : [];
  });
  const currentAtRest = atRest(channels.current!, windows);
  const plateaus = measured.flatMap((plateau) => plateauOf(plateau, currentAtRest?.value ?? 0));
  if (plateaus.length === 0) throw noSteadyRunning(table);
  return {
    fileName: table.fileName,
    plateaus,
    commandUnit: channels.command?.unit ?? null,
    idleCommand: rest.idleCommand,
    currentAtRest,
    calibration: calibrationOf(channels),
    warnings: [...timeline.warnings],
  };
}

/** A run without propeller has no thrust: the rotation rate stands in for it where plateaus are looked for. */
function electricalChannels(table: LogTable, recipe: Recipe, instruments: UsedInstruments = {}): Channels {
  const byRole = channelsByRole(table, recipe, instruments);
  for (const role of ["rotationRate", "voltage", "current"] as const) if (!byRole.has(role)) throw missing(table, role);
  const rotationRate = byRole.get("rotationRate")!;
  return channelsFrom(byRole, byRole.get("thrust") ?? rotationRate, rotationRate);
}

const WORDS: { readonly [R in ColumnRole]?: string } = {
  rotationRate: "rotation rate",
  voltage: "supply voltage",
  current: "supply current",
};

function missing(table: LogTable, role: ColumnRole): InputProblem {
  const present = table.columns.map((_, column) => headerOf(table, column)).join(", ");
  return new InputProblem({
    code: "bench.missing-role",
    where: table.fileName,
    found: `no column is marked as ${WORDS[role]}; the file has: ${present || "no columns"}`,
    needed: "voltage, current and rotation rate, to tell the constants of a motor",
    mend: `Say which column holds the ${WORDS[role]}`,
  });
}

/** Mean current of the rests. Its doubt is its own size: it may be all meter, or all controller. */
function atRest(
  current: Channel,
  windows: readonly { readonly from: number; readonly to: number }[],
): Uncertain | null {
  const means = windows.map(({ from, to }) => plainMean(samplesOf(current, from, to))).filter(Number.isFinite);
  if (means.length === 0) return null;
  const mean = means.reduce((sum, one) => sum + one, 0) / means.length;
  return uncertain(mean, Math.max(Math.abs(mean) / Math.sqrt(3), current.resolution / Math.sqrt(12)));
}

function plateauOf(plateau: MeasuredPlateau, currentAtRest: number): ElectricalPlateau[] {
  const { voltage, current, torque, rotationRate, turnSign } = plateau;
  if (!voltage || !current || !(voltage.mean > 0)) return [];
  return [
    {
      firstLine: plateau.firstLine,
      lastLine: plateau.lastLine,
      start: plateau.start,
      end: plateau.end,
      command: plateau.command,
      rotationRate: told(rotationRate),
      voltage: told(voltage),
      current: told({ ...current, mean: current.mean - currentAtRest }),
      torque: torque && told({ ...torque, mean: turnSign * torque.mean }),
    },
  ];
}

function told({ mean, scatter, rounding, degreesOfFreedom }: SampleMean): Uncertain {
  return uncertain(mean, Math.hypot(scatter, rounding), rounding > scatter ? Infinity : degreesOfFreedom);
}

function calibrationOf({ voltage, current, rotationRate, torque }: Channels): ElectricalRun["calibration"] {
  const of = { voltage, current, rotationRate, torque };
  const stated = Object.entries(of).flatMap(([role, channel]) =>
    channel && channel.relativeUncertainty > 0 ? [[role, channel.relativeUncertainty]] : [],
  );
  return Object.fromEntries(stated) as ElectricalRun["calibration"];
}

function noSteadyRunning(table: LogTable): InputProblem {
  return new InputProblem({
    code: "bench.no-steady-running",
    where: table.fileName,
    found: "no stretch of steady running was found in which voltage and current were read",
    needed: "throttle steps held for a second or more",
    mend: "Hold each step, or mark the plateaus by hand",
  });
}

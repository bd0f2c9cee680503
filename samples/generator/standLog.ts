import { type Faults, spoil } from "./glitches.ts";
import { type Reading, readingTimes, readMoments, type Stand } from "./instruments.ts";
import { type LogFormat, logText, opening } from "./logFormats.ts";
import type { RandomSource } from "./random.ts";
import { lengthOf, runThruster, type Step, type Thruster } from "./thruster.ts";

export interface StandRun {
  readonly thruster: Thruster;
  readonly schedule: readonly Step[];
  readonly stand: Stand;
  readonly format: LogFormat;
  /** Time between readings, s, and how late one may be, s. */
  readonly interval: number;
  readonly jitter: number;
  readonly faults: Faults;
  /** Time at which the logger lost power, s, and seconds until it was back; its clock then starts at zero again. */
  readonly restart?: { readonly at: number; readonly silence: number };
}

const FORCE_COLUMN = 2;

/** Readings of each stretch between two starts of the logger, with the logger's own clock. */
function stretches(readings: readonly Reading[], restart: StandRun["restart"]): Reading[][] {
  if (!restart) return [[...readings]];
  const back = restart.at + restart.silence;
  const after = readings.filter((reading) => reading.time >= back);
  const start = after[0]!.time;
  return [
    readings.filter((reading) => reading.time < restart.at),
    after.map((reading) => ({ ...reading, time: reading.time - start })),
  ];
}

/** The text of the log that a stand writes while a thruster runs through a schedule. */
export function standLog(run: StandRun, random: RandomSource): string {
  const { format, schedule, stand } = run;
  const times = readingTimes(lengthOf(schedule), run.interval, run.jitter, random);
  const readings = readMoments(runThruster(run.thruster, schedule, times), stand, random);
  const lines = stretches(readings, run.restart).flatMap((stretch) => {
    const rows = stretch.map(format.cells);
    const columns = rows[0]!.map((_, column) => column).filter((column) => column > 1);
    const spike = String(rows[0]![FORCE_COLUMN]).includes(",") ? "163,84" : "3276.7";
    spoil(rows, run.faults, { force: FORCE_COLUMN, mayBeMissing: columns, spike }, random);
    return [...opening(format), ...rows.map((cells) => cells.join(format.delimiter))];
  });
  return logText(format, lines);
}

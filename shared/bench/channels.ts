import { calibrationOf } from "../calibration/calibrationOf.ts";
import type { LogTable } from "../log/logTable.ts";
import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { UsedInstrument, UsedInstruments } from "../model/instrument.ts";
import type { ColumnRole, ColumnUse, Recipe } from "../model/recipe.ts";
import { InputProblem, tellingFrom } from "../quantity/problem.ts";
import { requireUnit } from "../quantity/unit.ts";
import { type AppliedCalibration, appliedCalibration } from "./appliedCalibration.ts";
import { readingStep } from "./readingStep.ts";
import { identityOf, remembered } from "./remembered.ts";

/**
 * One column of a log seen in SI: value = raw × `scale` + `shift`.
 * The numbers of the file are not copied: a log of ten million rows would double in memory, and only the rows
 * of plateaus and tare windows are ever needed in SI.
 */
export interface Channel {
  readonly role: ColumnRole;
  readonly header: string;
  /** Column of the file, from 0. */
  readonly column: number;
  readonly raw: Float64Array;
  readonly scale: number;
  readonly shift: number;
  /** Smallest step of the reading, SI; 0 where none is known. */
  readonly resolution: number;
  /** The same, and the reading that means nothing, both in the unit of the column: no calibration factor moves them. */
  readonly writtenStep: number;
  readonly writtenZero: number;
  /** Relative standard uncertainty of the calibration factor, common to the whole run. */
  readonly relativeUncertainty: number;
  /** Unit the file is written in. */
  readonly unit: string;
  /** The instrument it was measured with; null where a correction was typed or none. */
  readonly calibration: AppliedCalibration | null;
}

/** The channels of a run by role; thrust and rotation rate are always there. */
export interface Channels {
  readonly time: Channel | undefined;
  readonly command: Channel | undefined;
  readonly thrust: Channel;
  readonly rotationRate: Channel;
  readonly torque: Channel | undefined;
  readonly voltage: Channel | undefined;
  readonly current: Channel | undefined;
  readonly electricalPower: Channel | undefined;
  readonly advanceSpeed: Channel | undefined;
}

/** All that the readings of the channels depend on, for `remembered`. */
export function channelsKey(channels: readonly (Channel | undefined)[]): unknown {
  return channels.map((channel) => {
    if (channel === undefined) return null;
    const { role, header, unit, raw, scale, shift, resolution } = channel;
    return [role, header, unit, identityOf(raw), scale, shift, resolution];
  });
}

/** All that a channel depends on before it is calibrated, for `remembered`. */
export function writtenKey({ role, header, unit, raw, writtenStep }: Channel): unknown {
  return [role, header, unit, identityOf(raw), writtenStep];
}

/** SI value of one row; NaN where the cell is missing. */
export function valueAt(channel: Channel, row: number): number {
  return channel.raw[row]! * channel.scale + channel.shift;
}

/** SI values of the rows `from` (included) to `to` (not included). */
export function samplesOf(channel: Channel, from: number, to: number): Float64Array {
  const samples = channel.raw.slice(from, to);
  for (let i = 0; i < samples.length; i++) samples[i] = samples[i]! * channel.scale + channel.shift;
  return samples;
}

/**
 * The columns of `table` that `recipe` uses, converted to SI and corrected: true = (reading - offset) × factor, by the
 * calibration of an instrument where there is one for the channel, else by the correction that was typed.
 * Throws InputProblem `bench.no-such-column`, `bench.role-twice`, `bench.missing-role` or `bench.no-pole-pairs`.
 */
export function channelsOf(table: LogTable, recipe: Recipe, instruments: UsedInstruments = {}): Channels {
  const byRole = channelsByRole(table, recipe, instruments);
  return channelsFrom(byRole, required(byRole, "thrust", table), required(byRole, "rotationRate", table));
}

/** The channels of a run, once it is settled which two hold thrust and rotation rate. */
export function channelsFrom(
  byRole: ReadonlyMap<ColumnRole, Channel>,
  thrust: Channel,
  rotationRate: Channel,
): Channels {
  return {
    time: byRole.get("time"),
    command: byRole.get("command"),
    thrust,
    rotationRate,
    torque: byRole.get("torque"),
    voltage: byRole.get("voltage"),
    current: byRole.get("current"),
    electricalPower: byRole.get("electricalPower"),
    advanceSpeed: byRole.get("advanceSpeed"),
  };
}

/** The columns that the recipe uses, whether or not they are enough for a reduction. Throws as `channelsOf`. */
export function channelsByRole(
  table: LogTable,
  recipe: Recipe,
  instruments: UsedInstruments = {},
): ReadonlyMap<ColumnRole, Channel> {
  const byRole = new Map<ColumnRole, Channel>();
  for (const use of recipe.columns) {
    if (use.role === "ignore") continue;
    const used = (instruments as Partial<Record<ColumnRole, UsedInstrument>>)[use.role];
    const channel = used ? measuredChannel(table, recipe, use, used) : channelOf(table, recipe, use);
    const other = byRole.get(use.role);
    if (other) throw roleTwice(channel, other);
    byRole.set(use.role, channel);
  }
  return byRole;
}

/** Header of a column as a reader finds it in the file: `"Thrust (g)"`, or `column 3` where the file has no header. */
export function headerOf(table: LogTable, column: number): string {
  const header = table.shape.columns[column]?.header ?? "";
  return header === "" ? `column ${column + 1}` : header;
}

function channelOf(table: LogTable, recipe: Recipe, use: ColumnUse): Channel {
  const raw = table.columns[use.column];
  if (raw === undefined) throw noSuchColumn(use, table);
  const { factor = 1, offset = 0, relativeUncertainty = 0, resolution } = recipe.corrections[use.role] ?? {};
  const unit = unitFactor(table, recipe, use);
  const writtenStep = resolution ?? stepOf(table, use);
  return {
    role: use.role,
    header: headerOf(table, use.column),
    column: use.column,
    raw,
    scale: factor * unit.factor,
    shift: (unit.offset - offset * factor) * unit.factor,
    resolution: Math.abs(writtenStep * factor * unit.factor),
    writtenStep,
    writtenZero: unit.offset === 0 ? offset : offset - unit.offset / factor,
    relativeUncertainty,
    unit: use.unit,
    calibration: null,
  };
}

/** Step of the readings as they are written; times and commands are set, not read. */
function stepOf(table: LogTable, { column, role }: ColumnUse): number {
  const written = table.resolutions[column] ?? 0;
  if (role === "time" || role === "command") return written;
  const values = table.columns[column]!;
  return remembered(values, { stage: "readingStep", dependsOn: written }, () => readingStep(values, written));
}

/** A channel whose scale, zero and doubt are those of an instrument. */
function measuredChannel(table: LogTable, recipe: Recipe, use: ColumnUse, used: UsedInstrument): Channel {
  const raw = table.columns[use.column];
  if (raw === undefined) throw noSuchColumn(use, table);
  const calibration = tellingFrom(`Instrument ${used.instrument.name}`, () => calibrationOf(used.instrument));
  const { factor, offset, readingFactor, relativeUncertainty } = calibration;
  // Counts and millivolts are no unit of the channel: the numbers are then taken as they are written.
  const unit = readingFactor === null ? { factor: 1, offset: 0 } : unitFactor(table, recipe, use);
  const perWritten = (unit.factor / (readingFactor ?? 1)) * factor;
  const ownStep = ((used.instrument.resolution ?? 0) * (readingFactor ?? 1)) / unit.factor;
  const writtenStep = Math.max(stepOf(table, use), ownStep);
  return {
    role: use.role,
    header: headerOf(table, use.column),
    column: use.column,
    raw,
    scale: perWritten,
    shift: unit.offset * perWritten - offset * factor,
    resolution: Math.abs(writtenStep * perWritten),
    writtenStep,
    writtenZero: (offset * (readingFactor ?? 1)) / unit.factor - unit.offset,
    relativeUncertainty,
    unit: use.unit,
    calibration: appliedCalibration(used, calibration),
  };
}

/** The command has no SI unit: pulse widths, percents and steps are kept as they are written. */
function unitFactor(table: LogTable, recipe: Recipe, use: ColumnUse): { factor: number; offset: number } {
  if (use.role === "command" || use.role === "ignore") return { factor: 1, offset: 0 };
  const where = `${table.fileName}, column ${headerOf(table, use.column)}`;
  const unit = requireUnit(use.unit, ROLE_DIMENSIONS[use.role], where);
  if (!unit.electrical) return { factor: unit.factor, offset: unit.offset ?? 0 };
  if (recipe.polePairs === undefined) {
    throw new InputProblem({
      code: "bench.no-pole-pairs",
      where,
      found: `the column is in ${unit.symbol}, which counts electrical turns`,
      needed: "the number of magnet pole pairs of the motor on the stand",
      mend: "Count the magnets on the rotor and give half of that, for example 7 for 14 magnets",
    });
  }
  return { factor: unit.factor / recipe.polePairs, offset: 0 };
}

const ROLE_WORDS = { thrust: "thrust", rotationRate: "rotation rate" } as const;

function required(byRole: ReadonlyMap<ColumnRole, Channel>, role: keyof typeof ROLE_WORDS, table: LogTable): Channel {
  const channel = byRole.get(role);
  if (channel) return channel;
  const present = table.columns.map((_, column) => headerOf(table, column)).join(", ");
  throw new InputProblem({
    code: "bench.missing-role",
    where: table.fileName,
    found: `no column is marked as ${ROLE_WORDS[role]}; the file has: ${present || "no columns"}`,
    needed: `one column with the ${ROLE_WORDS[role]}`,
    mend:
      role === "thrust"
        ? "Say which column holds the reading of the scale or load cell, and its unit"
        : "Say which column holds the rotation rate, and whether it counts shaft turns (rpm) or electrical turns (erpm)",
  });
}

function noSuchColumn(use: ColumnUse, table: LogTable): InputProblem {
  return new InputProblem({
    code: "bench.no-such-column",
    where: table.fileName,
    found: `the recipe uses column ${use.column + 1} as ${use.role}, and the file has ${table.columns.length}`,
    needed: `a column from 1 to ${table.columns.length}`,
    mend: "Choose the column again",
  });
}

function roleTwice(channel: Channel, other: Channel): InputProblem {
  return new InputProblem({
    code: "bench.role-twice",
    where: `columns ${other.header} and ${channel.header}`,
    found: `both are marked as ${channel.role}`,
    needed: "one column for each role",
    mend: "Mark the one that should not be used as ignore",
  });
}

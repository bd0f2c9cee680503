import type { ElectricalRun } from "../model/electrical.ts";
import type { MotorReading, SharedError } from "../model/motorIdentification.ts";
import type { RunPurpose } from "../model/run.ts";

/** One run with what must be said of it before its plateaus can tell the constants of a motor. */
export interface IdentificationRun {
  readonly name: string;
  readonly purpose: RunPurpose;
  readonly run: ElectricalRun;
  /** Command from which the throttle is full; null: no point counts as full; "all": every point was at full throttle. */
  readonly fullCommand: number | null | "all";
}

export interface RunReadings {
  readonly points: readonly MotorReading[];
  readonly shared: readonly SharedError[];
  readonly idleCommand: number | null;
}

/** Part of the way from idle within which a command is as good as full. */
const AS_GOOD_AS_FULL = 0.005;

/**
 * Points of an identification from the plateaus of runs. What a command means in duty is not known beforehand: it is full,
 * or unknown. Calibrations of one channel that are equally good in all runs are taken as one meter.
 */
export function readingsFrom(runs: readonly IdentificationRun[]): RunReadings {
  const points: MotorReading[] = [];
  const shared: SharedError[] = [];
  for (const one of runs) {
    const first = points.length;
    points.push(...one.run.plateaus.map((plateau, i) => readingOf(one, plateau, i)));
    const own = points.slice(first).map((_, i) => first + i);
    const zero = one.run.currentAtRest;
    if (zero) shared.push({ quantity: "current", relative: 0, offset: zero.standardUncertainty, points: own });
    for (const [quantity, relative] of Object.entries(one.run.calibration)) {
      join(shared, { quantity: quantity as SharedError["quantity"], relative, offset: 0, points: own });
    }
  }
  const idle = new Set(runs.map(({ run }) => run.idleCommand).filter((command) => command !== null));
  return { points, shared, idleCommand: idle.size === 1 ? [...idle][0]! : null };
}

/** Adds to the meter that is already there, where it is the same by all that is known. */
function join(shared: SharedError[], next: SharedError): void {
  const same = shared.findIndex(
    ({ quantity, relative, offset }) => quantity === next.quantity && relative === next.relative && offset === 0,
  );
  const known = shared[same];
  if (known) shared[same] = { ...known, points: [...known.points!, ...next.points!] };
  else shared.push(next);
}

function readingOf(
  { name, purpose, run, fullCommand }: IdentificationRun,
  { command, voltage, current, rotationRate, torque }: ElectricalRun["plateaus"][number],
  index: number,
): MotorReading {
  const loaded = purpose === "propeller";
  const measuredTorque = loaded ? torque : null;
  return {
    load: loaded ? "loaded" : purpose,
    voltage: voltage.value,
    current: current.value,
    rotationRate: rotationRate.value,
    throttle: isFull(command, run.idleCommand, fullCommand) ? null : "unknown",
    torque: measuredTorque?.value ?? null,
    command,
    voltageUncertainty: voltage.standardUncertainty,
    currentUncertainty: current.standardUncertainty,
    rotationRateUncertainty: rotationRate.standardUncertainty,
    ...(measuredTorque && { torqueUncertainty: measuredTorque.standardUncertainty }),
    name: `${name}, plateau ${index + 1}`.slice(0, 120),
  };
}

function isFull(command: number | null, idle: number | null, full: IdentificationRun["fullCommand"]): boolean {
  if (full === "all") return true;
  if (full === null || command === null) return false;
  const from = idle ?? 0;
  return (
    Math.abs(command - from) >= (1 - AS_GOOD_AS_FULL) * Math.abs(full - from) && (command - from) * (full - from) > 0
  );
}

/**
 * Command that is taken as full throttle where nobody said: 100 where commands are in percent, else the highest that
 * occurs in any of `runs`. A guess, to be shown and to be changed.
 */
export function likelyFullCommand(runs: readonly Pick<ElectricalRun, "plateaus" | "commandUnit">[]): number | null {
  const units = new Set(runs.map(({ commandUnit }) => commandUnit).filter((unit) => unit !== null));
  if (units.has("%")) return 100;
  const commands = runs.flatMap(({ plateaus }) =>
    plateaus.flatMap(({ command }) => (command === null ? [] : [command])),
  );
  return commands.length === 0 ? null : Math.max(...commands);
}

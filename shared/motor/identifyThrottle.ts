import type { MotorReading, ThrottleMap } from "../model/motorIdentification.ts";
import { straightLine } from "../numeric/straightLine.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";

export interface ThrottleSource {
  readonly points: readonly MotorReading[];
  /** K_t = 1/K_v, V·s/rad. */ readonly torqueConstant: Uncertain;
  /** R, winding and controller, Ω. */ readonly pathResistance: Uncertain;
  /** Command at which the motor stands; null where none is known. */
  readonly idleCommand: number | null;
}

/** Duties outside this range lie on the flat ends of the map: they say nothing of its slope. */
const SLOPING = { low: 0.02, high: 0.975 };

/**
 * Duty of the controller against its command: a straight line between a dead band and full.
 *
 *   I_m (K_t ω + R I_m) = U I,   δ = (K_t ω + R I_m)/U       for each point, loaded or not
 *   δ = (c − c_0)/(c_1 − c_0)                                  least squares over the sloping part
 *
 * Source   power balance of the average-value model, as `shaftFromElectrical`; the straight map is common practice, no
 *          source: its `linearity` says how well it holds.
 * Assumes  controller losses in proportion to I_m²; one direction of turning.
 * Range    three sloping points at different commands or more; null otherwise.
 */
export function throttleMapOf(source: ThrottleSource): ThrottleMap | null {
  const { points, idleCommand } = source;
  const commanded = points.filter(({ command, current }) => command !== null && current > 0);
  const seen = sameDirection(commanded, idleCommand).map((point) => ({
    command: point.command!,
    throttle: dutyOf(point, source),
  }));
  const marked = seen.map((one) => ({
    ...one,
    used: one.throttle.value > SLOPING.low && one.throttle.value < SLOPING.high,
  }));
  const used = marked.filter((one) => one.used);
  if (new Set(used.map(({ command }) => command)).size < 3) return null;
  const line = straightLine({ x: used.map(({ command }) => command), y: used.map(({ throttle }) => throttle.value) });
  const at = (duty: number) => crossing(line, duty);
  const commandAtZero = at(0);
  const rising = line.slope > 0;
  const commands = marked.map(({ command }) => command);
  return {
    commandAtZero,
    commandAtFull: at(1),
    deadBand: idleCommand === null ? null : (commandAtZero.value - idleCommand) * (rising ? 1 : -1),
    lowestTurning: rising ? Math.min(...commands) : Math.max(...commands),
    linearity: Math.max(
      ...used.map(({ command, throttle }) => Math.abs(throttle.value - line.intercept - line.slope * command)),
    ),
    points: marked,
  };
}

/** The side of idle on which most points lie. */
function sameDirection(points: readonly MotorReading[], idle: number | null): readonly MotorReading[] {
  if (idle === null) return points;
  const ahead = points.filter(({ command }) => command! > idle);
  const astern = points.filter(({ command }) => command! < idle);
  return ahead.length >= astern.length ? ahead : astern;
}

function dutyOf(point: MotorReading, { torqueConstant, pathResistance }: ThrottleSource): Uncertain {
  const { voltage: U, current: I, rotationRate: n } = point;
  const R = Math.max(0, pathResistance.value);
  const E = torqueConstant.value * 2 * Math.PI * n;
  const motorCurrent = (2 * U * I) / (E + Math.sqrt(E * E + 4 * R * U * I));
  const duty = (E + R * motorCurrent) / U;
  // First order: the speed carries nearly all of the voltage, and current enters through the small drop alone.
  const relative = Math.hypot(
    (E / (duty * U)) *
      Math.hypot((point.rotationRateUncertainty ?? 0) / n, torqueConstant.standardUncertainty / torqueConstant.value),
    (point.voltageUncertainty ?? 0) / U,
    (motorCurrent * pathResistance.standardUncertainty) / (duty * U),
  );
  return uncertain(duty, duty * relative);
}

function crossing(line: ReturnType<typeof straightLine>, duty: number): Uncertain {
  const { intercept: a, slope: b } = line;
  const command = (duty - a) / b;
  const variance =
    line.interceptStandardError ** 2 + command ** 2 * line.slopeStandardError ** 2 + 2 * command * line.covariance;
  return uncertain(command, Math.sqrt(Math.max(0, variance)) / Math.abs(b), line.degreesOfFreedom);
}

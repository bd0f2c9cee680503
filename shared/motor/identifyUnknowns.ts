import type { MotorIdentificationRequest, MotorReading } from "../model/motorIdentification.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import type { MotorUnknowns } from "./identifyEquations.ts";

export type UnknownName = keyof MotorUnknowns;

/** What of a motor is to be found, and what is taken as it is. */
export interface UnknownPlan {
  readonly free: readonly UnknownName[];
  readonly start: MotorUnknowns;
  /** Knowledge from elsewhere, in the terms of the unknowns. */
  readonly beliefs: readonly {
    readonly of: UnknownName;
    readonly value: number;
    readonly standardUncertainty: number;
  }[];
  /** Friction can be found or was stated. */
  readonly friction: boolean;
  readonly wet: boolean;
  /** Geometric mean of the wet speeds, rad/s; 1 without any. */
  readonly referenceSpeed: number;
  readonly warnings: readonly Warning[];
}

/** Speeds, or currents over speed, that differ by less than this part are one. */
const SAME_SPEED = 0.05;
/** Current over speed of loaded points must be so many times that of the lightest ones to show the resistance. */
const LOAD_CONTRAST = 1.5;
/** And so many times the current itself. */
const CURRENT_CONTRAST = 2;

const omegaOf = ({ rotationRate }: MotorReading) => 2 * Math.PI * rotationRate;
const dutyOf = ({ throttle }: MotorReading) => (typeof throttle === "number" ? throttle : 1);
const known = ({ throttle }: MotorReading) => throttle !== "unknown";

/**
 * Decides what the points can tell. Throws InputProblem `motor.no-throttle-known` or `motor.resistance-unknown` where
 * the speed constant can not come out; what else can not be told is a warning.
 */
export function planUnknowns(request: MotorIdentificationRequest): UnknownPlan {
  const { points, stated, controllerResistance } = request;
  const electrical = points.filter(known);
  if (electrical.length === 0 && !stated.speedConstant) throw noThrottleKnown(points.length);
  if (!stated.resistance && !showsResistance(electrical)) throw resistanceUnknown();
  const line = startLine(electrical, request);
  const friction = frictionPlan(request, line);
  const wet = wetPlan(request, friction.known);
  const beliefs = [
    ...belief(
      "torqueConstant",
      stated.speedConstant,
      (value) => 1 / value,
      (value, u) => u / value ** 2,
    ),
    ...belief("pathResistance", stated.resistance, (value) => value + controllerResistance),
    ...belief("noLoadCurrent", stated.noLoadCurrent),
    ...belief("noLoadCurrentSlope", stated.noLoadCurrentSlope),
  ];
  const exact = new Set(beliefs.filter((one) => one.standardUncertainty === 0).map((one) => one.of));
  const free = (["torqueConstant", "pathResistance", ...friction.free, ...wet.free] as UnknownName[]).filter(
    (name) => !exact.has(name),
  );
  const start = { ...line, ...friction.start, ...wet.start, torqueConstantOfLoad: line.torqueConstant };
  return {
    free,
    start,
    beliefs: beliefs.filter((one) => free.includes(one.of)),
    friction: friction.known,
    wet: wet.known,
    referenceSpeed: wet.referenceSpeed,
    warnings: [...friction.warnings, ...wet.warnings],
  };
}

type Stated = { readonly value: number; readonly standardUncertainty: number } | undefined;

function belief(
  of: UnknownName,
  stated: Stated,
  to: (value: number) => number = (value) => value,
  doubt: (value: number, u: number) => number = (_, u) => u,
) {
  if (!stated) return [];
  return [{ of, value: to(stated.value), standardUncertainty: doubt(stated.value, stated.standardUncertainty) }];
}

/** Free running draws more for its speed when it is slow, but never much: only a load makes a drop that can be seen. */
function showsResistance(electrical: readonly MotorReading[]): boolean {
  const currents = electrical.map((point) => point.current / dutyOf(point));
  const slants = electrical.map((point, i) => currents[i]! / omegaOf(point));
  const contrast = (values: readonly number[], times: number) => Math.max(...values) > times * Math.min(...values);
  return electrical.length >= 2 && contrast(slants, LOAD_CONTRAST) && contrast(currents, CURRENT_CONTRAST);
}

/** K_t and R from δ U = K_t ω + R I/δ, plain least squares: good enough to start from. */
function startLine(electrical: readonly MotorReading[], { stated, controllerResistance }: MotorIdentificationRequest) {
  const R = stated.resistance ? stated.resistance.value + controllerResistance : null;
  const rows = electrical.map((point) => [
    omegaOf(point),
    point.current / dutyOf(point),
    dutyOf(point) * point.voltage,
  ]);
  const sum = (i: number, j: number) => rows.reduce((total, row) => total + row[i]! * row[j]!, 0);
  if (stated.speedConstant && electrical.length === 0)
    return { torqueConstant: 1 / stated.speedConstant.value, pathResistance: R ?? 0 };
  if (R !== null) return { torqueConstant: (sum(0, 2) - R * sum(0, 1)) / sum(0, 0), pathResistance: R };
  const determinant = sum(0, 0) * sum(1, 1) - sum(0, 1) ** 2;
  return {
    torqueConstant: (sum(0, 2) * sum(1, 1) - sum(1, 2) * sum(0, 1)) / determinant,
    pathResistance: (sum(0, 0) * sum(1, 2) - sum(0, 1) * sum(0, 2)) / determinant,
  };
}

type Line = Pick<MotorUnknowns, "torqueConstant" | "pathResistance">;

/** I_0 = a + b ω from points whose load is known. */
function frictionPlan({ points, stated }: MotorIdentificationRequest, line: Line) {
  const serving = points.filter(({ load, torque }) => load === "noLoadDry" || (load === "loaded" && torque !== null));
  const both = stated.noLoadCurrent !== undefined && stated.noLoadCurrentSlope !== undefined;
  const begin = {
    noLoadCurrent: stated.noLoadCurrent?.value ?? 0,
    noLoadCurrentSlope: stated.noLoadCurrentSlope?.value ?? 0,
  };
  if (serving.length === 0)
    return { known: both, free: both ? FRICTION : [], start: begin, warnings: both ? [] : [frictionUnknown()] };
  const omegas = serving.map(omegaOf);
  const idle = serving.map((point, i) => lossCurrent(point, omegas[i]!, line));
  const oneSpeed = Math.max(...omegas) - Math.min(...omegas) < SAME_SPEED * Math.max(...omegas);
  if (oneSpeed && !both) {
    const b = begin.noLoadCurrentSlope;
    const start = { noLoadCurrent: mean(idle) - b * mean(omegas), noLoadCurrentSlope: b };
    const free = stated.noLoadCurrentSlope ? FRICTION : (["noLoadCurrent"] as const);
    return { known: true, free, start, warnings: stated.noLoadCurrentSlope ? [] : [oneSpeedOnly(mean(omegas))] };
  }
  const b = oneSpeed ? begin.noLoadCurrentSlope : slopeOf(omegas, idle);
  return {
    known: true,
    free: FRICTION,
    start: { noLoadCurrent: mean(idle) - b * mean(omegas), noLoadCurrentSlope: b },
    warnings: [],
  };
}

const FRICTION = ["noLoadCurrent", "noLoadCurrentSlope"] as const;

/** Motor current less that of the measured torque, A; from the power balance where the throttle is not known. */
function lossCurrent(point: MotorReading, omega: number, { torqueConstant, pathResistance }: Line): number {
  const E = torqueConstant * omega;
  const P = point.voltage * point.current;
  const motorCurrent = known(point)
    ? point.current / dutyOf(point)
    : (2 * P) / (E + Math.sqrt(E * E + 4 * Math.max(0, pathResistance) * Math.max(0, P)));
  return motorCurrent - (point.torque ?? 0) / torqueConstant;
}

/** Q_wet = k ω^m needs the dry losses, and wet points at two speeds. */
function wetPlan({ points }: MotorIdentificationRequest, friction: boolean) {
  const wet = points.filter(({ load }) => load === "noLoadWet").map(omegaOf);
  const start = { wetTorque: 1e-3, wetExponent: 1.7 };
  const none = { known: false, free: [] as const, start, referenceSpeed: 1 };
  if (wet.length === 0) return { ...none, warnings: [] };
  if (!friction) return { ...none, warnings: [dryUnknown()] };
  if (Math.max(...wet) < (1 + 4 * SAME_SPEED) * Math.min(...wet)) return { ...none, warnings: [oneWetSpeed()] };
  const referenceSpeed = Math.exp(mean(wet.map(Math.log)));
  return { known: true, free: ["wetTorque", "wetExponent"] as const, start, referenceSpeed, warnings: [] };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function slopeOf(x: readonly number[], y: readonly number[]): number {
  const [mx, my] = [mean(x), mean(y)];
  const below = x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
  return x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0) / below;
}

function noThrottleKnown(count: number): InputProblem {
  return new InputProblem({
    code: "motor.no-throttle-known",
    where: "points",
    found: count === 0 ? "There are no points" : "The throttle of no point is known",
    needed: "points at full throttle, where the motor gets the whole supply voltage, or a stated speed constant",
    mend: "Say which command is full throttle, or run the motor once at full throttle",
  });
}

function resistanceUnknown(): InputProblem {
  return new InputProblem({
    code: "motor.resistance-unknown",
    where: "stated.resistance",
    found:
      "The points at known throttle all draw about the same current for their speed, so resistance and speed constant can not be told apart",
    needed: "the winding resistance with its uncertainty, or a loaded point at full throttle next to one without load",
    mend: "State the resistance, measured between two terminals with four wires, or add a loaded run at full throttle",
  });
}

function frictionUnknown(): Warning {
  return warning({
    code: "motor.friction-unknown",
    where: "points",
    found:
      "Loaded points without a torque cell give the speed constant and the resistance, but not the no-load loss: their current holds both load and loss",
    needed: "a run without propeller, or a torque cell",
    mend: "Run the motor without propeller at several throttles",
  });
}

function oneSpeedOnly(omega: number): Warning {
  return warning({
    code: "motor.one-speed",
    where: "points",
    found: `All points with a known load are at one speed, about ${Math.round((omega * 30) / Math.PI)} rpm: the constant part of the no-load current and its growth with speed can not be told apart, and the growth was taken as 0`,
    needed: "points at two voltages or throttles that differ by a factor of two",
    mend: "Run the motor without propeller at half throttle too",
  });
}

function dryUnknown(): Warning {
  return warning({
    code: "motor.dry-constants-unknown",
    where: "points",
    found:
      "The wet run was left out of the losses: what water adds can only be told once the dry no-load current is known",
    needed: "a run without propeller in air, or stated no-load current and growth",
    mend: "Run the motor dry as well, at the same throttles",
  });
}

function oneWetSpeed(): Warning {
  return warning({
    code: "motor.one-wet-speed",
    where: "points",
    found: "The wet points are all at about one speed, so how the loss in water grows can not be told",
    needed: "wet points at speeds that differ by a factor of two",
    mend: "Run the flooded motor at several throttles",
  });
}

import type { MotorReading, SharedError } from "../model/motorIdentification.ts";

/** Everything the balances of a motor may leave open, SI. */
export interface MotorUnknowns {
  /** K_t = 1/K_v, V·s/rad. */ readonly torqueConstant: number;
  /** R, winding and controller, Ω. */ readonly pathResistance: number;
  /** a, A. */ readonly noLoadCurrent: number;
  /** b, A·s/rad. */ readonly noLoadCurrentSlope: number;
  /** Extra torque of the flooded rotor at the reference speed, N·m. */ readonly wetTorque: number;
  /** m, exponent of that torque on speed. */ readonly wetExponent: number;
  /** K_t that turns torque into current, V·s/rad; the same as `torqueConstant` but in the check of the torque cell. */
  readonly torqueConstantOfLoad: number;
}

export type Equation = "voltage" | "current" | "power";

/** What a point measured, in the order U, I, n, Q. */
export type Measured = readonly [voltage: number, current: number, rotationRate: number, torque: number];

/** A point with the balances that it can serve. */
export interface BalancedPoint {
  readonly index: number;
  readonly reading: MotorReading;
  readonly equations: readonly Equation[];
  readonly measured: Measured;
  /** Standard uncertainties in the order of `measured`. */
  readonly uncertainty: Measured;
}

/** Relative standard uncertainties of hobby meters: only their proportions count where readings come without any. */
const USUAL_PRECISION: Measured = [0.003, 0.01, 0.003, 0.01];

/** Four numbers in the order of `measured`, made one by one. */
const ofEach = (make: (at: 0 | 1 | 2 | 3) => number): Measured => [make(0), make(1), make(2), make(3)];

const MEASURED_ORDER = ["voltage", "current", "rotationRate", "torque"] as const;

/**
 * A reading with the balances that it can serve and the standard uncertainties it is weighed by: those stated, or where
 * none are, those usual for hobby meters, of which only the proportions count. Units as in `MotorReading`.
 */
export function balancedPoint(
  reading: MotorReading,
  index: number,
  open: { readonly friction: boolean; readonly wet: boolean; readonly weighted: boolean },
): BalancedPoint {
  const measured: Measured = [reading.voltage, reading.current, reading.rotationRate, reading.torque ?? 0];
  const stated = [
    reading.voltageUncertainty,
    reading.currentUncertainty,
    reading.rotationRateUncertainty,
    reading.torqueUncertainty,
  ] as const;
  const uncertainty = ofEach((i) => (open.weighted ? (stated[i] ?? 0) : USUAL_PRECISION[i] * Math.abs(measured[i])));
  return { index, reading, equations: equationsOf(reading, open), measured, uncertainty };
}

/** A balance serves where everything in it was measured or is an unknown of the fit. */
function equationsOf(
  { load, torque, throttle }: MotorReading,
  { friction, wet }: { readonly friction: boolean; readonly wet: boolean },
): Equation[] {
  const loadKnown = friction && (load === "noLoadDry" || (load === "noLoadWet" ? wet : torque !== null));
  if (throttle === "unknown") return loadKnown ? ["power"] : [];
  return loadKnown ? ["voltage", "current"] : ["voltage"];
}

/**
 * Measured less model of each balance of a point.
 *
 *   voltage   δ U − K_t ω − R I/δ              V, needs the throttle
 *   current   I/δ − I_m                        A, needs the throttle and the load
 *   power     U I − (K_t ω + R I_m) I_m        W, needs the load alone
 *   with      I_m = a + b ω + (Q + Q_wet (ω/ω_r)^m)/K_t,   I_m = I/δ at throttle δ
 *
 * Source   average-value model of motor and step-down converter: Erickson & Maksimovic, Fundamentals of Power
 *          Electronics, 2nd ed. (2001), ch. 2 and 3; any dc-motor text for the rest.
 */
export function differences(
  { reading, equations }: BalancedPoint,
  [U, I, n, Q]: Measured,
  unknowns: MotorUnknowns,
  referenceSpeed: number,
): number[] {
  const { torqueConstant: Kt, pathResistance: R } = unknowns;
  const omega = 2 * Math.PI * n;
  const delta = typeof reading.throttle === "number" ? reading.throttle : 1;
  const wet = reading.load === "noLoadWet" ? unknowns.wetTorque * (omega / referenceSpeed) ** unknowns.wetExponent : 0;
  const friction = unknowns.noLoadCurrent + unknowns.noLoadCurrentSlope * omega;
  const motorCurrent = friction + wet / Kt + Q / unknowns.torqueConstantOfLoad;
  const by: { readonly [E in Equation]: () => number } = {
    voltage: () => delta * U - Kt * omega - (R * I) / delta,
    current: () => I / delta - motorCurrent,
    power: () => U * I - (Kt * omega + R * motorCurrent) * motorCurrent,
  };
  return equations.map((equation) => by[equation]());
}

/** The measured values with the shared errors taken off, each `sizes[i]` standard uncertainties large. */
export function corrected(point: BalancedPoint, shared: readonly SharedError[], sizes: readonly number[]): Measured {
  const values = [...point.measured] as [number, number, number, number];
  shared.forEach(({ quantity, relative, offset, points }, i) => {
    if (points && !points.includes(point.index)) return;
    const at = MEASURED_ORDER.indexOf(quantity);
    values[at] = values[at]! - sizes[i]! * (relative * point.measured[at]! + offset);
  });
  return values;
}

/**
 * Differences of a point in standard uncertainties, made independent of each other: current enters two balances.
 * Uncertainties of the readings are carried through the balance by its derivatives (effective variance).
 *
 * Source   D. York et al., American Journal of Physics 72 (2004) 367, for the straight line; the general case:
 *          Sprent, Models in Regression (1969).
 */
export function whitened(
  point: BalancedPoint,
  values: Measured,
  unknowns: MotorUnknowns,
  referenceSpeed: number,
): number[] {
  const r = differences(point, values, unknowns, referenceSpeed);
  const carried = carriedBy(point, values, unknowns, referenceSpeed);
  const variance = (i: number, j: number) => carried.reduce((sum, row) => sum + row[i]! * row[j]!, 0);
  const first = Math.sqrt(variance(0, 0));
  if (r.length === 1) return [r[0]! / first];
  const slope = variance(0, 1) / first;
  const rest = Math.sqrt(Math.max(variance(1, 1) - slope * slope, 1e-12 * variance(1, 1)));
  return [r[0]! / first, (r[1]! - (slope * r[0]!) / first) / rest];
}

/** Standard uncertainty of each difference by itself. */
export function ownUncertainty(
  point: BalancedPoint,
  values: Measured,
  unknowns: MotorUnknowns,
  referenceSpeed: number,
): number[] {
  const carried = carriedBy(point, values, unknowns, referenceSpeed);
  return point.equations.map((_, i) => Math.hypot(...carried.map((row) => row[i]!)));
}

/** Change of each difference by one standard uncertainty of each reading. */
function carriedBy(point: BalancedPoint, values: Measured, unknowns: MotorUnknowns, referenceSpeed: number) {
  return point.uncertainty.map((u, at) => {
    // One part in a million of the reading: the balances are smooth and nearly straight.
    const h = 1e-6 * (Math.abs(values[at]!) || u || 1);
    const moved = (by: number) => ofEach((i) => (i === at ? values[i] + by : values[i]));
    const above = differences(point, moved(h), unknowns, referenceSpeed);
    const below = differences(point, moved(-h), unknowns, referenceSpeed);
    return above.map((one, i) => ((one - below[i]!) / (2 * h)) * u);
  });
}

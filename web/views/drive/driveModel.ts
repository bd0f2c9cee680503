import type { DriveRequest, OperatingPoint } from "../../../shared/model/drive.ts";
import type { Controller } from "../../../shared/model/parts/controller.ts";
import type { Motor } from "../../../shared/model/parts/motor.ts";
import type { Pack } from "../../../shared/model/parts/pack.ts";
import { formatNumber, formatQuantity, formatUncertain } from "../../../shared/quantity/format.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { KILOGRAM_FORCE } from "../bench/shownUnits.ts";
import { POINT_QUANTITIES, pointText } from "./pointText.ts";

/** What drives the propeller, as chosen from the parts. */
export interface Chosen {
  readonly motor: Motor;
  /** Null: none chosen, taken without resistance and without limit. */
  readonly controller: Controller | null;
  readonly pack: Pack;
  readonly thrusters: number;
  /** Constant power of the rest of the vehicle, W. */
  readonly hotelPower: number;
  /** Density of the working water, kg/m³. */
  readonly density: number;
}

/** Where a torque coefficient comes from. */
export type TorqueSource = "torque" | "motorConstants" | "statedMerit" | "typed";

/** A propeller as the drive sees it: one variant of the bench, or numbers that were typed. */
export interface DrivenPropeller {
  readonly name: string;
  readonly style: number;
  readonly diameter: Uncertain;
  readonly thrustCoefficient: Uncertain;
  readonly torqueCoefficient: Uncertain;
  readonly torqueSource: TorqueSource;
  /** Mountings behind the coefficients; 0 for typed ones. */
  readonly runs: number;
}

/** One propeller on the chosen drive: its points over the whole throttle, or the sentence why there are none. */
export interface Driven {
  readonly propeller: DrivenPropeller;
  readonly sweep: readonly OperatingPoint[];
  readonly point: OperatingPoint | null;
  readonly problem: string;
}

/** The whole question to the operating-point model, SI. */
export function driveRequest(chosen: Chosen, propeller: DrivenPropeller, throttle: number): DriveRequest {
  const { motor, controller, pack, thrusters, hotelPower, density } = chosen;
  const { diameter, thrustCoefficient, torqueCoefficient } = propeller;
  const doubt = motorDoubt(motor);
  return {
    speedConstant: motor.speedConstant,
    motorResistance: motor.resistance,
    noLoadCurrent: motor.noLoadCurrent,
    noLoadCurrentSlope: motor.noLoadCurrentSlope,
    controllerResistance: controller?.resistance ?? 0,
    supplyVoltage: pack.openCircuitVoltage,
    supplyResistance: pack.resistance,
    hotelPower,
    thrusters,
    diameter: diameter.value,
    thrustCoefficient: thrustCoefficient.value,
    torqueCoefficient: torqueCoefficient.value,
    density,
    throttle,
    limits: limitsOf(chosen),
    correlations: doubt.correlations,
    uncertainties: {
      ...doubt.uncertainties,
      diameter: diameter.standardUncertainty,
      thrustCoefficient: thrustCoefficient.standardUncertainty,
      torqueCoefficient: torqueCoefficient.standardUncertainty,
    },
  };
}

/** "At 60 % throttle each thruster pulls 21.3 ± 0.6 N (sanded) or ... " */
export function driveAnswer(driven: readonly Driven[], throttle: number, thrusters: number): string {
  const told = driven.filter((one): one is Driven & { point: OperatingPoint } => one.point !== null);
  if (told.length === 0)
    return (
      driven[0]?.problem ||
      "Choose a motor and a pack, and a variant with a torque coefficient, to see what they will pull."
    );
  const at = `At ${Math.round(throttle * 100)}\u202f% throttle`;
  const each = thrusters > 1 ? `each of ${thrusters} thrusters` : "the thruster";
  // More than two numbers are a table, not an answer: the ends of the range stand for the rest.
  const byThrust = [...told].sort((a, b) => a.point.thrust - b.point.thrust);
  const ends = told.length > 2 ? [byThrust[0]!, byThrust.at(-1)!] : told;
  const [from, to] = ends.map(({ propeller, point }, index) => {
    const kilograms = formatQuantity(point.thrust, KILOGRAM_FORCE, 2);
    const drawing = `${pointText(point, "supplyCurrent")}${index === 0 ? " from the pack" : ""}`;
    return `${pointText(point, "thrust")} (${kilograms}) with “${propeller.name}”, drawing ${drawing}`;
  });
  if (to === undefined) return `${at} ${each} pulls ${from}.`;
  return told.length > 2 ? `${at} ${each} pulls from ${from}, to ${to}.` : `${at} ${each} pulls ${from}; ${to}.`;
}

export interface PointRow {
  readonly name: string;
  readonly symbol: string;
  readonly cells: readonly string[];
}

/** The table of all propellers at this throttle, one column a propeller. */
export function pointRows(driven: readonly Driven[]): PointRow[] {
  const points = driven.map(({ point }) => point);
  const rows = POINT_QUANTITIES.map(({ key, name, symbol }) => ({
    name,
    symbol,
    cells: points.map((point) => (point === null ? "–" : pointText(point, key))),
  }));
  const merit = points.map((point) => (point === null ? "–" : formatQuantity(point.efficiencies.propeller, RATIO, 3)));
  const kilograms = points.map((point) => (point === null ? "–" : weightText(point)));
  return [
    rows[0]!,
    { name: "Bollard thrust as a weight", symbol: "", cells: kilograms },
    ...rows.slice(1),
    { name: "Static merit", symbol: "FM", cells: merit },
  ];
}

/** Where the torque coefficient of a propeller comes from, ready to show. */
export function torqueSourceText({ torqueSource, name }: DrivenPropeller, staticMerit: number): string {
  const sentences: { readonly [S in TorqueSource]: string } = {
    torque: `${name}: torque coefficient from the measured torque.`,
    motorConstants: `${name}: torque coefficient from voltage, current and the constants of the motor on the stand.`,
    statedMerit: `${name}: no torque was measured; its torque coefficient is worked out from the stated static merit of ${staticMerit.toFixed(2)}, taken as exact. Currents and powers rest on it.`,
    typed: `${name}: coefficients as typed.`,
  };
  return sentences[torqueSource];
}

/** The doubt of a motor's constants, in the names of the request. */
function motorDoubt({ uncertainties = {} }: Motor): Pick<DriveRequest, "uncertainties" | "correlations"> {
  const { resistance, correlations = [], ...others } = uncertainties;
  const named = (constant: (typeof correlations)[number]["of"]) =>
    constant === "resistance" ? "motorResistance" : constant;
  return {
    uncertainties: { ...others, ...(resistance !== undefined && { motorResistance: resistance }) },
    correlations: correlations.map(({ of, and, coefficient }) => ({ of: named(of), and: named(and), coefficient })),
  };
}

function limitsOf({ motor, controller, pack }: Chosen): DriveRequest["limits"] {
  return {
    ...(motor.currentLimit !== undefined && { motorCurrent: motor.currentLimit }),
    ...(motor.powerLimit !== undefined && { motorPower: motor.powerLimit }),
    ...(controller?.currentLimit !== undefined && { controllerCurrent: controller.currentLimit }),
    ...(pack.currentLimit !== undefined && { supplyCurrent: pack.currentLimit }),
  };
}

/** The thrust as the weight it would lift. */
function weightText({ thrust, uncertainties }: OperatingPoint): string {
  const doubt = uncertainties?.thrust;
  return doubt === undefined || doubt.standardUncertainty === 0
    ? formatQuantity(thrust, KILOGRAM_FORCE)
    : formatUncertain(doubt, KILOGRAM_FORCE);
}

/** A number without doubt of its own. */
export function exactly(value: number): Uncertain {
  return { value, standardUncertainty: 0, interval95: [value, value] };
}

const RATIO = { symbol: "", factor: 1 };

/** Which limit of the drive comes first as the throttle opens, where, and how this throttle stands to it. */
export function governingText({ propeller, point, problem }: Driven): string {
  if (point === null) return `${propeller.name}: ${problem}`;
  const reached = point.limits
    .filter((limit) => limit.reachedAtThrottle !== null)
    .sort((a, b) => a.reachedAtThrottle! - b.reachedAtThrottle!);
  const [first] = reached;
  if (first === undefined)
    return `${propeller.name}: no stated limit is reached up to full throttle; the pack's voltage is what bounds it.`;
  const limit = `${formatNumber(first.limit)}\u202f${first.unit}`;
  const actual = `${formatNumber(first.actual)}\u202f${first.unit}`;
  const at = `${Math.round(100 * first.reachedAtThrottle!)}\u202f% throttle`;
  return `${propeller.name}: the ${first.name} governs; its limit of ${limit} is reached at ${at}. Now ${actual}.`;
}

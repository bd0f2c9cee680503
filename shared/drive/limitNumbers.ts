import { type DriveRequest, LIMIT_NAMES, type LimitState } from "../model/drive.ts";
import type { Chain } from "./chain.ts";
import type { Goal } from "./positionSearch.ts";

export type LimitName = LimitState["name"];

/** Place of a limit in LIMIT_NAMES, as `SteadyState.limit` tells it. */
export const limitIndex = (name: LimitName): number => LIMIT_NAMES.indexOf(name);

/** Limits of the parts by the names of a request, flat; Infinity for none, 0 for no least voltage. */
export interface LimitInputs {
  readonly motorCurrent: number;
  readonly motorPower: number;
  /** K. */ readonly windingTemperature: number;
  readonly controllerCurrent: number;
  readonly supplyCurrent: number;
  readonly fuseCurrent: number;
  readonly tetherCurrent: number;
  /** Least voltage under load, V. */ readonly leastVoltage: number;
  /** Propeller rotation rates, rev/s. */ readonly cavitation: number;
  readonly ventilation: number;
}

/** The limits of one chain, those of one quantity drawn together: least value, and whose it is. Filled again. */
export interface LimitNumbers {
  /** A. */ motorCurrent: number;
  motorCurrentLimit: number;
  /** W. */ motorPower: number;
  /** K. */ windingTemperature: number;
  /** A, of all thrusters and the hotel load; least voltage and greatest power of the supply are such currents too. */
  supplyCurrent: number;
  supplyCurrentLimit: number;
  /** ω of the motor, rad/s. */ angularVelocity: number;
  angularVelocityLimit: number;
}

/** Limits that limit nothing, to be filled. */
export function emptyLimits(): LimitNumbers {
  const none = Number.POSITIVE_INFINITY;
  return {
    motorCurrent: none,
    motorCurrentLimit: -1,
    motorPower: none,
    windingTemperature: none,
    supplyCurrent: none,
    supplyCurrentLimit: -1,
    angularVelocity: none,
    angularVelocityLimit: -1,
  };
}

const INDEX = {
  motorCurrent: limitIndex("motor current"),
  controllerCurrent: limitIndex("controller current"),
  supplyCurrent: limitIndex("supply current"),
  fuseCurrent: limitIndex("fuse current"),
  tetherCurrent: limitIndex("tether current"),
  leastVoltage: limitIndex("least supply voltage"),
  supplyVoltage: limitIndex("supply voltage"),
  cavitation: limitIndex("cavitation"),
  ventilation: limitIndex("ventilation"),
} as const;

/** Fills and returns `limits` for the inputs on `chain`. No allocation. */
export function fillLimits(limits: LimitNumbers, inputs: LimitInputs, chain: Chain): LimitNumbers {
  const controllerFirst = inputs.controllerCurrent < inputs.motorCurrent;
  limits.motorCurrent = controllerFirst ? inputs.controllerCurrent : inputs.motorCurrent;
  limits.motorCurrentLimit = controllerFirst ? INDEX.controllerCurrent : INDEX.motorCurrent;
  limits.motorPower = inputs.motorPower;
  limits.windingTemperature = chain.thermalResistance > 0 ? inputs.windingTemperature : Number.POSITIVE_INFINITY;
  const airFirst = inputs.ventilation < inputs.cavitation;
  const rate = airFirst ? inputs.ventilation : inputs.cavitation;
  limits.angularVelocity = 2 * Math.PI * chain.gearRatio * rate;
  limits.angularVelocityLimit = airFirst ? INDEX.ventilation : INDEX.cavitation;
  fillSupplyLimit(limits, inputs, chain);
  return limits;
}

function fillSupplyLimit(limits: LimitNumbers, inputs: LimitInputs, chain: Chain): void {
  limits.supplyCurrent = greatestPowerCurrent(chain);
  limits.supplyCurrentLimit = INDEX.supplyVoltage;
  lower(limits, inputs.supplyCurrent, INDEX.supplyCurrent);
  lower(limits, inputs.fuseCurrent, INDEX.fuseCurrent);
  lower(limits, inputs.tetherCurrent, INDEX.tetherCurrent);
  lower(limits, currentAtVoltage(chain, inputs.leastVoltage), INDEX.leastVoltage);
}

function lower(limits: LimitNumbers, current: number, index: number): void {
  if (!(current < limits.supplyCurrent)) return;
  limits.supplyCurrent = current;
  limits.supplyCurrentLimit = index;
}

/** Current, A, at the greatest power of the supply, U_oc/(2 R_s); infinite without resistance. */
function greatestPowerCurrent({ supplyVoltage, supplyResistance }: Chain): number {
  return supplyVoltage / (2 * supplyResistance);
}

/** Current, A, at which the supply is down to `voltage` (V): never without resistance, 0 where it starts below. */
export function currentAtVoltage({ supplyVoltage, supplyResistance }: Chain, voltage: number): number {
  const room = supplyVoltage - voltage;
  if (room < 0) return 0;
  return supplyResistance === 0 ? Number.POSITIVE_INFINITY : room / supplyResistance;
}

/** How the limits of a request are called, measured and searched for. */
export interface LimitRow {
  readonly name: LimitName;
  readonly unit: string;
  /** Stated limit, SI; undefined where none was. */
  readonly limit: (request: DriveRequest) => number | undefined;
  /** What a search along the path of states aims at; "rate" needs none. */
  readonly goal: Goal | "rate" | "voltage";
}

export const LIMIT_ROWS: readonly LimitRow[] = [
  { name: "motor current", unit: "A", goal: "motorCurrent", limit: ({ limits }) => limits.motorCurrent },
  { name: "motor power", unit: "W", goal: "motorPower", limit: ({ limits }) => limits.motorPower },
  { name: "winding temperature", unit: "K", goal: "windingTemperature", limit: ({ heat }) => heat?.temperatureLimit },
  { name: "controller current", unit: "A", goal: "motorCurrent", limit: ({ limits }) => limits.controllerCurrent },
  { name: "supply current", unit: "A", goal: "supplyCurrent", limit: ({ limits }) => limits.supplyCurrent },
  { name: "fuse current", unit: "A", goal: "supplyCurrent", limit: ({ limits }) => limits.fuseCurrent },
  { name: "tether current", unit: "A", goal: "supplyCurrent", limit: ({ limits }) => limits.tetherCurrent },
  { name: "least supply voltage", unit: "V", goal: "voltage", limit: ({ limits }) => limits.supplyVoltage },
  {
    name: "supply voltage",
    unit: "V",
    goal: "voltage",
    // A supply without resistance has no greatest power.
    limit: ({ supplyVoltage, supplyResistance }) => (supplyResistance > 0 ? supplyVoltage / 2 : undefined),
  },
  { name: "cavitation", unit: "rev/s", goal: "rate", limit: ({ limits }) => limits.cavitation },
  { name: "ventilation", unit: "rev/s", goal: "rate", limit: ({ limits }) => limits.ventilation },
];

/** Limits of a request, flat. */
export function limitInputsOf({ limits, heat }: DriveRequest): LimitInputs {
  const none = Number.POSITIVE_INFINITY;
  return {
    motorCurrent: limits.motorCurrent ?? none,
    motorPower: limits.motorPower ?? none,
    windingTemperature: heat?.temperatureLimit ?? none,
    controllerCurrent: limits.controllerCurrent ?? none,
    supplyCurrent: limits.supplyCurrent ?? none,
    fuseCurrent: limits.fuseCurrent ?? none,
    tetherCurrent: limits.tetherCurrent ?? none,
    leastVoltage: limits.supplyVoltage ?? 0,
    cavitation: limits.cavitation ?? none,
    ventilation: limits.ventilation ?? none,
  };
}

import type { DriveRequest } from "../../shared/model/drive.ts";
import type { Dimension } from "../../shared/quantity/units.data.ts";
import type { Options } from "./options.ts";

type UncertainInput = keyof DriveRequest["uncertainties"];

/** An option that becomes a number of the drive train. */
export interface TrainOption {
  /** Field of the drive train, by the names on the way to it. */
  readonly path: string;
  readonly dimension: Dimension | "count";
  readonly text: string;
  readonly needed?: true;
  /** Where a standard uncertainty goes: a field of the drive train, or an input of the operating point. */
  readonly doubt?: string;
  readonly doubtInput?: UncertainInput;
}

const MOTOR: Record<string, TrainOption> = {
  kv: {
    path: "motor/speedConstant",
    dimension: "speedConstant",
    text: "motor speed constant, e.g. 900rpm/V",
    needed: true,
    doubt: "motor/uncertainties/speedConstant",
  },
  resistance: {
    path: "motor/resistance",
    dimension: "resistance",
    text: "motor winding resistance between two terminals",
    needed: true,
    doubt: "motor/uncertainties/resistance",
  },
  "no-load-current": {
    path: "motor/noLoadCurrent",
    dimension: "current",
    text: "motor no-load current",
    needed: true,
    doubt: "motor/uncertainties/noLoadCurrent",
  },
  "thermal-resistance": {
    path: "motor/thermalResistance",
    dimension: "thermalResistance",
    text: "from winding to water, e.g. 1.5K/W: the winding warms and its resistance with it",
    doubt: "motor/uncertainties/thermalResistance",
  },
  "resistance-temperature": {
    path: "motor/resistanceTemperature",
    dimension: "temperature",
    text: "winding temperature that --resistance belongs to (20 °C if absent)",
  },
  "temperature-limit": {
    path: "motor/temperatureLimit",
    dimension: "temperature",
    text: "greatest winding temperature",
  },
  "wet-torque": {
    path: "motor/wetTorque/coefficient",
    dimension: "number",
    text: "k in Q = k ω^m of a flooded rotor, SI",
    doubt: "motor/wetTorque/coefficientUncertainty",
  },
  "wet-exponent": { path: "motor/wetTorque/exponent", dimension: "number", text: "with --wet-torque: m, 1 to 3" },
  "gear-ratio": { path: "gear/ratio", dimension: "number", text: "turns of the motor for one of the propeller" },
  "gear-efficiency": {
    path: "gear/efficiency",
    dimension: "fraction",
    text: "with --gear-ratio: share of the power that the gear lets through",
    doubtInput: "gearEfficiency",
  },
};

const CONTROLLER: Record<string, TrainOption> = {
  "controller-resistance": {
    path: "controller/resistance",
    dimension: "resistance",
    text: "controller resistance",
    doubtInput: "controllerResistance",
  },
  "freewheel-voltage": {
    path: "controller/freewheelVoltage",
    dimension: "voltage",
    text: "voltage lost while the current freewheels at part throttle",
    doubtInput: "freewheelVoltage",
  },
  "switching-loss": {
    path: "controller/switchingLoss",
    dimension: "fraction",
    text: "loss at part throttle, of supply voltage times motor current",
    doubtInput: "switchingLoss",
  },
  "standby-power": {
    path: "controller/standbyPower",
    dimension: "power",
    text: "power the controller draws by itself",
    doubtInput: "standbyPower",
  },
};

const SUPPLY: Record<string, TrainOption> = {
  supply: {
    path: "supply/pack/openCircuitVoltage",
    dimension: "voltage",
    text: "open-circuit voltage of the supply",
    needed: true,
    doubt: "supply/pack/uncertainties/openCircuitVoltage",
  },
  "supply-resistance": {
    path: "supply/pack/resistance",
    dimension: "resistance",
    text: "resistance of supply and leads",
    doubt: "supply/pack/uncertainties/resistance",
  },
  cells: {
    path: "supply/pack/cells/series",
    dimension: "count",
    text: "cells in series: the voltage then follows --charge, the resistance the cold",
  },
  "stated-charge": {
    path: "supply/pack/cells/statedCharge",
    dimension: "fraction",
    text: "with --cells: charge at which --supply was stated (50 % if absent)",
  },
  charge: { path: "supply/charge", dimension: "fraction", text: "with --cells: share of the charge that is left" },
  "supply-temperature": {
    path: "supply/temperature",
    dimension: "temperature",
    text: "temperature of pack and tether (20 °C if absent)",
  },
  "tether-length": {
    path: "supply/tether/conductor/length",
    dimension: "length",
    text: "length of a tether that carries the power, one way",
  },
  "tether-area": {
    path: "supply/tether/conductor/size/area",
    dimension: "area",
    text: "copper section of one of its conductors, or give --tether-gauge",
  },
  "tether-gauge": {
    path: "supply/tether/conductor/size/gauge",
    dimension: "count",
    text: "the same as AWG number",
  },
  "tether-pairs": {
    path: "supply/tether/conductor/pairs",
    dimension: "count",
    text: "its pairs of conductors in parallel (1 if absent)",
  },
  "hotel-power": {
    path: "hotelPower",
    dimension: "power",
    text: "power the rest of the vehicle draws all the time",
    doubt: "hotelPowerUncertainty",
  },
};

const PROPELLER: Record<string, TrainOption> = {
  diameter: {
    path: "propeller/diameter/value",
    dimension: "length",
    text: "propeller diameter",
    needed: true,
    doubt: "propeller/diameter/standardUncertainty",
  },
  "thrust-coefficient": {
    path: "propeller/ahead/thrustCoefficient/value",
    dimension: "number",
    text: "K_T = T/(rho n² D⁴)",
    needed: true,
    doubt: "propeller/ahead/thrustCoefficient/standardUncertainty",
  },
  "torque-coefficient": {
    path: "propeller/ahead/torqueCoefficient/value",
    dimension: "number",
    text: "K_Q = Q/(rho n² D⁵)",
    needed: true,
    doubt: "propeller/ahead/torqueCoefficient/standardUncertainty",
  },
  "astern-thrust-coefficient": {
    path: "propeller/astern/thrustCoefficient/value",
    dimension: "number",
    text: "K_T turning the other way, positive",
    doubt: "propeller/astern/thrustCoefficient/standardUncertainty",
  },
  "astern-torque-coefficient": {
    path: "propeller/astern/torqueCoefficient/value",
    dimension: "number",
    text: "K_Q turning the other way, positive",
    doubt: "propeller/astern/torqueCoefficient/standardUncertainty",
  },
  "area-ratio": { path: "propeller/areaRatio", dimension: "number", text: "expanded blade area ratio, for cavitation" },
  "pitch-ratio": {
    path: "propeller/pitchRatio",
    dimension: "number",
    text: "pitch ratio, for cavitation and --series",
  },
  depth: { path: "depth", dimension: "length", text: "depth of the shaft, for cavitation and air drawn in" },
};

const LIMITS: Record<string, TrainOption> = {
  "motor-current-limit": { path: "motor/currentLimit", dimension: "current", text: "continuous motor current" },
  "motor-power-limit": {
    path: "motor/powerLimit",
    dimension: "power",
    text: "continuous electrical power of the motor",
  },
  "controller-current-limit": {
    path: "controller/currentLimit",
    dimension: "current",
    text: "continuous controller current",
  },
  "supply-current-limit": {
    path: "supply/pack/currentLimit",
    dimension: "current",
    text: "continuous current of the supply",
  },
  "fuse-current": { path: "supply/pack/fuseCurrent", dimension: "current", text: "rating of the fuse" },
  "tether-current-limit": {
    path: "supply/tether/currentLimit",
    dimension: "current",
    text: "continuous, of the tether",
  },
  "least-voltage": { path: "supply/pack/leastVoltage", dimension: "voltage", text: "least supply voltage under load" },
};

/** Options that become numbers of the drive train. */
export const TRAIN_OPTIONS: Readonly<Record<string, TrainOption>> = {
  ...MOTOR,
  ...CONTROLLER,
  ...SUPPLY,
  ...PROPELLER,
  ...LIMITS,
};

/** The same as --help shows them. */
export const TRAIN_USAGE: Options = Object.fromEntries(
  Object.entries(TRAIN_OPTIONS).map(([name, { dimension, text }]) => [
    name,
    { value: dimension === "count" ? "COUNT" : dimension === "number" ? "NUMBER" : "QUANTITY", text },
  ]),
);

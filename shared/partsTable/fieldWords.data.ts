/** What people write over a column, and what its numbers usually are. */
export interface FieldWords {
  /** Head of the column in a table that this program writes; without its unit. */
  readonly head: string;
  /** Other heads, in lower case with single blanks. */
  readonly words: readonly string[];
  /** Units that a column without one may be in, the usual first; absent: the usual one of the value only. */
  readonly units?: readonly string[];
  /** Usual size of the value, SI: helps to tell units apart, refuses nothing. Common practice, no source. */
  readonly usual?: readonly [number, number];
}

const LENGTHS = ["mm", "m", "in"];
const RESISTANCES = ["mΩ", "Ω"];
const CURRENTS = ["A", "mA"];
const MASSES = ["g", "kg"];
const CHARGES = ["mAh", "Ah", "C"];

/** By path of the value; "kind:path" where the words or the size belong to one kind of part. */
export const FIELD_WORDS: Readonly<Record<string, FieldWords>> = {
  name: {
    head: "name",
    words: [
      ...["model", "designation", "part", "part name", "item", "label"],
      ...["motor", "controller", "esc", "pack", "battery", "propeller", "tether", "cable", "gear"],
    ],
  },
  note: { head: "note", words: ["notes", "remark", "remarks", "comment", "comments"] },
  mass: { head: "mass", words: ["m", "weight", "mass of one"], units: MASSES, usual: [0.005, 10] },
  price: { head: "price", words: ["cost", "unit price", "price each"] },

  diameter: {
    head: "diameter",
    words: ["d", "dia", "tip diameter", "prop diameter"],
    units: LENGTHS,
    usual: [0.03, 0.5],
  },
  diameterUncertainty: {
    head: "uncertainty of diameter",
    words: ["u(d)", "diameter uncertainty", "diameter u"],
    units: ["mm", "m"],
    usual: [1e-5, 1e-3],
  },
  bladeCount: { head: "blades", words: ["blade count", "number of blades", "z"] },
  pitchRatio: { head: "pitch ratio", words: ["p/d", "pitch ratio at 0.7 r", "pitch to diameter"] },
  chordAt07: { head: "chord at 0.7 R", words: ["chord", "c 0.7", "blade chord"], units: LENGTHS, usual: [0.003, 0.15] },
  finish: { head: "finish", words: ["surface", "surface finish"] },
  material: { head: "material", words: ["made of"] },
  layerHeight: { head: "layer height", words: ["layer"], units: ["mm", "µm"], usual: [5e-5, 5e-4] },
  roughness: { head: "roughness", words: ["roughness height", "k p"], units: ["µm", "mm"], usual: [1e-6, 3e-4] },
  geometry: { head: "blade shape", words: ["geometry"] },
  nozzle: { head: "nozzle", words: ["ducted", "duct", "kort nozzle"] },

  speedConstant: {
    head: "speed constant",
    words: ["kv", "k v", "kv rating", "kv value", "velocity constant", "motor constant"],
    units: ["rpm/V", "rad/(V·s)"],
    usual: [10, 420],
  },
  "motors:resistance": {
    head: "winding resistance",
    words: [
      "r",
      "rm",
      "r m",
      "ri",
      "resistance",
      "internal resistance",
      "winding",
      "phase resistance",
      "terminal resistance",
    ],
    units: RESISTANCES,
    usual: [0.005, 5],
  },
  noLoadCurrent: {
    head: "no-load current",
    words: ["i0", "i 0", "io", "idle current", "no load current", "free current"],
    units: CURRENTS,
    usual: [0.05, 5],
  },
  noLoadCurrentSlope: { head: "growth of no-load current", words: ["no-load current slope", "i0 slope"] },
  polePairs: { head: "pole pairs", words: ["magnet pole pairs", "p"] },
  currentLimit: {
    head: "continuous current",
    words: ["i max", "imax", "max current", "maximum current", "current limit", "rated current", "current", "amps"],
    units: CURRENTS,
    usual: [1, 500],
  },
  powerLimit: {
    head: "continuous power",
    words: ["p max", "pmax", "max power", "maximum power", "power limit", "rated power", "power", "watts"],
    units: ["W", "kW"],
    usual: [10, 20_000],
  },
  voltageLimit: {
    head: "greatest supply voltage",
    words: ["u max", "umax", "v max", "vmax", "max voltage", "maximum voltage", "voltage limit"],
    usual: [5, 100],
  },
  resistanceTemperature: {
    head: "winding temperature of that resistance",
    words: ["resistance temperature", "t 0"],
    units: ["°C", "K"],
    usual: [283, 318],
  },
  thermalResistance: { head: "thermal resistance", words: ["r th", "rth"], usual: [0.1, 20] },
  temperatureLimit: {
    head: "greatest winding temperature",
    words: ["t max", "max temperature", "temperature limit", "max winding temperature"],
    units: ["°C", "K"],
    usual: [343, 473],
  },
  "wetTorque.coefficient": { head: "wet torque coefficient", words: ["wet torque k"] },
  "wetTorque.exponent": { head: "wet torque exponent", words: ["wet torque m"] },
  "wetTorque.coefficientUncertainty": { head: "uncertainty of wet torque coefficient", words: [] },
  "uncertainties.speedConstant": {
    head: "uncertainty of speed constant",
    words: ["u(kv)"],
    units: ["rpm/V", "rad/(V·s)"],
  },
  "uncertainties.resistance": { head: "uncertainty of resistance", words: ["u(r)"], units: RESISTANCES },
  "uncertainties.noLoadCurrent": { head: "uncertainty of no-load current", words: ["u(i0)"], units: CURRENTS },
  "uncertainties.noLoadCurrentSlope": { head: "uncertainty of growth of no-load current", words: [] },
  "uncertainties.thermalResistance": { head: "uncertainty of thermal resistance", words: [] },
  "uncertainties.correlations": { head: "correlations of constants", words: [] },

  "controllers:resistance": {
    head: "resistance",
    words: ["r", "r c", "on resistance", "internal resistance"],
    units: RESISTANCES,
    usual: [5e-4, 0.1],
  },
  freewheelVoltage: { head: "freewheel voltage", words: ["u f", "diode voltage"], usual: [0.01, 2] },
  switchingLoss: { head: "switching loss", words: ["kappa"], units: ["1", "%"] },
  standbyPower: { head: "standby power", words: ["p 0", "idle power"], units: ["W", "mW"], usual: [0.05, 10] },
  "command.stop": { head: "stop pulse", words: ["stop", "neutral", "neutral pulse"] },
  "command.fullForward": { head: "full ahead pulse", words: ["full forward", "max pulse"] },
  "command.fullReverse": { head: "full astern pulse", words: ["full reverse", "min pulse"] },
  "command.deadBand": { head: "dead band", words: ["deadband"] },

  openCircuitVoltage: {
    head: "open-circuit voltage",
    words: ["u oc", "uoc", "voc", "voltage", "nominal voltage", "u", "v", "volts"],
    usual: [3, 100],
  },
  "packs:resistance": {
    head: "resistance",
    words: ["r", "r s", "ri", "ir", "internal resistance"],
    units: RESISTANCES,
    usual: [0.002, 1],
  },
  charge: {
    head: "charge",
    words: ["q", "capacity", "rated charge", "rated capacity"],
    units: CHARGES,
    usual: [3600, 360_000],
  },
  fuseCurrent: { head: "fuse", words: ["fuse rating", "fuse current"], usual: [1, 300] },
  leastVoltage: {
    head: "least voltage under load",
    words: ["cut-off voltage", "cutoff voltage", "min voltage", "u min"],
  },
  "cells.series": { head: "cells in series", words: ["s", "series", "cells", "series cells"] },
  "cells.parallel": { head: "cells in parallel", words: ["parallel", "parallel cells"] },
  "cells.statedCharge": {
    head: "charge of that voltage",
    words: ["stated charge", "state of charge"],
    units: ["1", "%"],
  },
  "cells.curve": { head: "cell voltage against charge", words: ["curve", "discharge curve"] },
  "uncertainties.openCircuitVoltage": { head: "uncertainty of open-circuit voltage", words: [] },
  "uncertainties.charge": { head: "uncertainty of charge", words: [], units: CHARGES },

  "lead.length": { head: "lead length", words: ["lead", "wire length"], units: ["m", "mm"], usual: [0.1, 10] },
  "lead.size.area": { head: "lead copper section", words: ["wire section"] },
  "lead.size.gauge": { head: "lead AWG", words: ["wire gauge", "awg"] },
  "lead.size.resistancePerLength": { head: "lead resistance over length", words: [] },
  "lead.pairs": { head: "lead pairs", words: [] },

  "tethers:diameter": {
    head: "outer diameter",
    words: ["diameter", "d", "dia", "od"],
    units: LENGTHS,
    usual: [0.002, 0.03],
  },
  "conductor.length": {
    head: "length",
    words: ["tether length", "cable length", "l"],
    units: ["m", "mm"],
    usual: [10, 500],
  },
  "conductor.size.area": { head: "copper section", words: ["section", "conductor section"] },
  "conductor.size.gauge": { head: "AWG", words: ["gauge", "wire gauge"] },
  "conductor.size.resistancePerLength": { head: "resistance over length", words: ["conductor resistance"] },
  "conductor.pairs": { head: "pairs", words: ["number of pairs", "conductor pairs"] },
  weightInWater: {
    head: "weight in water",
    words: ["w", "wet weight", "buoyancy"],
    units: ["N/m", "gf/m"],
    usual: [-0.5, 0.5],
  },
  strength: { head: "working load", words: ["strength", "swl"], units: ["N", "kgf"], usual: [100, 20_000] },

  ratio: { head: "ratio", words: ["gear ratio", "reduction", "g", "i"] },
  efficiency: { head: "efficiency", words: ["eta", "gear efficiency"], units: ["1", "%"], usual: [0.5, 1] },
};

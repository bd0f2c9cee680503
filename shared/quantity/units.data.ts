import { CELSIUS_ZERO, STANDARD_ATMOSPHERE, STANDARD_GRAVITY } from "./constants.ts";

/**
 * Units that people write, one dimension a block. SI value = (written value + `offset`) * `factor`.
 * Source: BIPM, The International System of Units, 9th ed. (2019); Thompson & Taylor, NIST SP 811 (2008), Appendix B;
 * inch, foot and pound by the international yard and pound agreement of 1959. All factors are exact by definition.
 */
export interface Unit {
  /** How it is printed. */
  readonly symbol: string;
  /** Other spellings, compared after `foldUnit`. */
  readonly spellings: readonly string[];
  readonly factor: number;
  readonly offset?: number;
  /** The unit counts electrical turns: divide by the pole pairs to get turns of the shaft. */
  readonly electrical?: true;
}

export type Dimension =
  | "length"
  | "area"
  | "mass"
  | "force"
  | "massAsForce"
  | "torque"
  | "angle"
  | "rotationRate"
  | "speedConstant"
  | "voltage"
  | "current"
  | "resistance"
  | "power"
  | "charge"
  | "energy"
  | "temperature"
  | "temperatureDifference"
  | "time"
  | "density"
  | "pressure"
  | "speed"
  | "pulseWidth"
  | "resistancePerLength"
  | "forcePerLength"
  | "thermalResistance"
  | "currentPerAngularVelocity"
  | "fraction"
  | "number";

const INCH = 0.0254;
const POUND = 0.45359237;
const OUNCE = POUND / 16;
const G = STANDARD_GRAVITY;
const TAU = 2 * Math.PI;

const MASS: readonly Unit[] = [
  { symbol: "kg", spellings: ["kilogram", "kilograms", "kilo", "kgs"], factor: 1 },
  { symbol: "g", spellings: ["gram", "grams", "gr", "gm"], factor: 1e-3 },
  { symbol: "mg", spellings: ["milligram", "milligrams"], factor: 1e-6 },
  { symbol: "lb", spellings: ["lbs", "pound", "pounds"], factor: POUND },
  { symbol: "oz", spellings: ["ounce", "ounces"], factor: OUNCE },
];

const FORCE: readonly Unit[] = [
  { symbol: "N", spellings: ["newton", "newtons"], factor: 1 },
  { symbol: "mN", spellings: ["millinewton", "millinewtons"], factor: 1e-3 },
  { symbol: "kN", spellings: ["kilonewton", "kilonewtons"], factor: 1e3 },
  { symbol: "daN", spellings: ["decanewton", "decanewtons"], factor: 10 },
  { symbol: "dN", spellings: ["decinewton", "decinewtons"], factor: 1e-1 },
  { symbol: "cN", spellings: ["centinewton", "centinewtons"], factor: 1e-2 },
  { symbol: "kgf", spellings: ["kp", "kilogram-force", "kilopond", "kg-f"], factor: G },
  { symbol: "gf", spellings: ["gram-force", "grams-force", "pond", "g-f", "gmf"], factor: G * 1e-3 },
  { symbol: "lbf", spellings: ["pound-force", "lb-f", "lbsf"], factor: POUND * G },
  { symbol: "ozf", spellings: ["ounce-force", "oz-f"], factor: OUNCE * G },
];

/** Every unit by dimension; the first of each block is the SI unit that values are kept in. */
export const UNITS: { readonly [D in Dimension]: readonly Unit[] } = {
  length: [
    { symbol: "m", spellings: ["metre", "metres", "meter", "meters"], factor: 1 },
    { symbol: "mm", spellings: ["millimetre", "millimetres", "millimeter", "millimeters"], factor: 1e-3 },
    { symbol: "cm", spellings: ["centimetre", "centimetres", "centimeter", "centimeters"], factor: 1e-2 },
    { symbol: "µm", spellings: ["um", "micron", "microns", "micrometre", "micrometer"], factor: 1e-6 },
    { symbol: "in", spellings: ["inch", "inches", '"', "″"], factor: INCH },
    { symbol: "ft", spellings: ["foot", "feet"], factor: 12 * INCH },
    { symbol: "km", spellings: ["kilometre", "kilometer"], factor: 1e3 },
  ],
  area: [
    { symbol: "m²", spellings: ["m2", "m^2", "sqm"], factor: 1 },
    { symbol: "cm²", spellings: ["cm2", "cm^2"], factor: 1e-4 },
    { symbol: "mm²", spellings: ["mm2", "mm^2"], factor: 1e-6 },
  ],
  mass: MASS,
  force: FORCE,
  // A scale shows kilograms and means the weight of them: mass units count as force through standard gravity.
  massAsForce: [...FORCE, ...MASS.map((unit) => ({ ...unit, factor: unit.factor * G }))],
  // Between the factors of a torque people write a dot, a star, a hyphen, a blank or nothing: `findUnit` folds them.
  torque: [
    { symbol: "N·m", spellings: ["newton metre", "newton meter", "newton metres", "newton meters"], factor: 1 },
    { symbol: "mN·m", spellings: [], factor: 1e-3 },
    { symbol: "N·mm", spellings: [], factor: 1e-3 },
    { symbol: "N·cm", spellings: [], factor: 1e-2 },
    { symbol: "kgf·m", spellings: ["kg·m", "m·kgf", "kp·m"], factor: G },
    { symbol: "kgf·cm", spellings: ["kg·cm", "cm·kgf", "kp·cm"], factor: G * 1e-2 },
    { symbol: "gf·cm", spellings: ["g·cm", "cm·gf", "p·cm"], factor: G * 1e-5 },
    { symbol: "gf·m", spellings: ["g·m"], factor: G * 1e-3 },
    { symbol: "lbf·in", spellings: ["lb·in", "in·lb", "in·lbf"], factor: POUND * G * INCH },
    { symbol: "lbf·ft", spellings: ["lb·ft", "ft·lb", "ft·lbf"], factor: POUND * G * 12 * INCH },
    { symbol: "ozf·in", spellings: ["oz·in", "in·oz", "in·ozf"], factor: OUNCE * G * INCH },
  ],
  angle: [
    { symbol: "rad", spellings: ["radian", "radians"], factor: 1 },
    { symbol: "°", spellings: ["deg", "degree", "degrees"], factor: Math.PI / 180 },
  ],
  // Turns per second, never radians per second: 60 rpm is 1.
  rotationRate: [
    { symbol: "rev/s", spellings: ["rps", "1/s", "s-1", "s^-1", "Hz", "r/s", "turns/s"], factor: 1 },
    {
      symbol: "rpm",
      spellings: [
        "1/min",
        "min-1",
        "min^-1",
        "rev/min",
        "r/min",
        "U/min",
        "turns/min",
        "turns per min",
        "tr/min",
        "r.p.m.",
      ],
      factor: 1 / 60,
    },
    {
      symbol: "krpm",
      spellings: ["krev/min", "rpm x1000", "rpm x 1000", "rpm_x1000", "rpm*1000", "x1000 rpm", "1000 rpm"],
      factor: 1000 / 60,
    },
    { symbol: "100 rpm", spellings: ["rpm x100", "rpm x 100", "rpm_x100", "rpm*100", "x100 rpm"], factor: 100 / 60 },
    { symbol: "°/s", spellings: ["deg/s", "degree/s", "degrees/s"], factor: 1 / 360 },
    { symbol: "rad/s", spellings: ["rad s-1", "rads"], factor: 1 / TAU },
    { symbol: "erpm", spellings: ["electrical rpm", "e-rpm", "rpm_e", "rpmel"], factor: 1 / 60, electrical: true },
    { symbol: "electrical Hz", spellings: ["eHz", "el. Hz"], factor: 1, electrical: true },
  ],
  speedConstant: [
    { symbol: "rad/(V·s)", spellings: ["rad/s/V", "rad/(Vs)", "rad/(V s)", "rad/Vs"], factor: 1 },
    { symbol: "rpm/V", spellings: ["rpm per volt", "kv", "1/min/V", "rpmV"], factor: TAU / 60 },
    { symbol: "rev/s/V", spellings: ["rps/V", "Hz/V"], factor: TAU },
  ],
  voltage: [
    { symbol: "V", spellings: ["volt", "volts"], factor: 1 },
    { symbol: "mV", spellings: ["millivolt", "millivolts"], factor: 1e-3 },
  ],
  current: [
    { symbol: "A", spellings: ["amp", "amps", "ampere", "amperes"], factor: 1 },
    { symbol: "mA", spellings: ["milliamp", "milliamps", "milliampere", "milliamperes"], factor: 1e-3 },
  ],
  resistance: [
    { symbol: "Ω", spellings: ["ohm", "ohms", "R"], factor: 1 },
    { symbol: "mΩ", spellings: ["mohm", "mohms", "milliohm", "milliohms"], factor: 1e-3 },
    { symbol: "kΩ", spellings: ["kohm"], factor: 1e3 },
  ],
  power: [
    { symbol: "W", spellings: ["watt", "watts"], factor: 1 },
    { symbol: "mW", spellings: ["milliwatt"], factor: 1e-3 },
    { symbol: "kW", spellings: ["kilowatt", "kilowatts"], factor: 1e3 },
    { symbol: "hp", spellings: ["horsepower"], factor: 550 * POUND * G * 12 * INCH },
  ],
  charge: [
    { symbol: "C", spellings: ["coulomb", "coulombs", "As"], factor: 1 },
    { symbol: "Ah", spellings: ["ampere hour", "amp hour"], factor: 3600 },
    { symbol: "mAh", spellings: ["milliampere hour"], factor: 3.6 },
  ],
  energy: [
    { symbol: "J", spellings: ["joule", "joules", "Ws"], factor: 1 },
    { symbol: "Wh", spellings: ["watt hour"], factor: 3600 },
    { symbol: "kWh", spellings: ["kilowatt hour"], factor: 3.6e6 },
  ],
  temperature: [
    { symbol: "K", spellings: ["kelvin"], factor: 1 },
    { symbol: "°C", spellings: ["C", "degC", "deg C", "celsius", "oC"], factor: 1, offset: CELSIUS_ZERO },
    { symbol: "°F", spellings: ["F", "degF", "deg F", "fahrenheit"], factor: 5 / 9, offset: CELSIUS_ZERO * 1.8 - 32 },
  ],
  temperatureDifference: [
    { symbol: "K", spellings: ["kelvin", "C", "°C", "degC", "deg C"], factor: 1 },
    { symbol: "°F", spellings: ["F", "degF", "deg F"], factor: 5 / 9 },
  ],
  time: [
    { symbol: "s", spellings: ["sec", "secs", "second", "seconds"], factor: 1 },
    { symbol: "ms", spellings: ["msec", "millis", "millisecond", "milliseconds"], factor: 1e-3 },
    { symbol: "µs", spellings: ["us", "usec", "micros", "microsecond", "microseconds"], factor: 1e-6 },
    { symbol: "min", spellings: ["minute", "minutes"], factor: 60 },
    { symbol: "h", spellings: ["hour", "hours", "hr", "hrs"], factor: 3600 },
    { symbol: "d", spellings: ["day", "days"], factor: 86_400 },
  ],
  density: [
    { symbol: "kg/m³", spellings: ["kg/m3", "kg/m^3", "kgm-3"], factor: 1 },
    { symbol: "g/cm³", spellings: ["g/cm3", "g/cm^3", "g/cc", "kg/l", "g/ml"], factor: 1e3 },
  ],
  pressure: [
    { symbol: "Pa", spellings: ["pascal", "pascals"], factor: 1 },
    { symbol: "hPa", spellings: ["hectopascal", "mbar", "millibar"], factor: 100 },
    { symbol: "kPa", spellings: ["kilopascal"], factor: 1e3 },
    { symbol: "MPa", spellings: ["megapascal", "N/mm²", "N/mm2"], factor: 1e6 },
    { symbol: "bar", spellings: [], factor: 1e5 },
    { symbol: "atm", spellings: [], factor: STANDARD_ATMOSPHERE },
  ],
  speed: [
    { symbol: "m/s", spellings: ["mps", "m s-1"], factor: 1 },
    { symbol: "km/h", spellings: ["kmh", "kph"], factor: 1 / 3.6 },
    { symbol: "kn", spellings: ["knot", "knots", "kt", "kts"], factor: 1852 / 3600 },
    { symbol: "cm/s", spellings: [], factor: 1e-2 },
  ],
  pulseWidth: [
    { symbol: "s", spellings: ["sec"], factor: 1 },
    { symbol: "µs", spellings: ["us", "usec", "micros", "microseconds"], factor: 1e-6 },
    { symbol: "ms", spellings: ["msec", "milliseconds"], factor: 1e-3 },
  ],
  resistancePerLength: [
    { symbol: "Ω/m", spellings: ["ohm/m"], factor: 1 },
    { symbol: "mΩ/m", spellings: ["mohm/m", "Ω/km", "ohm/km"], factor: 1e-3 },
  ],
  forcePerLength: [
    { symbol: "N/m", spellings: [], factor: 1 },
    { symbol: "gf/m", spellings: ["g/m", "kg/km"], factor: G * 1e-3 },
    { symbol: "kgf/m", spellings: ["kg/m"], factor: G },
  ],
  thermalResistance: [{ symbol: "K/W", spellings: ["°C/W", "C/W", "degC/W"], factor: 1 }],
  currentPerAngularVelocity: [
    { symbol: "A·s/rad", spellings: ["A s/rad", "As/rad"], factor: 1 },
    { symbol: "A per 1000 rpm", spellings: ["A/1000rpm", "A/1000 rpm", "A/krpm"], factor: 60 / (1000 * TAU) },
  ],
  fraction: [
    { symbol: "1", spellings: ["", "-", "frac", "fraction"], factor: 1 },
    { symbol: "%", spellings: ["percent", "per cent", "pct"], factor: 1e-2 },
    { symbol: "‰", spellings: ["permille", "per mille"], factor: 1e-3 },
    { symbol: "ppm", spellings: [], factor: 1e-6 },
  ],
  number: [{ symbol: "1", spellings: ["", "-"], factor: 1 }],
};

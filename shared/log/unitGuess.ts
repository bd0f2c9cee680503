import type { LogShape, RoleGuess } from "../model/log.ts";
import { formatNumber } from "../quantity/format.ts";
import { findUnit } from "../quantity/unit.ts";
import type { ColumnStatistics } from "./columnStatistics.ts";
import { headerWords } from "./headerWords.ts";
import { ROLE_DIMENSIONS, roleUnit } from "./roleUnits.ts";
import type { NamedRole } from "./roleWords.data.ts";

/** The unit that the numbers of a column are in, and what else they could be in. */
export interface UnitGuess {
  readonly unit: string;
  readonly sure: boolean;
  /** A sentence where the unit was not simply read from the header; else empty. */
  readonly reason: string;
  readonly alternatives: RoleGuess["alternatives"];
}

type Column = LogShape["columns"][number];
type Role = NamedRole;

interface Asked {
  readonly role: Role;
  readonly column: Column;
  readonly numbers: ColumnStatistics;
}

/** The largest size that a small electric thruster or its stand reaches, in SI. Common practice, no source. */
const LARGEST: Partial<Record<Role, number>> = {
  thrust: 500,
  torque: 50,
  rotationRate: 20_000 / 60,
  voltage: 100,
  current: 300,
  electricalPower: 10_000,
  temperature: 473,
  advanceSpeed: 20,
};

/** The smallest top value that makes sense in a run, in SI. */
const SMALLEST: Partial<Record<Role, number>> = {
  thrust: 0.02,
  torque: 1e-4,
  rotationRate: 1.5,
  voltage: 1,
  current: 0.01,
};

/** Rotation rate from which electrical turns taken for turns of the shaft are worth a thought, rev/s. */
const ELECTRICAL_FROM = 100;

/** Units tried in this order where the header gives none. */
const CANDIDATES: { readonly [R in Role]: readonly string[] } = {
  time: ["s", "ms", "us"],
  command: ["us", "%", "1"],
  thrust: ["g", "N", "kg"],
  torque: ["N·m", "mN·m", "N·cm"],
  rotationRate: ["rpm", "rev/s", "erpm"],
  voltage: ["V", "mV"],
  current: ["A", "mA"],
  electricalPower: ["W", "mW"],
  temperature: ["°C", "K"],
  advanceSpeed: ["m/s", "cm/s", "km/h", "kn"],
};

/** Offered after those where no unit is written and the numbers allow them. */
const RARER: { readonly [R in Role]?: readonly string[] } = {
  thrust: ["lbf", "ozf"],
  torque: ["kgf·cm", "gf·cm", "lbf·in", "ozf·in"],
};

/** The unit of a column with a known role. */
export function guessUnit(asked: Asked): UnitGuess {
  const written = asked.column.unit === null ? undefined : roleUnit(asked.role, asked.column.unit);
  if (written !== undefined) return checkWritten(asked, written);
  const guess = unwritten(asked);
  if (asked.column.unit === null) return guess;
  const reason = `"${asked.column.unit}" is no unit of this quantity: the readings need a calibration factor, and ${guess.unit} stands in`;
  return { ...guess, sure: false, reason };
}

/** A written unit is believed unless the numbers are out of all proportion. */
function checkWritten(asked: Asked, unit: string): UnitGuess {
  const { role, numbers } = asked;
  if (role === "command" || role === "time") return { unit, sure: true, reason: "", alternatives: [] };
  const top = topOf(numbers);
  const size = inSi(role, unit, top);
  if (role === "rotationRate") return checkRotation(asked, unit, size);
  const sensible = isSensible(role, size);
  const others = CANDIDATES[role].filter((other) => other !== unit && isSensible(role, inSi(role, other, top)));
  const reason = sensible ? "" : `${formatNumber(top)} ${unit} is hardly possible on a small thruster`;
  const isWeighed = role === "thrust" && unit !== "N";
  const told = sensible && !isWeighed ? [] : others;
  return { unit, sure: sensible, reason, alternatives: told.map((other) => alternative(asked, other)) };
}

function checkRotation(asked: Asked, unit: string, size: number): UnitGuess {
  const isElectrical = findUnit(unit, "rotationRate")?.electrical === true;
  if (isElectrical) return { unit, sure: true, reason: "", alternatives: [] };
  const other = unit === "rev/s" ? "electrical Hz" : "erpm";
  // Up to a few thousand turns a minute an electrical reading would be a crawl.
  const isOpen = size > ELECTRICAL_FROM;
  if (/\b(electrical|electric|elec|elektrisch\w*|electrique)\b/.test(headerWords(asked.column.header))) {
    const reason = "the header speaks of electrical turns";
    return { unit: other, sure: false, reason, alternatives: [alternative(asked, unit)] };
  }
  if (size <= LARGEST.rotationRate!) {
    return { unit, sure: true, reason: "", alternatives: isOpen ? [alternative(asked, other)] : [] };
  }
  const reason = `${formatNumber(topOf(asked.numbers))} ${unit} is too fast for a propeller in water, so electrical turns are likely`;
  return { unit: other, sure: false, reason, alternatives: [alternative(asked, unit)] };
}

/** No unit is written: from words in the header, else from the size of the numbers. */
function unwritten(asked: Asked): UnitGuess {
  const { role, column, numbers } = asked;
  if (role === "time") return timeUnit(asked);
  if (role === "command") return commandUnit(asked);
  const words = headerWords(column.header).split(" ");
  const spoken = words
    .map((word) => (word.length > 2 ? roleUnit(role, word) : undefined))
    .find((unit) => unit !== undefined);
  if (spoken !== undefined) return checkWritten(asked, spoken);
  const top = topOf(numbers);
  const fits = (unit: string) => isSensible(role, inSi(role, unit, top));
  const unit = bySize(role, top, numbers);
  const reason = `the header gives no unit; ${unit} fits numbers up to ${formatNumber(top)}`;
  if (role === "rotationRate" && unit === "rpm")
    return { ...checkRotation(asked, unit, inSi(role, unit, top)), reason };
  const isUsual = role !== "thrust" && role !== "torque" && role !== "rotationRate" && role !== "advanceSpeed";
  if (isUsual && fits(unit)) return { unit, sure: true, reason, alternatives: [] };
  const others = CANDIDATES[role].filter((other) => other !== unit);
  const sensible = others.filter(fits);
  const told = [...(sensible.length > 0 ? sensible : others), ...(RARER[role] ?? []).filter(fits)];
  return { unit, sure: false, reason, alternatives: told.map((other) => alternative(asked, other)) };
}

/** Grams come in hundreds, newtons in ones and tens; rpm in thousands, turns a second in tens. */
function bySize(role: Role, top: number, { allWhole }: ColumnStatistics): string {
  if (role === "thrust") return top > 150 ? "g" : allWhole && top > 60 ? "g" : "N";
  if (role === "rotationRate") return top > 20_000 ? "erpm" : top > 300 ? "rpm" : "rev/s";
  if (role === "torque") return top > 5 ? "mN·m" : "N·m";
  if (role === "voltage") return top > 1000 ? "mV" : "V";
  if (role === "current") return top > 400 ? "mA" : "A";
  if (role === "temperature") return top > 200 ? "K" : "°C";
  if (role === "advanceSpeed") return top > 20 ? "cm/s" : "m/s";
  return CANDIDATES[role][0]!;
}

/** Days since 1899-12-30 of the years 2000 to 2064, a small part of a day from row to row. */
const SERIAL_DAYS = { from: 36_526, to: 60_000, longestStep: 0.01 };

function isSerialDay({ low, high, step, allWhole }: ColumnStatistics): boolean {
  const isInRange = low > SERIAL_DAYS.from && high < SERIAL_DAYS.to && high - low < 2;
  return !allWhole && isInRange && step < SERIAL_DAYS.longestStep;
}

/** Loggers sample every 0.5 ms to 5 s: the step between rows tells the unit. */
function timeUnit(asked: Asked): UnitGuess {
  const { column, numbers } = asked;
  const words = headerWords(column.header).split(" ");
  const spoken = words
    .map((word) => (word.length > 1 ? roleUnit("time", word) : undefined))
    .find((unit) => unit !== undefined);
  if (spoken !== undefined) return { unit: spoken, sure: true, reason: "", alternatives: [] };
  const { step, allWhole } = numbers;
  if (isSerialDay(numbers)) {
    const reason = `numbers like ${formatNumber(numbers.low, 6)} are the days by which a spreadsheet counts dates`;
    return { unit: "d", sure: true, reason, alternatives: [alternative(asked, "s")] };
  }
  const unit = !allWhole || step < 3 ? "s" : step < 5000 ? "ms" : "us";
  const sure = !allWhole && step <= 5;
  return {
    unit,
    sure,
    reason: `the header gives no unit; rows ${formatNumber(step)} apart look like ${unit}`,
    alternatives: sure
      ? []
      : CANDIDATES.time.filter((other) => other !== unit).map((other) => alternative(asked, other)),
  };
}

function commandUnit(asked: Asked): UnitGuess {
  const { low, high, median } = asked.numbers;
  const words = headerWords(asked.column.header);
  const isShare = /\b(pct|percent|prozent)\b/.test(words) || asked.column.header.includes("%");
  const isPulse = low >= 500 && high <= 2500 && median >= 800;
  if (!isShare && low >= 0.8 && high <= 2.3 && high - low > 0.1 && !asked.numbers.allWhole) {
    const reason = `numbers from ${formatNumber(low)} to ${formatNumber(high)} look like a pulse width in ms and are kept as plain steps`;
    return { unit: "1", sure: true, reason, alternatives: [] };
  }
  const unit = isShare ? "%" : isPulse ? "us" : high > 1 && high <= 100 ? "%" : "1";
  const isFraction = high <= 1 && high > 0.2 && !asked.numbers.allWhole;
  const sure = isShare || isPulse || high === 100 || isFraction;
  const reason = `numbers from ${formatNumber(low)} to ${formatNumber(high)} look like ${COMMAND_NAMES[unit]}`;
  return {
    unit,
    sure,
    reason,
    alternatives: sure
      ? []
      : CANDIDATES.command.filter((other) => other !== unit).map((other) => alternative(asked, other)),
  };
}

const COMMAND_NAMES: Record<string, string> = {
  us: "a pulse width in µs",
  "%": "a share in %",
  "1": "a fraction or plain steps",
};

/** What another unit would mean, told on the largest number of the column. */
function alternative({ role, numbers }: Asked, unit: string): RoleGuess["alternatives"][number] {
  return { role, unit, implies: implied(role, unit, numbers) };
}

function implied(role: Role, unit: string, numbers: ColumnStatistics): string {
  const top = topOf(numbers);
  const size = inSi(role, unit, top);
  switch (role) {
    case "time":
      return `Rows would be ${formatNumber(inSi(role, unit, numbers.step))} s apart.`;
    case "command":
      return `The numbers would be ${COMMAND_NAMES[unit] ?? unit}.`;
    case "thrust":
      return `The largest thrust would be ${formatNumber(size)} N.`;
    case "rotationRate":
      return findUnit(unit, "rotationRate")?.electrical === true
        ? `The numbers would count electrical turns: with 7 pole pairs the shaft would reach ${formatNumber((size * 60) / 7)} rpm.`
        : `The shaft would reach ${formatNumber(size * 60)} rpm.`;
    default:
      return `The largest value would be ${formatNumber(size)} ${findUnit(unit, ROLE_DIMENSIONS[role]) ? SI_SYMBOLS[role] : unit}.`;
  }
}

const SI_SYMBOLS: Partial<Record<Role, string>> = {
  torque: "N·m",
  voltage: "V",
  current: "A",
  electricalPower: "W",
  temperature: "K",
  advanceSpeed: "m/s",
};

function inSi(role: Role, unit: string, value: number): number {
  const found = findUnit(unit, role === "command" ? "fraction" : ROLE_DIMENSIONS[role]);
  return found ? (value + (found.offset ?? 0)) * found.factor : value;
}

function isSensible(role: Role, size: number): boolean {
  return size <= (LARGEST[role] ?? Number.POSITIVE_INFINITY) && size >= (SMALLEST[role] ?? 0);
}

/** Largest size of the numbers; a load cell may count a pull as negative. */
function topOf({ low, high }: ColumnStatistics): number {
  return Math.max(Math.abs(low), Math.abs(high));
}

import { fluidProperties } from "../fluid/fluidProperties.ts";
import { guessRoles } from "../log/guessRoles.ts";
import type { LogTable } from "../log/logTable.ts";
import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { RoleGuess } from "../model/log.ts";
import type { Propeller } from "../model/parts/propeller.ts";
import type { ReadingChoice, ReadingOption } from "../model/readingChoice.ts";
import type { ColumnRole, ColumnUse, Recipe } from "../model/recipe.ts";
import type { MotorConstants } from "../motor/motorConstants.ts";
import { discArea, thrustCoefficient } from "../propeller/coefficients.ts";
import { idealBollardThrust, idealNozzleThrust } from "../propeller/momentum.ts";
import { formatNumber } from "../quantity/format.ts";
import { findUnit } from "../quantity/unit.ts";
import { channelsByRole, headerOf } from "./channels.ts";
import { POSSIBLE } from "./checks/coefficientChecks.ts";
import { identityOf, remembered } from "./remembered.ts";
import { type StrongestRows, strongestRows } from "./strongestRows.ts";
import { torqueChoice } from "./torqueChoice.ts";

export interface ReadingQuestion {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  readonly motor?: MotorConstants | undefined;
  /** Instruments behind the channels: their calibration settles what a reading is worth. */
  readonly instruments?: UsedInstruments | undefined;
  /** Roles whose unit a person has stated: only asked about again where the reading can not be. */
  readonly decided?: ReadonlySet<ColumnRole>;
}

type Verdict = ReadingOption["verdict"];
type Doubtful = "thrust" | "rotationRate";

/** Units that are taken for one another, and what to call each. */
const UNITS: { readonly [R in Doubtful]: readonly { readonly unit: string; readonly words: string }[] } = {
  thrust: [
    { unit: "N", words: "newton" },
    { unit: "g", words: "gram-force" },
    { unit: "kg", words: "kilogram-force" },
    { unit: "lbf", words: "pound-force" },
    { unit: "ozf", words: "ounce-force" },
  ],
  rotationRate: [
    { unit: "rpm", words: "turns of the shaft a minute" },
    { unit: "erpm", words: "electrical turns a minute" },
    { unit: "rev/s", words: "turns of the shaft a second" },
    { unit: "electrical Hz", words: "electrical turns a second" },
  ],
};

/** Weighed only where the file gives no unit and the size of the numbers leaves them open. */
const RARER: ReadonlySet<string> = new Set(["lbf", "ozf"]);

/** Taken where the log counts electrical turns and nobody has said; the sentence says so. */
const USUAL_POLE_PAIRS = 7;
/** Beyond these a propeller at rest is unusual. Common practice, no source. */
const USUAL = { low: 0.05, high: 0.8 };
/** Less than this part of the momentum limit is a very poor thruster: a merit below 0.06. Common practice, no source. */
const POOREST = 0.15;
/** Readings of simple stands may lie this much beyond a limit of physics. */
const BEYOND = 1.05;
/** Faster than this the rotation rate is beyond any thruster of this size, rev/s. Common practice, no source. */
const FASTEST = 500;

interface Reading {
  readonly role: Doubtful;
  readonly unit: string;
  readonly words: string;
  /** What the value of the recipe is multiplied by in this reading. */
  readonly factor: number;
}

interface Setting {
  readonly strongest: StrongestRows;
  readonly propeller: Propeller;
  readonly density: number;
  readonly limit: number | null;
  /** Fastest a motor turns on the voltage of the strongest rows; null where no motor is known. rev/s */
  readonly fastest: number | null;
  readonly polePairs: number;
  readonly isPolePairsStated: boolean;
}

/**
 * The columns of thrust and rotation rate that could be written in another unit, each with its readings and what they
 * would mean at the strongest rows: thrust against the momentum limit T = (2 ρ A P²)^(1/3) of the electrical power,
 * thrust coefficient K_T = T / (ρ n² D⁴), rotation rate against K_v U of the motor. A torque column is weighed by the
 * shaft power it would mean.
 *
 * A column is asked about where nothing in the file settles its unit, or where the reading of the recipe can not be.
 * Nothing is changed here: `recommended` names the only possible reading, where there is one.
 *
 * Assumes  the propeller stands still in the fluid; shaft power is no more than electrical power.
 * Throws   as channelsByRole, apart from pole pairs; OutOfDomain for a fluid state that has no properties.
 */
export function readingChoices(question: ReadingQuestion): ReadingChoice[] {
  const { table, recipe, propeller, motor, instruments = {}, decided = new Set() } = question;
  const polePairs = recipe.polePairs ?? USUAL_POLE_PAIRS;
  const channels = channelsByRole(table, { ...recipe, polePairs }, instruments);
  const ofTable = identityOf(table.columns);
  const seen = [...channels.values()].map(({ role, raw, scale, shift }) => [role, identityOf(raw), scale, shift]);
  const strongest = remembered(table.lineNumbers, { stage: "strongest", dependsOn: [ofTable, seen] }, () =>
    strongestRows(channels, table.rows),
  );
  const { density } = fluidProperties(recipe.fluid);
  const setting: Setting = {
    ...{ strongest, propeller, density, polePairs, isPolePairsStated: recipe.polePairs !== undefined },
    limit: limitOf(strongest.power, propeller, density),
    fastest: motor && strongest.voltage ? (motor.speedConstant * strongest.voltage) / (2 * Math.PI) : null,
  };
  const guesses = remembered(table.lineNumbers, { stage: "guesses", dependsOn: [ofTable, table.fileName] }, () =>
    guessRoles(table),
  );
  const columns = (["thrust", "rotationRate"] as const).flatMap((role) => {
    const use = recipe.columns.find((one) => one.role === role);
    if (!use || strongest[role] === null || strongest[role] === 0 || role in instruments) return [];
    const guess = guesses[use.column];
    const isGuessed = guess?.role === role && guess.unit === use.unit;
    const isOpen = !decided.has(role) && isGuessed && (!guess.sure || guess.alternatives.length > 0);
    return [{ role, use, isOpen, isUnsure: isOpen && !guess.sure, readings: readingsOf(role, use, polePairs, guess) }];
  });
  const ofTorque = torqueOf(
    question,
    guesses,
    setting,
    columns.find(({ role }) => role === "thrust"),
  );
  const ofOthers = columns.flatMap((column) => {
    const other = columns.find(({ role }) => role !== column.role);
    const othersReadings = other?.isOpen ? other.readings : (other?.readings.slice(0, 1) ?? []);
    const options = column.readings.map((reading, i) => optionOf(reading, othersReadings, setting, i === 0));
    const isDoubtful = column.isUnsure || options[0]!.verdict !== "possible";
    // Where the written unit can not be and no other can either, another check tells of it.
    if (!isDoubtful || options.every(({ verdict }) => verdict === "impossible")) return [];
    return [choiceOf(table, column.use, options, setting)];
  });
  return ofTorque ? [...ofOthers, ofTorque] : ofOthers;
}

function torqueOf(
  { table, recipe, instruments = {}, decided = new Set() }: ReadingQuestion,
  guesses: readonly RoleGuess[],
  { strongest, propeller, density }: Setting,
  thrust: { readonly isOpen: boolean; readonly readings: readonly Reading[] } | undefined,
): ReadingChoice | null {
  const use = recipe.columns.find(({ role }) => role === "torque");
  if (!use || "torque" in instruments) return null;
  const guess = guesses[use.column];
  const isUnsure = !decided.has("torque") && guess?.role === "torque" && guess.unit === use.unit && !guess.sure;
  const open = thrust?.isOpen ? thrust.readings : (thrust?.readings.slice(0, 1) ?? []);
  const thrusts = strongest.thrust ? open.map(({ factor }) => factor * strongest.thrust!) : [];
  const limit = (shaftPower: number) => limitOf(shaftPower, propeller, density)!;
  return torqueChoice({ table, use, strongest, thrusts, limitOf: limit, isUnsure });
}

function limitOf(power: number | null, propeller: Propeller, density: number): number | null {
  if (power === null || !(power > 0)) return null;
  const disc = { shaftPower: power, discArea: discArea(propeller.diameter), density };
  return propeller.nozzle ? idealNozzleThrust(disc) : idealBollardThrust(disc);
}

/** The reading of the recipe first, then the others. */
function readingsOf(role: Doubtful, use: ColumnUse, polePairs: number, guess: RoleGuess | undefined): Reading[] {
  const size = (unit: string) => {
    const found = findUnit(unit, ROLE_DIMENSIONS[role]);
    return found ? found.factor / (found.electrical ? polePairs : 1) : Number.NaN;
  };
  const isSame = (unit: string) => Math.abs(size(unit) / size(use.unit) - 1) < 1e-9;
  const words = UNITS[role].find(({ unit }) => isSame(unit))?.words ?? use.unit;
  const isLeftOpen = (unit: string) => guess?.alternatives.some((other) => other.role === role && other.unit === unit);
  const others = UNITS[role].filter(({ unit }) => !isSame(unit) && (!RARER.has(unit) || isLeftOpen(unit)));
  return [
    { role, unit: use.unit, words, factor: 1 },
    ...others.map((other) => ({ role, ...other, factor: size(other.unit) / size(use.unit) })),
  ];
}

interface Judgement {
  readonly verdict: Verdict;
  readonly because: string;
  readonly thrust: number | null;
  readonly rate: number | null;
  readonly K_T: number | null;
}

const RANK = { possible: 0, unlikely: 1, impossible: 2 } as const;

/** An option is as good as it is with the best of the readings of the other column that are still open. */
function optionOf(reading: Reading, others: readonly Reading[], setting: Setting, chosen: boolean): ReadingOption {
  const judgements = (others.length > 0 ? others : [null]).map((other) => judge(reading, other, setting));
  const best = judgements.reduce((a, b) => (RANK[b.verdict] < RANK[a.verdict] ? b : a));
  return {
    unit: reading.unit,
    chosen,
    verdict: best.verdict,
    greatestThrust: best.thrust,
    rotationRate: best.rate,
    thrustCoefficient: best.K_T,
    sentence: sentenceOf(reading, best, setting),
  };
}

function judge(reading: Reading, other: Reading | null, setting: Setting): Judgement {
  const { strongest, propeller, density, limit, fastest } = setting;
  const factorOf = (role: Doubtful) => [reading, other].find((one) => one?.role === role)?.factor ?? 1;
  const thrust = strongest.thrust === null ? null : strongest.thrust * factorOf("thrust");
  const rate = strongest.rotationRate === null ? null : strongest.rotationRate * factorOf("rotationRate");
  const K_T =
    thrust && rate ? thrustCoefficient({ thrust, density, rotationRate: rate, diameter: propeller.diameter }) : null;
  const told = { thrust, rate, K_T };
  if (thrust !== null && limit !== null && thrust > BEYOND * limit) {
    return { ...told, verdict: "impossible", because: `above the momentum limit of ${formatNumber(limit)} N` };
  }
  if (rate !== null && fastest !== null && rate > BEYOND * fastest) {
    const because = `faster than the motor turns without load, ${formatNumber(fastest * 60)} rpm`;
    return { ...told, verdict: "impossible", because };
  }
  if (rate !== null && rate > FASTEST) {
    return { ...told, verdict: "impossible", because: "faster than any thruster of this size turns" };
  }
  if (K_T !== null && (K_T > POSSIBLE.high || K_T < POSSIBLE.low)) {
    const because = `no propeller at rest has a thrust coefficient ${K_T > POSSIBLE.high ? `above ${POSSIBLE.high}` : `below ${POSSIBLE.low}`}`;
    return { ...told, verdict: "impossible", because };
  }
  if (K_T !== null && (K_T > USUAL.high || K_T < USUAL.low)) {
    return { ...told, verdict: "unlikely", because: `propellers at rest have about 0.1 to 0.6` };
  }
  if (thrust !== null && limit !== null && thrust < POOREST * limit) {
    const because = `only ${formatNumber((thrust / limit) * 100, 2)} % of the momentum limit of ${formatNumber(limit)} N`;
    return { ...told, verdict: "unlikely", because };
  }
  return {
    ...told,
    verdict: "possible",
    because: limit === null || thrust === null ? "" : `the momentum limit is ${formatNumber(limit)} N`,
  };
}

function sentenceOf({ role, words, unit }: Reading, judgement: Judgement, setting: Setting): string {
  const { thrust, rate, K_T, because, verdict } = judgement;
  const { strongest, polePairs, isPolePairsStated } = setting;
  const isElectrical = findUnit(unit, ROLE_DIMENSIONS[role])?.electrical === true;
  const pairs = isElectrical
    ? ` with ${polePairs} pole pairs${isPolePairsStated ? "" : " (not stated, taken as usual)"}`
    : "";
  const power = strongest.power === null ? "" : ` from ${formatNumber(strongest.power)} W`;
  const size =
    role === "thrust"
      ? `the greatest thrust would be ${formatNumber(thrust!)} N${power}`
      : `the shaft would turn at ${formatNumber(rate! * 60)} rpm`;
  const law = K_T === null ? "" : `, K_T ${formatNumber(K_T, 2)}`;
  return `In ${words}${pairs} ${size}${law}${because === "" ? "" : `, ${because}`}: ${verdict}.`;
}

function choiceOf(table: LogTable, use: ColumnUse, options: ReadingOption[], setting: Setting): ReadingChoice {
  const possible = options.filter(({ verdict }) => verdict === "possible");
  const only = possible.length === 1 ? possible[0]! : null;
  const told = options.filter(({ verdict, chosen }) => chosen || verdict !== "impossible");
  // At least two are shown, the nearest of the impossible ones too where there is nothing else.
  const shown = told.length > 1 ? told : options.slice(0, 2);
  const header = headerOf(table, use.column);
  const advice = only
    ? `Only ${only.unit} is possible${only.chosen ? ", and it is what the recipe reads." : "; it was not changed for you."}`
    : possible.length === 0
      ? "Say which it is; a lever ratio, a pole pair count or a diameter that is not as stated shows like this too."
      : "Say which it is.";
  return {
    column: use.column,
    header,
    role: use.role,
    electricalPower: setting.strongest.power,
    momentumLimit: setting.limit,
    options,
    recommended: only?.unit ?? null,
    sentence: `${header} can be read in more than one way. ${shown.map(({ sentence }) => sentence).join(" ")} ${advice}`,
  };
}

import type { ElectricalRun } from "../../../shared/model/electrical.ts";
import type { FloodedRotorDrag } from "../../../shared/model/floodedRotor.ts";
import type {
  IdentifiedConstants,
  MotorIdentification,
  MotorResidual,
  PolePairs,
} from "../../../shared/model/motorIdentification.ts";
import type { Motor } from "../../../shared/model/parts/motor.ts";
import type { Run, RunPurpose } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { MILLIOHM, RPM_PER_VOLT } from "../../../shared/motor/identifySentence.ts";
import { covarianceOf, uncertaintiesOf } from "../../../shared/motor/motorCovariance.ts";
import { formatNumber, formatQuantity, formatUncertain, type ShownUnit } from "../../../shared/quantity/format.ts";
import { type Uncertain, uncertain } from "../../../shared/quantity/uncertain.ts";
import { counts } from "../../app/words.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";

const AMPERE: ShownUnit = { symbol: "A", factor: 1 };
const PER_THOUSAND: ShownUnit = { symbol: "A per 1000 rpm", factor: 60 / (1000 * 2 * Math.PI) };

const PURPOSE_NAMES: { readonly [P in RunPurpose]: string } = {
  propeller: "with a propeller",
  noLoadDry: "without propeller, in air",
  noLoadWet: "without propeller, flooded",
};

export interface RunChoice {
  readonly id: string;
  readonly name: string;
  /** What was on the shaft, and how many plateaus it gives; or why it gives none. */
  readonly facts: string;
  readonly chosen: boolean;
}

/** What was read of a run: its plateaus, the sentence why there are none, or nothing yet. */
export type ElectricalState = ElectricalRun | string | undefined;

/** Runs that had this motor on the stand; the free-running ones first. */
export function candidateRuns(runs: readonly StoredDocument<Run>[], motorId: string): StoredDocument<Run>[] {
  const order: readonly RunPurpose[] = ["noLoadDry", "noLoadWet", "propeller"];
  return runs
    .filter(({ document }) => document.recipe.motorId === motorId && logsElectrical(document))
    .sort(
      (a, b) =>
        order.indexOf(a.document.purpose) - order.indexOf(b.document.purpose) ||
        a.document.name.localeCompare(b.document.name, "en", { numeric: true }),
    );
}

function logsElectrical({ recipe: { columns } }: Run): boolean {
  return ["voltage", "current", "rotationRate"].every((role) => columns.some((column) => column.role === role));
}

/** The runs taken where nobody chose: all without propeller, and three of the others whose throttle is logged. */
export function runsToBeginWith(candidates: readonly StoredDocument<Run>[]): ReadonlySet<string> {
  const free = candidates.filter(({ document }) => document.purpose !== "propeller");
  const commanded = ({ document }: StoredDocument<Run>) =>
    document.purpose === "propeller" && document.recipe.columns.some(({ role }) => role === "command");
  const loaded = candidates.filter(commanded).slice(0, 3);
  return new Set([...free, ...loaded].map(({ id }) => id));
}

export function runChoices(
  candidates: readonly StoredDocument<Run>[],
  chosen: ReadonlySet<string>,
  electricalOf: (id: string) => ElectricalState,
): RunChoice[] {
  return candidates.map(({ id, document }) => {
    const read = electricalOf(id);
    const what = PURPOSE_NAMES[document.purpose];
    const told =
      read === undefined
        ? ""
        : typeof read === "string"
          ? `; not usable: ${read}`
          : `; ${counts(read.plateaus.length, "plateau")}${atRestWords(read)}`;
    return { id, name: document.name, facts: `${what}${told}`, chosen: chosen.has(id) };
  });
}

function atRestWords({ currentAtRest }: ElectricalRun): string {
  if (!currentAtRest) return "";
  return `; ${formatQuantity(currentAtRest.value, AMPERE, 2)} read at rest was taken off`;
}

export interface ConstantRow {
  readonly name: string;
  readonly found: string;
  readonly entered: string;
  /** How the two stand to each other. */
  readonly verdict: string;
}

/** The constants found beside those the motor has now. */
export function constantRows(constants: IdentifiedConstants, motor: Motor): ConstantRow[] {
  const entered = covarianceOf(motor.uncertainties ?? {});
  const row = (name: string, found: Uncertain | null, value: number, at: number, unit: ShownUnit): ConstantRow => {
    const now = uncertain(value, Math.sqrt(entered[at]![at]!));
    return {
      name,
      found: found ? formatUncertain(found, unit) : "not known from these runs",
      entered: formatUncertain(now, unit),
      verdict: found ? verdictOf(found, now) : "",
    };
  };
  return [
    row("Speed constant", constants.speedConstant, motor.speedConstant, 0, RPM_PER_VOLT),
    row("Winding resistance", constants.resistance, motor.resistance, 1, MILLIOHM),
    row("No-load current at rest", constants.noLoadCurrent, motor.noLoadCurrent, 2, AMPERE),
    row("Growth of the no-load current", constants.noLoadCurrentSlope, motor.noLoadCurrentSlope, 3, PER_THOUSAND),
  ];
}

function verdictOf(found: Uncertain, entered: Uncertain): string {
  const apart = Math.abs(found.value - entered.value);
  const halves = (one: Uncertain) => (one.interval95[1] - one.interval95[0]) / 2;
  if (apart <= Math.hypot(halves(found), halves(entered))) return "agrees";
  if (entered.value === 0) return "was not entered";
  const part = (100 * (found.value - entered.value)) / entered.value;
  return `${formatNumber(Math.abs(part), 2)} % ${part > 0 ? "above" : "below"} what is entered`;
}

/** The motor with the constants that were found; those that the runs do not tell stay, with their doubt. */
export function withConstants(motor: Motor, constants: IdentifiedConstants): Motor {
  const found = uncertaintiesOf(constants.covariance);
  const lossKnown = constants.noLoadCurrent !== null && constants.noLoadCurrentSlope !== null;
  const kept = lossKnown ? {} : pickLoss(motor.uncertainties ?? {});
  return {
    ...motor,
    speedConstant: constants.speedConstant.value,
    resistance: constants.resistance.value,
    ...(lossKnown && {
      noLoadCurrent: constants.noLoadCurrent!.value,
      noLoadCurrentSlope: constants.noLoadCurrentSlope!.value,
    }),
    uncertainties: { ...kept, ...found },
  };
}

function pickLoss({ noLoadCurrent, noLoadCurrentSlope }: NonNullable<Motor["uncertainties"]>) {
  return {
    ...(noLoadCurrent !== undefined && { noLoadCurrent }),
    ...(noLoadCurrentSlope !== undefined && { noLoadCurrentSlope }),
  };
}

/** Why these constants can not be kept; empty where they can. */
export function refusalOf({ resistance, noLoadCurrent, noLoadCurrentSlope }: IdentifiedConstants): string {
  if (!(resistance.value >= 0)) return "The resistance came out below zero, so these constants can not be used.";
  if ((noLoadCurrent?.value ?? 0) < 0 || (noLoadCurrentSlope?.value ?? 0) < 0)
    return "The no-load loss came out below zero at some speed, so these constants can not be used.";
  return "";
}

const EQUATIONS: { readonly [E in MotorResidual["equation"]]: string } = {
  voltage: "Voltage at full throttle",
  current: "Current at full throttle",
  power: "Power at part throttle",
};

/** How far each point is from the constants, by the balance it serves. */
export function identifyChart({ residuals }: MotorIdentification): ChartSpec {
  const reach = Math.max(3, Math.ceil(Math.max(0, ...residuals.map(({ residual }) => Math.abs(residual)))));
  const equations = Object.keys(EQUATIONS) as MotorResidual["equation"][];
  const rpms = residuals.map(({ rotationRate }) => rotationRate * 60);
  const ends = rpms.length === 0 ? [] : [Math.min(...rpms), Math.max(...rpms)];
  return {
    title: "Distance of each point from the constants, in standard uncertainties u",
    x: { label: "Rotation rate", unit: "rpm" },
    y: { label: "Residual", unit: "u", min: -reach, max: reach },
    series: [
      ...equations.map((equation, style) => ({
        id: equation,
        name: EQUATIONS[equation],
        kind: "measured" as const,
        style,
        points: residuals
          .filter((one) => one.equation === equation)
          .map(({ rotationRate, residual, name }) => ({ x: rotationRate * 60, y: residual, note: name })),
      })),
      {
        id: "expected",
        name: "These constants; the band holds 95 of 100 points",
        kind: "fit" as const,
        style: equations.length,
        points: ends.map((x) => ({ x, y: 0, yInterval: [-2, 2] as const })),
      },
    ].filter(({ points }) => points.length > 0),
  };
}

/** "7 pole pairs: ..." with how far the ratio is off. */
export function polePairText({ polePairs, ratio, off }: PolePairs): string {
  const part = (100 * Math.abs(off)) / polePairs;
  return `${counts(polePairs, "pole pair")}: the electrical count is ${formatUncertain(ratio)} times the shaft's, ${formatNumber(part, 2)} % from a whole number.`;
}

export function rotorText({ power, torque, warnings }: FloodedRotorDrag, withFaces: boolean): string {
  const faces = withFaces ? "" : " End faces are left out.";
  const milli = { symbol: "mN·m", factor: 1e-3 };
  return `About ${formatUncertain(power, { symbol: "W", factor: 1 })}, ${formatUncertain(torque, milli)}.${faces} ${warnings.map(({ message }) => message).join(" ")}`;
}

/** The throttle map in a sentence. */
export function throttleSentence({ throttleMap }: MotorIdentification, unit: string): string {
  if (!throttleMap) return "";
  const { commandAtZero, commandAtFull, deadBand, lowestTurning, linearity } = throttleMap;
  const shown = { symbol: unit, factor: 1 };
  const dead =
    deadBand === null
      ? ""
      : Math.abs(deadBand) <
          Math.max(2 * commandAtZero.standardUncertainty, 0.005 * Math.abs(commandAtFull.value - commandAtZero.value))
        ? ", without a dead band that could be seen"
        : `, after a dead band of ${formatQuantity(deadBand, shown, 2)}`;
  return `Throttle: the duty starts at ${formatUncertain(commandAtZero, shown)}${dead}, reaches full at ${formatUncertain(commandAtFull, shown)} and stays within ${formatNumber(100 * linearity, 2)} % of a straight line. The lowest command at which the motor was seen to turn is ${formatQuantity(lowestTurning, shown, 4)}.`;
}

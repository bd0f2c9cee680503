import type { PreparedDrive } from "../../../shared/drive/driveRequestOf.ts";
import { meritAtRest } from "../../../shared/drive/meritDoubt.ts";
import { actualInWords } from "../../../shared/drive/passedLimits.ts";
import { withinLimits } from "../../../shared/drive/withinLimits.ts";
import type { CarryOver, CarryOverFactor } from "../../../shared/model/carryOver.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import { extrapolationInWords } from "../../../shared/propeller/beyondMeasured.ts";
import { reynoldsWords } from "../../../shared/propeller/reynoldsWords.ts";
import { CELSIUS_ZERO } from "../../../shared/quantity/constants.ts";
import { formatNumber, formatQuantity, formatUncertain } from "../../../shared/quantity/format.ts";
import { uncertain } from "../../../shared/quantity/uncertain.ts";
import { KILOGRAM_FORCE } from "../bench/shownUnits.ts";
import type { PropellerInHand, TorqueSource } from "./measuredPropeller.ts";
import { POINT_QUANTITIES, pointText } from "./pointText.ts";

/** What the Reynolds number at work changes. */
export type Carried = Pick<CarryOver, "reynolds"> & { readonly factor: CarryOverFactor };

/** One propeller on the chosen drive: its points over the whole throttle, or the sentence why there are none. */
export interface Driven {
  readonly inHand: PropellerInHand;
  readonly sweep: readonly OperatingPoint[];
  readonly point: OperatingPoint | null;
  readonly problem: string;
  /** Null where the coefficients are used as they are. */
  readonly carried: Carried | null;
  readonly prepared: PreparedDrive | null;
}

/** "At 60 % throttle the thruster pulls 21.3 ± 0.6 N (2.17 kgf) with “sanded”, drawing ... " */
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
  const [from, to] = ends.map(({ inHand, point }, index) => {
    const kilograms = formatQuantity(point.thrust, KILOGRAM_FORCE, 2);
    const drawing = `${pointText(point, "supplyCurrent")}${index === 0 ? " from the supply" : ""}`;
    return `${pointText(point, "thrust")} (${kilograms}) with “${inHand.name}”, drawing ${drawing}`;
  });
  const pulls =
    to === undefined
      ? `${at} ${each} pulls ${from}.`
      : told.length > 2
        ? `${at} ${each} pulls from ${from}, to ${to}.`
        : `${at} ${each} pulls ${from}; ${to}.`;
  return [pulls, ...limitSentences(ends, throttle), extrapolationText(ends)].filter((text) => text !== "").join(" ");
}

/** Which of them are past what their parts allow, and what each gives within: a sentence each. */
function limitSentences(driven: readonly Driven[], throttle: number): string[] {
  return driven.flatMap(({ inHand, point, prepared }) => {
    if (point === null || prepared === null) return [];
    return withinLimits(inHand.name, { ...prepared.request, throttle }, point)?.sentence ?? [];
  });
}

/** Which of them turn faster than they were measured; empty where none does. */
function extrapolationText(driven: readonly Driven[]): string {
  return extrapolationInWords(
    driven.flatMap(({ inHand: { name, stand }, point }) =>
      point === null || stand === undefined
        ? []
        : [{ name, rotationRate: point.rotationRate, measuredRate: stand.topRate }],
    ),
  );
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
    cells: driven.map(({ point, prepared }) =>
      point === null ? "–" : pointText(point, key, prepared?.request.heat !== undefined),
    ),
  }));
  const merit = driven.map(meritText);
  const kilograms = points.map((point) => (point === null ? "–" : weightText(point)));
  return [
    rows[0]!,
    { name: "Thrust as a weight", symbol: "", cells: kilograms },
    ...rows.slice(1),
    { name: "Ideal over real shaft power", symbol: "FM", cells: merit },
  ];
}

/** Where the torque coefficient of a propeller comes from, ready to show. */
export function torqueSourceText({ torqueSource, name }: PropellerInHand, staticMerit: number): string {
  const sentences: { readonly [S in TorqueSource]: string } = {
    torque: `${name}: torque coefficient from the measured torque.`,
    motorConstants: `${name}: torque coefficient from voltage, current and the constants of the motor on the stand.`,
    statedMerit: `${name}: no torque was measured; its torque coefficient is worked out from the stated static merit of ${staticMerit.toFixed(2)}, taken as exact. Currents and powers rest on it.`,
    typed: `${name}: coefficients as typed.`,
    series: `${name}: coefficients of a published series.`,
    scaled: `${name}: coefficients of a propeller of another size, carried to this one.`,
    bladeElements: `${name}: coefficients computed by blade elements.`,
    measured: `${name}: coefficients measured on the stand.`,
  };
  return sentences[torqueSource];
}

/** Of a propeller as it was measured, the merit and interval that the other screens tell. */
function meritText({ inHand, point, prepared, carried }: Driven): string {
  if (point === null) return "–";
  const { propeller } = point.efficiencies;
  const { staticMerit } = inHand;
  const isMeasured = carried === null && staticMerit && Math.abs(propeller / staticMerit.value - 1) < 1e-3;
  const told = isMeasured ? staticMerit : prepared && meritAtRest(prepared.request, point);
  return told ? formatUncertain(told) : formatQuantity(propeller, RATIO, 3);
}

/** The thrust as the weight it would lift. */
function weightText({ thrust, uncertainties }: OperatingPoint): string {
  const doubt = uncertainties?.thrust;
  return doubt === undefined || doubt.standardUncertainty === 0
    ? formatQuantity(thrust, KILOGRAM_FORCE)
    : formatUncertain(doubt, KILOGRAM_FORCE);
}

const RATIO = { symbol: "", factor: 1 };

/** Which limit of the drive comes first as the throttle opens, where, and how this throttle stands to it. */
export function governingText({ inHand, point, problem }: Driven): string {
  if (point === null) return `${inHand.name}: ${problem}`;
  const reached = point.limits
    .filter((limit) => limit.reachedAtThrottle !== null)
    .sort((a, b) => a.reachedAtThrottle! - b.reachedAtThrottle!);
  const [first] = reached;
  if (first === undefined)
    return `${inHand.name}: no stated limit is reached up to full throttle; the supply's voltage is what bounds it.`;
  const [limit, actual] = [limitText(first.limit, first.unit), actualInWords(first, point.uncertainties)];
  const at = `${Math.round(100 * first.reachedAtThrottle!)}\u202f% throttle`;
  return `${inHand.name}: ${first.name} governs; its limit of ${limit} is reached at ${at}. Now ${actual}.`;
}

/** A limit in the unit that people read it in. */
export function limitText(value: number, unit: string): string {
  if (unit === "K") return `${Math.round(value - CELSIUS_ZERO)}\u202f°C`;
  if (unit === "rev/s") return `${formatNumber(60 * value, 3)}\u202frpm`;
  return `${formatNumber(value)}\u202f${unit}`;
}

/** What carrying to the Reynolds number at work did to the coefficients, one sentence. */
export function carriedText({ inHand, carried }: Driven): string {
  if (carried === null)
    return `${inHand.name}: coefficients as they were ${inHand.runs > 0 ? "measured" : "stated"}; what another Reynolds number changes is not counted, nor its doubt.`;
  const { factor, reynolds } = carried;
  const size = (value: number, relative: number) => formatUncertain(uncertain(value, relative * value));
  const change =
    reynolds.measured === null || reynolds.target === null
      ? "the blade Reynolds number is not known, as chord and pitch are not stated"
      : `blade Reynolds number at 0.75 R ${reynoldsWords(reynolds.target)} at full throttle here, at most ${reynoldsWords(reynolds.measured)} on the stand`;
  return `${inHand.name}: ${change}; thrust × ${size(factor.thrust, factor.thrustUncertainty)}, torque × ${size(factor.torque, factor.torqueUncertainty)}.`;
}

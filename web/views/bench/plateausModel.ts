import type { Plateau, PlateauFinding, Reduction } from "../../../shared/model/reduction.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../../../shared/quantity/format.ts";
import { type Uncertain, uncertain } from "../../../shared/quantity/uncertain.ts";
import { counts } from "../../app/words.ts";
import { AMPERE, MILLINEWTON_METRE, NEWTON, RPM, VOLT, WATT } from "./shownUnits.ts";

/** Quantities a plateau table can have; a column is shown when any plateau holds it. */
const COLUMNS: readonly {
  readonly head: string;
  readonly of: (plateau: Plateau) => Uncertain | null;
  readonly unit?: ShownUnit;
}[] = [
  { head: "Rotation rate", of: (p) => p.rotationRate, unit: RPM },
  { head: "Thrust", of: (p) => p.thrust, unit: NEWTON },
  { head: "Torque", of: (p) => p.torque, unit: MILLINEWTON_METRE },
  { head: "Voltage", of: (p) => p.voltage, unit: VOLT },
  { head: "Current", of: (p) => p.current, unit: AMPERE },
  { head: "Electrical power", of: (p) => p.electricalPower, unit: WATT },
  { head: "Shaft power", of: (p) => p.shaftPower, unit: WATT },
  { head: "Thrust coefficient, ± of this plateau alone", of: (p) => p.thrustCoefficient },
  { head: "Power coefficient, ± of this plateau alone", of: (p) => p.powerCoefficient },
];

/** What ± means in the columns of coefficients, which is not what it means in the others. */
export const OWN_DOUBT_HINT =
  "± of the coefficients in this table is what a plateau has of its own: scatter, rounding and zero. What all plateaus share – calibration, diameter, density, meters and the motor's constants – is in the coefficients of the run above. The other columns hold the calibration of their meters.";

export interface PlateauRow {
  readonly index: number;
  readonly name: string;
  /** Where in time it lies; empty in a table without time. */
  readonly when: string;
  readonly lines: string;
  readonly samples: string;
  readonly command: string;
  readonly cells: readonly string[];
  readonly residual: string;
  readonly used: boolean;
  /** Why it does not count; empty when it does. */
  readonly reason: string;
  readonly foundBy: string;
  readonly settling: string;
  /** Tare that was taken off, N and part of the thrust. */
  readonly tare: string;
  /** Its ends can be moved: a row of a table, and a bin of a sweep, have none of their own. */
  readonly movable: boolean;
  readonly plateau: Plateau;
}

export interface PlateauTable {
  readonly heads: readonly string[];
  readonly rows: readonly PlateauRow[];
  readonly summary: string;
}

/** The plateau table: all numbers with unit and 95 % half-width, file lines, and why one does not count. */
export function plateauTable({ plateaus, sweep }: Reduction): PlateauTable {
  const columns = COLUMNS.filter((column) => plateaus.some((plateau) => column.of(plateau) !== null));
  const rows = plateaus.map((plateau, index) => plateauRow(plateau, index, columns));
  const used = rows.filter((row) => row.used).length;
  const aside = rows.length - used;
  return {
    heads: columns.map((column) => column.head),
    rows,
    summary: `${sweep ? `${counts(used, "bin")} of a sweep` : `${counts(used, "plateau")} in the fit`}${aside > 0 ? `, ${aside} left out` : ""}`,
  };
}

export function plateauName(index: number): string {
  return `Plateau ${index + 1}`;
}

function plateauRow(plateau: Plateau, index: number, columns: typeof COLUMNS): PlateauRow {
  const { start, end, firstLine, lastLine } = plateau;
  return {
    index,
    name: plateau.foundBy === "binned" ? `Bin ${index + 1}` : plateauName(index),
    when: start === null || end === null ? "" : placeInWords({ start, end }, true),
    lines: firstLine === lastLine ? `${firstLine}` : `${firstLine} to ${lastLine}`,
    samples: samplesOf(plateau),
    command: plateau.command === null ? "" : formatNumber(plateau.command, 4),
    cells: columns.map(({ of, unit }) => {
      const quantity = of(plateau);
      return quantity === null ? "–" : formatUncertain(quantity, unit);
    }),
    residual: plateau.residual === null ? "–" : formatNumber(plateau.residual, 2),
    used: plateau.used,
    reason: plateau.leftOutBecause ?? "",
    foundBy: FOUND_BY[plateau.foundBy],
    settling: settlingOf(plateau),
    tare: tareOf(plateau),
    movable: isMovable(plateau),
    plateau,
  };
}

const FOUND_BY: { readonly [F in PlateauFinding]: string } = {
  command: "step of the command (change points, PELT)",
  rotationRate: "step of the rotation rate (change points, PELT)",
  row: "a row of the table",
  moved: "moved by hand",
  split: "split by hand",
  merged: "merged by hand",
  added: "added by hand",
  hand: "set by hand",
  binned: "bin of the sweep, for display",
};

export function isMovable({ foundBy }: Plateau): boolean {
  return foundBy !== "row" && foundBy !== "binned";
}

function settlingOf({ settlingTime }: Plateau): string {
  return settlingTime === null ? "–" : `${formatNumber(settlingTime, 2)}\u202fs`;
}

function tareOf({ thrustTare, thrust, tareUncertainty }: Plateau): string {
  const part = Math.abs(thrustTare / thrust.value);
  const newtons = formatUncertain(uncertain(thrustTare, tareUncertainty), NEWTON);
  return Number.isFinite(part) ? `${newtons}, ${formatNumber(100 * part, 2)}\u202f%` : newtons;
}

/** "12.3 to 17.9 s", to a hundredth where it is short; rows counted from 1 where the log has no clock. */
export function placeInWords({ start, end }: { start: number; end: number }, hasClock: boolean): string {
  if (!hasClock) return start === end ? `row ${start + 1}` : `rows ${start + 1} to ${end + 1}`;
  const digits = end - start < 2 ? 2 : 1;
  return `${start.toFixed(digits)} to ${end.toFixed(digits)}\u202fs`;
}

export interface RejectedRow {
  readonly key: string;
  readonly where: string;
  readonly lines: string;
  readonly because: string;
  readonly span: { readonly start: number; readonly end: number };
}

/** Stretches that did not become plateaus, with the reason. */
export function rejectedRows({ rejected }: Reduction, hasClock: boolean): RejectedRow[] {
  return rejected.map(({ start, end, firstLine, lastLine, because }) => ({
    key: `${firstLine}-${lastLine}`,
    where: placeInWords({ start, end }, hasClock),
    lines: firstLine === lastLine ? `${firstLine}` : `${firstLine} to ${lastLine}`,
    because,
    span: { start, end },
  }));
}

/** Why a stretch can not be added as it is: its readings would count twice; empty when it can. */
export function additionGap(plateaus: readonly Plateau[], span: { start: number; end: number }): string {
  if (!(span.end > span.start)) return "The end must come after the start.";
  const index = plateaus.findIndex(({ span: one }) => span.start < one.end && span.end > one.start);
  return index < 0 ? "" : `It overlaps ${plateauName(index).toLowerCase()}: merge the two, or move its edge.`;
}

function samplesOf({ samples, effectiveSamples }: Plateau): string {
  const worth = Math.round(effectiveSamples);
  return worth >= samples ? `${samples}` : `${samples}, worth ${worth}`;
}

import type { Plateau, Reduction } from "../../../shared/model/reduction.ts";
import { formatNumber, formatUncertain, type ShownUnit } from "../../../shared/quantity/format.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
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
  { head: "Thrust coefficient", of: (p) => p.thrustCoefficient },
  { head: "Power coefficient", of: (p) => p.powerCoefficient },
];

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
  /** The span that a left-out note is kept under; null where the table has no time. */
  readonly span: { readonly start: number; readonly end: number } | null;
}

export interface PlateauTable {
  readonly heads: readonly string[];
  readonly rows: readonly PlateauRow[];
  readonly summary: string;
}

/** The plateau table: all numbers with unit and 95 % half-width, file lines, and why one does not count. */
export function plateauTable({ plateaus }: Reduction): PlateauTable {
  const columns = COLUMNS.filter((column) => plateaus.some((plateau) => column.of(plateau) !== null));
  const rows = plateaus.map((plateau, index) => plateauRow(plateau, index, columns));
  const used = rows.filter((row) => row.used).length;
  const aside = rows.length - used;
  return {
    heads: columns.map((column) => column.head),
    rows,
    summary: `${counts(used, "plateau")} in the fit${aside > 0 ? `, ${aside} left out` : ""}`,
  };
}

export function plateauName(index: number): string {
  return `Plateau ${index + 1}`;
}

function plateauRow(plateau: Plateau, index: number, columns: typeof COLUMNS): PlateauRow {
  const { start, end, firstLine, lastLine } = plateau;
  return {
    index,
    name: plateauName(index),
    when: start === null || end === null ? "" : `${formatNumber(start, 4)} to ${formatNumber(end, 4)}\u202fs`,
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
    span: start === null || end === null ? null : { start, end },
  };
}

function samplesOf({ samples, effectiveSamples }: Plateau): string {
  const worth = Math.round(effectiveSamples);
  return worth >= samples ? `${samples}` : `${samples}, worth ${worth}`;
}

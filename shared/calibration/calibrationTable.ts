import type { LogTable } from "../log/logTable.ts";
import type { CalibrationPoint } from "../model/instrument.ts";
import { InputProblem } from "../quantity/problem.ts";

export interface CalibrationTable {
  readonly appliedUnit: string;
  readonly readingUnit: string;
  readonly points: CalibrationPoint[];
}

const APPLIED = /mass|weight|applied|true|reference|known|hung/i;
const READ = /read|scale|display|cell|count|adc|sensor|log/i;

/** As `pointsOf`; throws InputProblem `calibration.no-unit` too where the unit of what was applied is not in the header. */
export function calibrationTable(table: LogTable): CalibrationTable {
  const points = pointsOf(table);
  if (points.appliedUnit === "")
    throw noUnit(table.fileName, table.shape.columns.map(({ header }) => header).join(", "));
  return points;
}

/**
 * The points of a two-column table: what was applied, and what the instrument read; units from the header, empty where
 * it gives none. The first column is what was applied unless the headers say that it is the second.
 * Throws InputProblem `calibration.two-columns` or `calibration.gap`.
 */
export function pointsOf({ fileName, shape, columns, lineNumbers, rows }: LogTable): CalibrationTable {
  const headers = shape.columns.map(({ header }) => header);
  if (columns.length !== 2) throw notTwo(fileName, headers, columns.length);
  const [first, second] = headers as [string, string];
  const swapped = READ.test(first) && !APPLIED.test(first) && APPLIED.test(second);
  const [applied, reading] = swapped ? [1, 0] : [0, 1];
  // Counts and the like are no unit the reader knows; what stands in brackets is then taken as it is.
  const unitOf = (column: number) => shape.columns[column]!.unit ?? bracketed(headers[column]!);
  const points = Array.from({ length: rows }, (_, row) => {
    const point = { applied: columns[applied]![row]!, reading: columns[reading]![row]! };
    if (!Number.isFinite(point.applied) || !Number.isFinite(point.reading)) throw gap(fileName, lineNumbers[row]!);
    return point;
  });
  return { appliedUnit: unitOf(applied), readingUnit: unitOf(reading), points };
}

function bracketed(header: string): string {
  return /[([]([^()[\]]{1,20})[)\]]\s*$/.exec(header)?.[1]?.trim() ?? "";
}

function notTwo(fileName: string, headers: readonly string[], count: number): InputProblem {
  return new InputProblem({
    code: "calibration.two-columns",
    where: fileName,
    found: `the table has ${count} columns${headers.some((header) => header) ? `: ${headers.join(", ")}` : ""}`,
    needed: "two: what was applied, and what the instrument read",
    mend: 'For example a first line "mass (g), reading (gf)" and a row for each weight',
  });
}

function noUnit(fileName: string, header: string): InputProblem {
  return new InputProblem({
    code: "calibration.no-unit",
    where: fileName,
    found: /^[, ]*$/.test(header) ? "the table has no header" : `the header "${header}" does not give it`,
    needed: "the unit of what was applied",
    mend: 'Write it in brackets, for example "mass (g)"',
  });
}

function gap(fileName: string, line: number): InputProblem {
  return new InputProblem({
    code: "calibration.gap",
    where: `${fileName}, line ${line}`,
    found: "a number is missing",
    needed: "two numbers in every row",
    mend: "Fill it in or take the row out",
  });
}

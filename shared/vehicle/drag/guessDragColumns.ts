import { columnName } from "../../log/columnName.ts";
import { headerWords } from "../../log/headerWords.ts";
import type { LogTable } from "../../log/logTable.ts";
import { DragQuantity } from "../../model/vehicle/dragChannels.ts";
import { findUnit } from "../../quantity/unit.ts";
import type { Dimension } from "../../quantity/units.data.ts";
import { DRAG_QUANTITIES, SECOND_CHOICE } from "./dragQuantities.data.ts";

export interface GuessedColumn {
  readonly quantity: DragQuantity;
  readonly column: number;
  readonly reason: string;
  readonly sure: boolean;
  /** As a person stated it; absent: to be found. */
  readonly unit?: string;
}

type Column = LogTable["shape"]["columns"][number];

interface Evidence extends GuessedColumn {
  readonly score: number;
}

/** Points that words and units are worth; below `ENOUGH` a column is left out. Common practice, no source. */
const WORTH = { strong: 4, weak: 2, unit: 3, otherUnit: -5, secondChoice: -1.5, rises: 1 };
const ENOUGH = 2;
const CLOSE = 1;

/** Which column holds which quantity: the strongest evidence is served first, and no column twice. */
export function guessDragColumns(table: LogTable, taken: ReadonlySet<number>): GuessedColumn[] {
  const evidence = table.shape.columns
    .flatMap((column, index) =>
      taken.has(index) ? [] : DragQuantity.options.map((quantity) => weigh(table, column, index, quantity)),
    )
    .filter((one): one is Evidence => one !== null && one.score >= ENOUGH)
    .sort((a, b) => b.score - a.score || a.column - b.column);
  const given: Evidence[] = [];
  for (const one of evidence) {
    if (given.some(({ quantity, column }) => quantity === one.quantity || column === one.column)) continue;
    const twin = evidence.find(
      ({ quantity, column, score }) => quantity === one.quantity && column !== one.column && one.score - score < CLOSE,
    );
    const aside = twin ? ` As much speaks for ${columnName(table.shape, twin.column)}.` : "";
    given.push({ ...one, reason: one.reason + aside, sure: one.sure && twin === undefined });
  }
  return given.map(({ score: _, ...guess }) => guess);
}

function weigh(table: LogTable, column: Column, index: number, quantity: DragQuantity): Evidence | null {
  const { strong, weak, dimension } = DRAG_QUANTITIES[quantity];
  const words = headerWords(column.header);
  const name = longest(words, strong) ?? longest(words, weak);
  const isStrong = longest(words, strong) !== undefined;
  const unit = unitInHeader(column, dimension);
  if (name === undefined && unit === null) return null;
  let score = name === undefined ? 0 : isStrong ? WORTH.strong : WORTH.weak;
  if (unit !== null) score += WORTH.unit;
  else if (column.unit !== null) score += WORTH.otherUnit;
  if (longest(words, SECOND_CHOICE) !== undefined) score += WORTH.secondChoice;
  if (quantity === "time" && rises(table.columns[index]!)) score += WORTH.rises;
  const reasons = [
    ...(name === undefined ? [] : [`the header says "${name}"`]),
    ...(unit === null ? [] : [`its unit is "${unit}"`]),
  ].join(" and ");
  const reason = `${reasons.charAt(0).toUpperCase()}${reasons.slice(1)}.`;
  // A length alone may be a depth or a distance: only a name is sure.
  return { quantity, column: index, score, reason, sure: isStrong };
}

/** Unit of `dimension` that a header gives, also behind an underscore as in "depth_m"; null where it gives none. */
export function unitInHeader({ unit, header }: Column, dimension: Dimension): string | null {
  if (unit !== null) return findUnit(unit, dimension) ? unit : null;
  const tail = /^.*[A-Za-z0-9][_\s.-]+([A-Za-z/]{1,6})$/.exec(header.trim())?.[1];
  if (tail === undefined) return null;
  const spelled = [tail, tail.replace(/^(k?m|cm)s$/, "$1/s"), tail.replace("ps", "/s")];
  return spelled.find((one) => findUnit(one, dimension) !== undefined) ?? null;
}

function rises(values: Float64Array): boolean {
  let last = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < last) return false;
    if (!Number.isNaN(value)) last = value;
  }
  return true;
}

function longest(words: string, candidates: readonly string[]): string | undefined {
  const padded = ` ${words} `;
  return candidates
    .filter((candidate) => padded.includes(` ${candidate} `))
    .reduce<string | undefined>((best, one) => (one.length > (best?.length ?? 0) ? one : best), undefined);
}

import type { ShapeItem } from "../../model/vehicle/dragShapes.ts";
import { positive } from "../../quantity/domain.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { Problem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { laminarFriction, streamlinedDragArea } from "./friction.ts";
import { shapeGeometry } from "./shapeGeometry.ts";
import { SHAPE_COEFFICIENTS, type ShapeCoefficient, STREAMLINED } from "./shapes.data.ts";

/** Where the coefficient is looked up. */
export interface Flow {
  /** m/s. */ readonly speed: number;
  /** m²/s. */ readonly kinematicViscosity: number;
}

/** One piece of a shape: its frontal area, coefficient and what is known of it. */
export interface FoundCoefficient {
  /** m². */ readonly area: number;
  readonly dragCoefficient: number;
  readonly relativeUncertainty: number;
  /** Shapes with the same key are off together. */ readonly shares: string;
  readonly reynolds: number;
  readonly reynoldsRange: readonly [number, number];
  readonly described: string;
  readonly source: string;
  readonly warnings: readonly Warning[];
}

/**
 * Drag coefficient of one shape on its frontal area (m²), with its relative standard uncertainty, from the catalogue:
 * straight between the ratios that the source prints, the last value held beyond them (a warning says so).
 *
 * Source   `shapes.data.ts`; streamlined bodies `friction.ts`.
 * Throws   OutOfDomain for sizes, speed or viscosity not greater than 0.
 */
export function shapeCoefficient(item: ShapeItem, { speed, kinematicViscosity }: Flow): FoundCoefficient {
  const perMetre = positive(speed, "speed", "m/s") / positive(kinematicViscosity, "kinematic viscosity", "m²/s");
  if (item.kind === "stated") return stated(item, perMetre);
  if (item.kind === "streamlinedBody") return streamlined(item, { speed, kinematicViscosity });
  const geometry = shapeGeometry(item);
  positive(geometry.area, `frontal area of "${item.name}"`, "m²");
  const { above, ...entry }: ShapeCoefficient = SHAPE_COEFFICIENTS[geometry.entry];
  const { value, isOutside } = interpolated(entry.table, geometry.ratio);
  const reynolds = perMetre * geometry.reynoldsLength;
  const warnings = [
    ...(isOutside ? [warning(beyondTable(item.name, geometry.ratioInWords, value))] : []),
    ...reynoldsWarnings(item.name, reynolds, entry.reynoldsRange, above),
  ];
  const { area, described } = geometry;
  return { ...entry, area, dragCoefficient: value, shares: geometry.entry, reynolds, described, warnings };
}

/** Straight between the points of a table; the end value outside. */
function interpolated(table: ShapeCoefficient["table"], ratio: number): { value: number; isOutside: boolean } {
  const [first, last] = [table[0]!, table.at(-1)!];
  if (table.length === 1) return { value: first[1], isOutside: false };
  if (ratio < first[0]) return { value: first[1], isOutside: true };
  if (ratio > last[0]) return { value: last[1], isOutside: true };
  const next = Math.max(
    1,
    table.findIndex(([at]) => ratio <= at),
  );
  const [[x0, y0], [x1, y1]] = [table[next - 1]!, table[next]!];
  return { value: y0 + ((y1 - y0) * (ratio - x0)) / (x1 - x0), isOutside: false };
}

function stated(item: Extract<ShapeItem, { kind: "stated" }>, perMetre: number): FoundCoefficient {
  return {
    area: positive(item.area, `area of "${item.name}"`, "m²"),
    dragCoefficient: positive(item.dragCoefficient, `drag coefficient of "${item.name}"`, ""),
    relativeUncertainty: item.relativeUncertainty,
    shares: `stated ${item.name}`,
    reynolds: perMetre * Math.sqrt(item.area),
    reynoldsRange: [0, 1e9],
    described: `stated coefficient on ${formatNumber(item.area)} m²`,
    source: item.source,
    warnings: [],
  };
}

function streamlined(item: Extract<ShapeItem, { kind: "streamlinedBody" }>, flow: Flow): FoundCoefficient {
  const { diameter, length, wettedArea, name } = item;
  const body = { length, diameter, wettedArea, kinematicViscosity: flow.kinematicViscosity };
  const dragArea = streamlinedDragArea(body, flow.speed);
  const area = (Math.PI * diameter * diameter) / 4;
  const reynolds = (flow.speed * length) / flow.kinematicViscosity;
  const { reynoldsRange, above, relativeUncertainty, source } = STREAMLINED;
  const fineness = length / diameter;
  return {
    ...{ area, relativeUncertainty, source, reynolds, reynoldsRange, shares: "streamlinedBody" },
    dragCoefficient: dragArea / area,
    described: `streamlined body, length ${formatNumber(length)} m, diameter ${formatNumber(diameter)} m`,
    warnings: [
      ...(fineness < 2 || fineness > 10
        ? [warning(beyondTable(name, `l/d ${formatNumber(fineness)}`, dragArea / area))]
        : []),
      ...reynoldsWarnings(name, reynolds, reynoldsRange, above, laminarHint(reynolds)),
    ],
  };
}

const laminarHint = (reynolds: number) =>
  `A wholly laminar plate would have C_F ${formatNumber(laminarFriction(reynolds))}, so the drag may be less`;

function beyondTable(name: string, ratio: string, value: number): Problem {
  return {
    code: "vehicle.drag-shape-range",
    where: name,
    found: `${ratio} lies outside the table of this shape; the last value is used, C_D ${formatNumber(value)}`,
    needed: "a ratio inside the table",
    mend: "Take a shape that comes nearer, or state a coefficient",
  };
}

function reynoldsWarnings(
  name: string,
  reynolds: number,
  [low, high]: readonly [number, number],
  above: string,
  below = "Down to 1 × 10³ it changes by some 10 to 20 %; it grows clearly only in much slower flow",
): Warning[] {
  if (reynolds >= low && reynolds <= high) return [];
  const mend = reynolds > high ? (above === "" ? "" : `Above it ${above}`) : below;
  const found = `the Reynolds number is ${inTens(reynolds)} at the stated speed`;
  const needed = `${inTens(low)} to ${inTens(high)}, where the coefficient holds`;
  return [warning({ code: "vehicle.drag-reynolds", where: name, found, needed, mend })];
}

/** "2.4 × 10⁵" reads easier than a row of digits. */
function inTens(value: number): string {
  const [digits, exponent] = value.toExponential(1).split("e") as [string, string];
  const raised = String(Number(exponent)).replace(/./g, (sign) => (sign === "-" ? "⁻" : "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(sign)]!));
  return `${digits.replace(/\.0$/, "")} × 10${raised}`;
}

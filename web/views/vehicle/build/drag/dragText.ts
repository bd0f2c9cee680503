import type { ResolvedDrag } from "../../../../../shared/model/vehicle/drag.ts";
import type { ShapeRow } from "../../../../../shared/model/vehicle/dragShapes.ts";
import { reynoldsWords } from "../../../../../shared/propeller/reynoldsWords.ts";
import { formatNumber, formatUncertain } from "../../../../../shared/quantity/format.ts";
import { scaled, uncertain } from "../../../../../shared/quantity/uncertain.ts";

/** Drag areas of small vehicles are some hundreds of square centimetres. */
const SQUARE_CENTIMETRE = { symbol: "cm²", factor: 1e-4 };
const NEWTON = { symbol: "N", factor: 1 };
const KILOGRAM = { symbol: "kg", factor: 1 };

export const areaText = ({ dragArea }: Pick<ResolvedDrag, "dragArea">): string =>
  formatUncertain(dragArea, SQUARE_CENTIMETRE);

/** Drag at 1 m/s, D = ½ ρ C_D A + a, with the doubt of the drag area. */
export function dragAtOneText({ dragArea, linear }: ResolvedDrag, density: number): string {
  const square = scaled(dragArea, density / 2);
  const [low, high] = square.interval95;
  return formatUncertain(
    { ...square, value: square.value + linear.value, interval95: [low + linear.value, high + linear.value] },
    NEWTON,
  );
}

export const addedMassText = ({ addedMass }: ResolvedDrag): string =>
  addedMass.value === 0 && addedMass.standardUncertainty === 0 ? "not given" : formatUncertain(addedMass, KILOGRAM);

/** One row of the table that tells which part is which share of the drag. */
export interface ShapeRowText {
  readonly name: string;
  readonly shape: string;
  readonly area: string;
  readonly coefficient: string;
  readonly dragArea: string;
  readonly share: number;
  readonly shareText: string;
  readonly reynolds: string;
  readonly source: string;
}

export function shapeRowText(row: ShapeRow): ShapeRowText {
  const { name, described, count, area, dragCoefficient, dragArea, standardUncertainty, share, reynolds, source } = row;
  return {
    name: count === 1 ? name : `${count} × ${name}`,
    shape: described,
    area: `${formatNumber(area / SQUARE_CENTIMETRE.factor)} cm²`,
    coefficient: formatNumber(dragCoefficient),
    dragArea: areaText({ dragArea: uncertain(dragArea, standardUncertainty) }),
    share,
    shareText: `${formatNumber(100 * share, 2)} %`,
    reynolds: reynoldsWords(reynolds),
    source,
  };
}

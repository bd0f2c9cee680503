import type { ShapeDrag, ShapeItem, ShapeRow } from "../../model/vehicle/dragShapes.ts";
import { nonNegative, positive } from "../../quantity/domain.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { type Flow, type FoundCoefficient, shapeCoefficient } from "./shapeCoefficient.ts";

export interface ShapeDragOptions extends Flow {
  /** Relative standard uncertainty of the sum by the parts disturbing each other. */
  readonly interferenceUncertainty: number;
}

/**
 * C_D A (m²) of a body built up from shapes, and a row for each.
 *
 *   C_D A = Σ n s f C_D A_i,   u² = Σ_kinds (Σ n s f C_D A_i u_rel)² + (u_int C_D A)²
 *
 * n how many, s share that the water meets, f factor of the neighbours. Shapes with one coefficient are off together, so
 * that their doubts add in full; those of different coefficients are taken as independent.
 *
 * Source   sum of parts: Hoerner, Fluid-Dynamic Drag (1965), ch. 8 (interference; from memory); doubts JCGM 100:2008, 5.
 * Error    what parts do to each other is only in `interferenceUncertainty`; 15 % is common practice, no source.
 * Throws   InputProblem `vehicle.drag-zero` where nothing meets the water; OutOfDomain as `shapeCoefficient`.
 */
export function shapeDrag(items: readonly ShapeItem[], options: ShapeDragOptions): ShapeDrag {
  const found = items.map((item) => shapeCoefficient(item, options));
  const areas = items.map((item, i) => weightOf(item) * found[i]!.dragCoefficient * found[i]!.area);
  const whole = areas.reduce((sum, area) => sum + area, 0);
  if (!(whole > 0)) {
    throw new InputProblem({
      code: "vehicle.drag-zero",
      where: "shapes",
      found: items.length === 0 ? "no shape is listed" : "none of the shapes meets the water, so the drag is 0 m²",
      needed: "a shape with an exposed share above 0",
      mend: "List the parts that the water meets",
    });
  }
  const coefficients = doubtOfCoefficients(found, areas);
  const interference = nonNegative(options.interferenceUncertainty, "interference uncertainty", "") * whole;
  return {
    rows: items.map((item, i) => rowOf(item, found[i]!, areas[i]!, whole)),
    dragArea: uncertain(whole, Math.hypot(coefficients, interference)),
    parts: { coefficients, interference },
    warnings: found.flatMap(({ warnings }) => warnings),
  };
}

function weightOf({ count, exposedShare, interferenceFactor, name }: ShapeItem): number {
  return (
    positive(count, `count of "${name}"`, "") *
    nonNegative(exposedShare, `exposed share of "${name}"`, "") *
    positive(interferenceFactor, `interference factor of "${name}"`, "")
  );
}

function doubtOfCoefficients(found: readonly FoundCoefficient[], areas: readonly number[]): number {
  const byKind = new Map<string, number>();
  found.forEach(({ shares, relativeUncertainty }, i) => {
    byKind.set(shares, (byKind.get(shares) ?? 0) + areas[i]! * relativeUncertainty);
  });
  return Math.hypot(...byKind.values());
}

function rowOf({ name, kind, count }: ShapeItem, found: FoundCoefficient, dragArea: number, whole: number): ShapeRow {
  const { area, dragCoefficient, relativeUncertainty, reynolds, reynoldsRange, described, source } = found;
  return {
    ...{ name, kind, described, count, area, dragCoefficient, dragArea },
    standardUncertainty: dragArea * relativeUncertainty,
    share: dragArea / whole,
    ...{ reynolds, reynoldsRange: [reynoldsRange[0], reynoldsRange[1]] as [number, number], source },
  };
}

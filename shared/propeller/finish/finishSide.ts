import type { FinishFitRequest, MeasuredPoint } from "../../model/finishFit.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import { positive } from "../../quantity/domain.ts";
import { tellingFrom } from "../../quantity/problem.ts";
import { type BladeResponse, bladeResponse, type MidSection } from "./bladeResponse.ts";
import type { BladesInHand } from "./bladesInHand.ts";
import { type FittedSurface, fitSurface, type SurfaceFit } from "./fitSurface.ts";
import { differenceCovariance, measuredCovariance, measuredValues } from "./measuredCovariance.ts";

/** One finish with its blade, what was measured and the surface that makes it. */
export interface FinishSide {
  readonly name: string;
  readonly points: readonly MeasuredPoint[];
  /** K_T and K_Q of each point in turn. */ readonly measured: readonly number[];
  /** Where these numbers begin in those of all finishes. */ readonly from: number;
  /** Their covariance, and that of their differences from blade elements. */
  readonly covariance: readonly (readonly number[])[];
  readonly differences: readonly (readonly number[])[];
  readonly response: BladeResponse;
  readonly section: MidSection;
  readonly fit: SurfaceFit;
}

export interface FinishSides {
  readonly sides: readonly FinishSide[];
  /** Covariance of the numbers of all finishes. */ readonly covariance: readonly (readonly number[])[];
}

/** The finishes and how they were run. */
export interface FinishesRun extends Pick<FinishFitRequest, "finishes" | "rotationRate"> {
  readonly fluid: FluidProperties;
}

type BladesToFit = Pick<BladesInHand, "geometry" | "tie" | "model">;

/** Solves each finish by itself. Throws as `finishFit`, told from the finish. */
export function finishSides(request: FinishesRun, blades: BladesToFit): FinishSides {
  const covariance = tellingFrom("finishes", () =>
    measuredCovariance(request.finishes.flatMap(({ measured }) => measured)),
  );
  let from = 0;
  const sides = request.finishes.map(({ name, measured: points }, f) => {
    const measured = checkedCoefficients(measuredValues(points));
    const own = partOf(covariance, { from, measured });
    const differences = differenceCovariance(measured, own, blades.model);
    const side = { name, points, measured, from, covariance: own, differences, ...bladeOf(request, blades, points) };
    from += measured.length;
    return { ...side, fit: tellingFrom(`finishes[${f}].measured`, () => fitSurface(side)) };
  });
  return { sides, covariance };
}

function bladeOf(
  { fluid, rotationRate }: FinishesRun,
  { geometry, tie }: BladesToFit,
  points: readonly MeasuredPoint[],
) {
  const advanceRatios = points.map(({ advanceRatio }) => advanceRatio);
  return bladeResponse({ geometry, tie, fluid, rotationRate, advanceRatios });
}

const checkedCoefficients = (values: readonly number[]) =>
  values.map((value, i) => positive(value, i % 2 === 0 ? "thrust coefficient" : "torque coefficient", ""));

/** Rows and columns of the covariance that belong to one finish. */
function partOf<T>(rows: readonly (readonly T[])[], { from, measured }: Pick<FinishSide, "from" | "measured">): T[][] {
  const to = from + measured.length;
  return rows.slice(from, to).map((row) => row.slice(from, to));
}

/** A finish whose surface was found. */
export type FittedSide = FinishSide & { readonly fit: FittedSurface };

export const isFitted = (side: FinishSide): side is FittedSide => side.fit.state === "fitted";

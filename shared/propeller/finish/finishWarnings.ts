import { chiSquareUpperTail } from "../../numeric/chiSquare.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { type FinishSide, isFitted } from "./finishSide.ts";
import type { FittedSurface } from "./fitSurface.ts";

/** Curves that chance makes this seldom do not follow from the fitted surface. */
const SELDOM = 0.01;

/** What the fits of finishes must be read with. */
export function finishWarnings(sides: readonly FinishSide[]): Warning[] {
  return sides
    .filter(isFitted)
    .flatMap(({ name, fit }) => [atBound(name, fit), misfit(name, fit)].filter((one) => one !== null));
}

const BOUND_WORDS = {
  liftTooLow: "the least lift factor",
  liftTooHigh: "the greatest lift factor",
  dragTooLow: "the friction of two laminar sides",
  dragTooHigh: "the greatest drag factor",
} as const;

function atBound(name: string, { heldAt }: FittedSurface): Warning | null {
  if (heldAt === null) return null;
  return warning({
    code: "propeller.finish-at-bound",
    where: name,
    found: `The fit stands at ${BOUND_WORDS[heldAt]} that a surface can have`,
    needed: "a fit inside the bounds",
    mend: "The measurement's doubt allows for it; a better calibration would tell",
  });
}

function misfit(name: string, { chiSquared, degreesOfFreedom }: FittedSurface): Warning | null {
  if (degreesOfFreedom === 0 || chiSquareUpperTail(chiSquared, degreesOfFreedom) > SELDOM) return null;
  return warning({
    code: "propeller.finish-misfit",
    where: name,
    found: `The points lie ${formatNumber(Math.sqrt(chiSquared / degreesOfFreedom), 2)} times as far from any one surface as their doubts explain`,
    needed: "points that one lift factor and one drag factor can meet",
    mend: "Uncertainties were widened by that; check blade description and advance speed",
  });
}

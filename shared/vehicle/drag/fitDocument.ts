import type { DragFit } from "../../model/vehicle/dragFit.ts";
import { combined } from "../../numeric/combined.ts";
import type { UncertaintyPart } from "../../numeric/welchSatterthwaite.ts";
import { formatNumber, formatUncertain } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";

/** A part of the doubt with its cause in words. */
export interface NamedPart extends UncertaintyPart {
  readonly cause: string;
}

export const SQUARE_METRE = { symbol: "m²", factor: 1 };
const LINEAR_UNIT = { symbol: "N·s/m", factor: 1 };
/** Chance below which a test speaks up: one false alarm in a hundred fits. */
export const ALARM = 0.01;
/** Speeds that differ by less than this factor can not show how the drag grows. */
const NARROW = 1.5;
const FEW = 5;
const NO_DOUBT = 1e9;

/** Everything but the sentence and the warnings that all methods share. */
export interface FitResult extends Omit<DragFit, "dragArea" | "degreesOfFreedom" | "parts" | "sentence"> {
  readonly value: number;
  /** Of C_D A, m². */
  readonly doubt: readonly NamedPart[];
  /** Interval of C_D A where it is lopsided. */
  readonly interval95?: readonly [number, number];
  /** "240 rows of a tow". */
  readonly basis: string;
}

/** The document of a fit: combined doubt, common warnings, one sentence. */
export function fitDocument({ value, doubt, interval95, basis, ...fit }: FitResult): DragFit {
  const { standardUncertainty, degreesOfFreedom } = combined(doubt);
  const symmetric = uncertain(value, standardUncertainty, degreesOfFreedom);
  const dragArea: Uncertain = interval95 ? { ...symmetric, interval95 } : symmetric;
  const [slow, fast] = fit.speedRange;
  const warnings = [...fit.warnings, ...commonWarnings(fit, dragArea)];
  return {
    ...fit,
    dragArea,
    degreesOfFreedom: degreesOfFreedom > NO_DOUBT ? null : degreesOfFreedom,
    parts: doubt.map((part) => ({ cause: part.cause, standardUncertainty: part.standardUncertainty })),
    sentence: `C_D A is ${formatUncertain(dragArea, SQUARE_METRE)} (95 %), from ${basis} at ${formatNumber(slow)} to ${formatNumber(fast)} m/s.`,
    warnings,
  };
}

function commonWarnings(fit: Omit<FitResult, "value" | "doubt" | "basis">, dragArea: Uncertain): Warning[] {
  const { speedRange, linearTest, lackOfFit, linear, effectiveSamples } = fit;
  const told: Warning[] = [];
  const tell = (code: string, found: string, needed: string, mend: string) =>
    told.push(warning({ code, where: fit.method, found, needed, mend }));
  if (effectiveSamples < FEW) {
    const found = `all readings are worth ${formatNumber(effectiveSamples, 2)} independent ones`;
    tell("vehicle.fit-few-points", found, `${FEW} or more`, "Measure longer, or at more settings");
  }
  if (speedRange[1] < NARROW * speedRange[0] && (fit.method === "tow" || fit.method === "coastDown")) {
    const found = `the speeds reach from ${formatNumber(speedRange[0])} to ${formatNumber(speedRange[1])} m/s only`;
    tell("vehicle.fit-narrow-speeds", found, "a factor of two or more", "Elsewhere the drag is a guess from the law");
  }
  if (linearTest && linearTest.pValue < ALARM && linear.standardUncertainty === 0) {
    const found = `a part of the drag grows with the speed alone, ${formatUncertain(linearTest.linear, LINEAR_UNIT)}`;
    tell(
      "vehicle.fit-linear-term",
      found,
      "a drag that grows with the square",
      "Fit with a linear term, or look for rubbing, a zero that is off, or slow flow",
    );
  }
  if (lackOfFit && lackOfFit.pValue < ALARM) {
    const found = `repeats agree better with each other than with the curve, F ${formatNumber(lackOfFit.ratio)}`;
    tell(
      "vehicle.fit-lack",
      found,
      "means that lie on the curve",
      "The law does not fit these speeds: look for a drag crisis, waves at the surface or a zero that is off",
    );
  }
  if (dragArea.interval95[0] <= 0) {
    const found = `the interval of C_D A, ${formatUncertain(dragArea, SQUARE_METRE)}, reaches below 0`;
    tell("vehicle.fit-drag-not-shown", found, "readings that show a drag", "Measure faster or longer");
  }
  return told;
}

/** The statement that readings show no drag at all. */
export function noDrag(where: string, found: string): InputProblem {
  return new InputProblem({
    code: "vehicle.fit-no-drag",
    where,
    found,
    needed: "a drag above 0 that grows with the speed",
    mend: "Look for a sign, a column or a unit that was read as another",
  });
}

/** The warning that a search did not come to its end. */
export const notConverged = (where: string): Warning =>
  warning({
    code: "vehicle.fit-not-converged",
    where,
    found: "the fit still moved after its last step",
    needed: "a fit that stands still",
    mend: "Do not rely on it; look for readings far off",
  });

/** The warning that a linear term below 0 was left out. */
export const linearLeftOut = (where: string, linear: Uncertain): Warning =>
  warning({
    code: "vehicle.fit-linear-negative",
    where,
    found: `the linear term comes out as ${formatUncertain(linear, LINEAR_UNIT)}, which pushes instead of dragging; the quadratic law alone is given`,
    needed: "a term of 0 or more",
    mend: "Measure at more and slower speeds, or check the zero of the force",
  });

export const NO_LINEAR: Uncertain = { value: 0, standardUncertainty: 0, interval95: [0, 0] };

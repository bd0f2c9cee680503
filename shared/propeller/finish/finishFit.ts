import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { FinishChange, FinishFit, FinishFitRequest, FinishResult } from "../../model/finishFit.ts";
import { uniformsFrom } from "../../numeric/pcg32.ts";
import { positive } from "../../quantity/domain.ts";
import { tellingFrom } from "../../quantity/problem.ts";
import type { Warning } from "../../quantity/warning.ts";
import { type BladeResponse, bladeResponse } from "./bladeResponse.ts";
import { drawnChange } from "./drawnChange.ts";
import { changeSentence, outOfReachSentence } from "./finishInWords.ts";
import { finishPicture, roughnessOfDrag } from "./finishPicture.ts";
import { finishWarnings } from "./finishWarnings.ts";
import { type FittedSurface, fitSurface, type SurfaceFit } from "./fitSurface.ts";
import { genericBlade } from "./genericBlade.ts";
import { type Derived, jointDoubt } from "./jointDoubt.ts";
import { measuredCovariance, measuredValues } from "./measuredCovariance.ts";
import { judgedClaim, smoothGain } from "./smoothBlade.ts";

/** The same draws in every run. */
const SEED = 20_261_125;

/**
 * What the surface of a blade does, from measured coefficients of one or two finishes: lift factor and drag of the sections
 * for each, what the second finish changed, what a smooth surface could still bring, and whether a claimed gain can come
 * from a surface at all.
 *
 * Source   blade elements (`bladeElements`) solved backwards; `fitSurface`, `jointDoubt`, `smoothBlade.ts`.
 * Error    carried: measurement, its common parts, and the stated doubt of the blade elements.
 * Throws   InputProblem for a blade or uncertainties that can not be; OutOfDomain for coefficients that are not positive.
 */
export function finishFit(request: FinishFitRequest): FinishFit {
  const { finishes, modelUncertainty: model, claimedFactor } = request;
  const assumed = request.blade.given === "outline" ? genericBlade(request.blade.outline) : null;
  const geometry = request.blade.given === "geometry" ? request.blade.geometry : assumed!.geometry;
  const blades = finishes.map(({ measured }) =>
    bladeResponse({
      geometry,
      fluid: fluidProperties(request.fluid),
      rotationRate: request.rotationRate,
      advanceRatios: measured.map(({ advanceRatio }) => advanceRatio),
    }),
  );
  const responses = blades.map(({ response }) => response);
  const points = finishes.flatMap(({ measured }) => measured);
  const measured = checkedCoefficients(measuredValues(points));
  const covariance = tellingFrom("finishes", () => measuredCovariance(points));
  const fits = fitsOf(finishes, responses, measured, covariance);
  const last = blades.at(-1)!;
  const smooth = last.response({ roughness: 0, liftFactor: 1, dragFactor: 1 });
  const results = resultsOf({ finishes, responses, fits, measured, covariance, model, draws: request.draws });
  const [firstName, lastName] = [finishes[0]!.name, finishes.at(-1)!.name];
  const known = smooth !== null && {
    smoothGain: smoothGain({
      name: lastName,
      smooth,
      measured: finishes.at(-1)!.measured[0]!,
      model,
      chord: last.section.chord,
    }),
    claim: judgedClaim({
      name: firstName,
      claimedFactor,
      measured: finishes[0]!.measured[0]!,
      response: responses[0]!,
      model,
    }),
    picture: finishPicture({
      response: last.response,
      smooth,
      section: last.section,
      liftFactor: liftOf(fits.at(-1)!),
    }),
  };
  const { smoothGain: gain, claim, picture } = known || { smoothGain: null, claim: null, picture: null };
  const warnings: Warning[] = [...(assumed === null ? [] : [assumed.warning]), ...finishWarnings(finishes, fits)];
  const parts = [results.change?.sentence, ...results.finishes.map(stateSentence), gain?.sentence, claim?.sentence];
  return {
    ...results,
    smoothGain: gain,
    claim,
    picture,
    sentence: parts.filter((part) => part !== undefined).join(" "),
    warnings,
  };
}

type Finishes = FinishFitRequest["finishes"];

function checkedCoefficients(values: readonly number[]): readonly number[] {
  values.forEach((value, i) => positive(value, i % 2 === 0 ? "thrust coefficient" : "torque coefficient", ""));
  return values;
}

const liftOf = (fit: SurfaceFit) => (fit.state === "fitted" ? fit.liftFactor : 1);

/** Where the numbers of each finish stand among all that were measured. */
const spansOf = (finishes: Finishes) => {
  let from = 0;
  return finishes.map((finish) => {
    const span = [from, from + 2 * finish.measured.length] as const;
    from = span[1];
    return span;
  });
};

function fitsOf(
  finishes: Finishes,
  responses: readonly BladeResponse[],
  measured: readonly number[],
  covariance: readonly (readonly number[])[],
): SurfaceFit[] {
  return spansOf(finishes).map(([from, to], f) =>
    tellingFrom(`finishes[${f}].measured`, () =>
      fitSurface({
        response: responses[f]!,
        measured: measured.slice(from, to),
        covariance: covariance.slice(from, to).map((row) => row.slice(from, to)),
      }),
    ),
  );
}

interface ToTell {
  readonly finishes: Finishes;
  readonly responses: readonly BladeResponse[];
  readonly fits: readonly SurfaceFit[];
  readonly measured: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly model: FinishFitRequest["modelUncertainty"];
  readonly draws: number;
}

function resultsOf(told: ToTell): { finishes: FinishResult[]; change: FinishChange | null } {
  const { finishes, responses, fits, measured, covariance, model, draws } = told;
  const fitted = fits.filter((fit) => fit.state === "fitted");
  const spans = spansOf(finishes).filter((_, f) => fits[f]!.state === "fitted");
  const indices = spans.flatMap(([from, to]) => Array.from({ length: to - from }, (_, i) => from + i));
  const own = {
    measured: indices.map((i) => measured[i]!),
    covariance: indices.map((i) => indices.map((j) => covariance[i]![j]!)),
  };
  const doubtOf = jointDoubt({ fits: fitted, ...own, model });
  const drags = finishes.map((_, f) => {
    const fit = fits[f]!;
    return fit.state === "fitted" ? dragOf(fit, responses[f]!, fitted) : null;
  });
  const results = finishes.map(({ name }, f): FinishResult => {
    const fit = fits[f]!;
    if (fit.state === "failed") return { ...fit, name };
    if (fit.state === "outOfReach") return outOfReach(name, fit, measured.slice(spansOf(finishes)[f]![0]));
    return {
      state: "fitted",
      name,
      liftFactor: doubtOf({ value: fit.liftFactor, gradient: gradientOf(fit, fitted, 1, 0) }),
      dragFactor: doubtOf({ value: fit.dragFactor, gradient: gradientOf(fit, fitted, 0, 1) }),
      sectionDrag: doubtOf(drags[f]!),
      roughness: roughnessOfDrag(fit.answer.sectionDrag, fit.liftFactor, responses[f]!),
      chiSquared: fit.chiSquared,
      degreesOfFreedom: fit.degreesOfFreedom,
      converged: fit.converged,
      steps: fit.steps,
    };
  });
  const [before, after] = results;
  if (before?.state !== "fitted" || after?.state !== "fitted") return { finishes: results, change: null };
  const [fitBefore, fitAfter] = fitted as [FittedSurface, FittedSurface];
  const lifts = [fitBefore, fitAfter].map((fit) => ({
    value: fit.liftFactor,
    gradient: gradientOf(fit, fitted, 1, 0),
  })) as [Derived, Derived];
  const [dragBefore, dragAfter] = drags as [Derived, Derived];
  const liftRatio = doubtOf(ratioOf(lifts[1], lifts[0]));
  const dragRatio = doubtOf(ratioOf(dragAfter, dragBefore));
  const change: FinishChange = {
    liftRatio,
    dragRatio,
    dragChange: doubtOf(differenceOf(dragAfter, dragBefore)),
    monteCarlo:
      draws === 0 ? null : drawnChange({ responses, fits: fitted, ...own, model, draws, uniform: uniformsFrom(SEED) }),
    sentence: changeSentence([before, after], { liftRatio, dragRatio }),
  };
  return { finishes: results, change };
}

function outOfReach(
  name: string,
  fit: SurfaceFit & { state: "outOfReach" },
  measured: readonly number[],
): FinishResult {
  const { thrustCoefficient, torqueCoefficient } = fit.answer.points[0]!;
  const nearest = { thrustCoefficient, torqueCoefficient };
  const found = { thrustCoefficient: measured[0]!, torqueCoefficient: measured[1]! };
  const { bound, liftFactor, dragFactor, chiSquared } = fit;
  const sentence = outOfReachSentence(name, bound, { measured: found, nearest });
  return { state: "outOfReach", name, bound, liftFactor, dragFactor, ...nearest, chiSquared, sentence };
}

function stateSentence(result: FinishResult): string | undefined {
  if (result.state === "outOfReach") return result.sentence;
  return result.state === "failed" ? `${result.name}: ${result.reason}.` : undefined;
}

/** Gradient over the unknowns of all fits of something that depends on those of one. */
function gradientOf(fit: FittedSurface, all: readonly FittedSurface[], byLift: number, byDrag: number): number[] {
  return all.flatMap((one) => (one === fit ? [byLift, byDrag] : [0, 0]));
}

/** Step of the differences that tell how the section drag follows from the unknowns. */
const STEP = 1e-4;

/** Section drag of a fit with its gradient. */
function dragOf(fit: FittedSurface, response: BladeResponse, all: readonly FittedSurface[]): Derived {
  const { liftFactor, dragFactor, answer } = fit;
  const moved = (lift: number, drag: number) =>
    response({ roughness: 0, liftFactor: liftFactor + lift, dragFactor: dragFactor + drag })?.sectionDrag ??
    answer.sectionDrag;
  const byLift = (moved(STEP, 0) - moved(-STEP, 0)) / (2 * STEP);
  const byDrag = (moved(0, STEP) - moved(0, -STEP)) / (2 * STEP);
  return { value: answer.sectionDrag, gradient: gradientOf(fit, all, byLift, byDrag) };
}

function ratioOf(above: Derived, below: Derived): Derived {
  const value = above.value / below.value;
  return { value, gradient: above.gradient.map((one, i) => (one - value * below.gradient[i]!) / below.value) };
}

function differenceOf(from: Derived, taken: Derived): Derived {
  return { value: from.value - taken.value, gradient: from.gradient.map((one, i) => one - taken.gradient[i]!) };
}

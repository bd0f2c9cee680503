import type {
  FinishChange,
  FinishFit,
  FinishFitRequest,
  FinishResult,
  ModelUncertainty,
} from "../../model/finishFit.ts";
import { uniformsFrom } from "../../numeric/pcg32.ts";
import type { InFluid } from "../inFluid.ts";
import { bladesInHand } from "./bladesInHand.ts";
import { finishChange } from "./finishChange.ts";
import { finishSentence, shapeSentence } from "./finishInWords.ts";
import { finishPicture } from "./finishPicture.ts";
import { finishResult } from "./finishResult.ts";
import { type FinishSide, type FinishSides, type FittedSide, finishSides, isFitted } from "./finishSide.ts";
import { finishWarnings } from "./finishWarnings.ts";
import { jointDoubt } from "./jointDoubt.ts";
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
export function finishFit(request: InFluid<FinishFitRequest>): FinishFit {
  const blades = bladesInHand(request);
  const told = finishSides(request, blades);
  const results = resultsOf(told, { ...blades, draws: request.draws });
  const smooth = againstSmooth(told.sides, { ...blades, claimedFactor: request.claimedFactor ?? null });
  const shape = shapeSentence(blades.isGeneric);
  const parts = [
    results.change?.sentence,
    ...results.finishes.map((result) => finishSentence(result, results.change === null)),
    smooth.smoothGain?.sentence,
    smooth.claim?.sentence,
    shape,
  ];
  return {
    ...results,
    ...smooth,
    shape,
    sentence: parts.filter((part) => part !== undefined).join(" "),
    warnings: [...blades.warnings, ...finishWarnings(told.sides)],
  };
}

function resultsOf(
  { sides, covariance }: FinishSides,
  { model, draws }: { readonly model: ModelUncertainty; readonly draws: number },
): { finishes: FinishResult[]; change: FinishChange | null } {
  const fitted = sides.filter(isFitted);
  const all = fitted.map(({ fit }) => fit);
  const doubts = { all, doubtOf: jointDoubt({ sides: fitted, covariance, model }) };
  const [before, after] = fitted;
  const change =
    before === undefined || after === undefined
      ? null
      : finishChange([before, after], doubts, { covariance, model, draws, uniform: uniformsFrom(SEED) });
  return { finishes: sides.map((side) => finishResult(side, doubts)), change };
}

type AgainstSmooth = Pick<FinishFit, "smoothGain" | "claim" | "picture">;

/** The last finish, and the claim over the first, against a clean smooth blade; nulls where that has no solution. */
function againstSmooth(
  sides: readonly FinishSide[],
  { model, claimedFactor }: { readonly model: ModelUncertainty; readonly claimedFactor: number | null },
): AgainstSmooth {
  const [first, last] = [sides[0]!, sides.at(-1)!];
  const smooth = last.response({ roughness: 0, liftFactor: 1, dragFactor: 1 });
  if (smooth === null) return { smoothGain: null, claim: null, picture: null };
  const { name, section, response } = last;
  return {
    smoothGain: smoothGain({ name, smooth, measured: last.points[0]!, model, chord: section.chord }),
    claim: claimedFactor === null ? null : judgedClaim({ ...first, claimedFactor, measured: first.points[0]!, model }),
    picture: finishPicture({ response, smooth, section, fitted: sides.filter(isFitted).map(liftOf) }),
  };
}

function liftOf({ name, response, fit: { liftFactor } }: FittedSide) {
  return { name, response, liftFactor };
}

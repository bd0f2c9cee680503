import type { BestPitch, BestPitchRequest, PitchCandidate } from "../../model/bestPitch.ts";
import { goldenMaximum } from "../../numeric/goldenSection.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { onlyPitch } from "./onlyPitch.ts";
import { candidateAt, type PitchDuty, pitchDuty } from "./pitchDuty.ts";
import { pitchRange, seriesWarnings } from "./seriesRange.ts";
import { seriesReynolds } from "./seriesReynolds.ts";

/** Step of the pitch ratio in the search. */
const STEP = 0.02;

/**
 * Pitch of a series propeller for a duty: with the diameter or the rotation rate given, the pitch that makes a thrust
 * with the least power or of a power the most thrust; with both given, the pitch that does the duty.
 *
 * The range is walked from low pitch up and the search ends at the first optimum: at high pitch and few blades the
 * polynomials have further ones that no test supports (Helma 2020). A best that lies at an edge of the range says so.
 *
 * Source   series as `openWaterOfSeries`; S. Helma, Surprising behaviour of the Wageningen B-screw series polynomials,
 *          Journal of Marine Science and Engineering 8 (2020) 211.
 * Assumes  the Reynolds number of the series, 2e6; a lower one is told.
 * Range    as the series; density, duty, diameter and rotation rate greater than 0; advance speed 0 or more.
 * Returns  `failed` with its reason where no pitch in the range does the duty.
 * Throws   OutOfDomain for area ratio or blades outside the range of the series, unless asked for.
 */
export function bestPitch(request: BestPitchRequest): BestPitch {
  const [low, high] = pitchRange(request.series);
  const { series, outsideRange } = request;
  const warnings = seriesWarnings({ series: { ...series, pitchRatio: low }, outsideRange });
  const duty = pitchDuty(request);
  if (request.fixed.given === "both") return withReynolds(onlyPitch(duty, low, high), request, warnings);
  const candidates = candidatesOf(duty, low, high);
  if (candidates.length === 0) {
    const reason = `No pitch ratio from ${low} to ${high} takes up this power and still pushes at this speed.`;
    return { state: "failed", reason, warnings };
  }
  return withReynolds(firstOptimum(duty, candidates, [low, high]), request, warnings);
}

/** What a duty wants to be great: little power for the thrust, or much thrust of the power. */
function worth({ request }: PitchDuty, { thrust, shaftPower }: PitchCandidate): number {
  return request.duty.given === "thrust" ? -shaftPower : thrust;
}

function candidatesOf(duty: PitchDuty, low: number, high: number): PitchCandidate[] {
  const steps = Math.round((high - low) / STEP);
  return Array.from({ length: steps + 1 }, (_, i) => candidateAt(duty, low + (i * (high - low)) / steps)).filter(
    (found) => found !== null && (duty.planes.nozzleThrust !== null || found.merit < 1),
  ) as PitchCandidate[];
}

function firstOptimum(
  duty: PitchDuty,
  candidates: readonly PitchCandidate[],
  [low, high]: readonly [number, number],
): BestPitch {
  const worths = candidates.map((candidate) => worth(duty, candidate));
  let first = 0;
  while (first < worths.length - 1 && worths[first + 1]! > worths[first]!) first++;
  const further = furtherOptimum(candidates, worths, first);
  if (first === 0 || first === candidates.length - 1) {
    const best = candidates[first]!;
    return { ...found("edge", best, candidates), warnings: [atEdge(best, low, high), ...further] };
  }
  const around = [candidates[first - 1]!.pitchRatio, candidates[first + 1]!.pitchRatio] as const;
  const { at } = goldenMaximum((pitch) => worth(duty, candidateAt(duty, pitch) ?? candidates[first]!), ...around);
  return { ...found("optimum", candidateAt(duty, at) ?? candidates[first]!, candidates), warnings: further };
}

function found(kind: "optimum" | "edge", best: PitchCandidate, candidates: readonly PitchCandidate[]) {
  return { state: "found" as const, kind, best, reynolds: null, candidates: [...candidates] };
}

/** The Reynolds number of the best is known once its size and speed are. */
function withReynolds(result: BestPitch, request: BestPitchRequest, before: readonly Warning[]): BestPitch {
  if (result.state === "failed") return { ...result, warnings: [...before, ...result.warnings] };
  const { series, kinematicViscosity, advanceSpeed, outsideRange } = request;
  const { diameter, rotationRate, pitchRatio } = result.best;
  const reynolds =
    kinematicViscosity === undefined
      ? null
      : seriesReynolds(series, { diameter, rotationRate, advanceSpeed, kinematicViscosity });
  const state = { series: { ...series, pitchRatio }, outsideRange, ...(reynolds === null ? {} : { reynolds }) };
  return { ...result, reynolds, warnings: [...seriesWarnings(state), ...result.warnings] };
}

function atEdge({ pitchRatio }: PitchCandidate, low: number, high: number): Warning {
  const isLow = pitchRatio - low < high - pitchRatio;
  return warning({
    code: "propeller.pitch-at-edge",
    where: "pitchRatio",
    found: `The best pitch ratio lies at the ${isLow ? "lower" : "upper"} edge, ${formatNumber(pitchRatio)}, of what does this duty in the tests of the series`,
    needed: "an optimum between the edges",
    mend: isLow
      ? "A lower pitch at a higher rotation rate would do better still; the motor, cavitation and the Reynolds number set the limit"
      : "A higher pitch at a lower rotation rate would do better still, and was not tested",
  });
}

function furtherOptimum(candidates: readonly PitchCandidate[], worths: readonly number[], first: number): Warning[] {
  const later = worths.indexOf(Math.max(...worths));
  if (worths[later]! <= worths[first]!) return [];
  return [
    warning({
      code: "propeller.second-optimum",
      where: "pitchRatio",
      found: `The polynomials promise more again at a pitch ratio of ${formatNumber(candidates[later]!.pitchRatio)}`,
      needed: "one optimum",
      mend: "The first is kept: further ones are known to come from the polynomials, not from the tests (Helma 2020)",
    }),
  ];
}

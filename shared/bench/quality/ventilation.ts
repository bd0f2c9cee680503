import type { QualityCheck } from "../../model/quality.ts";
import { brownForsythe } from "../../numeric/brownForsythe.ts";
import { moments } from "../../numeric/moments.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import { remembered } from "../remembered.ts";
import type { RunFacts } from "../runFacts.ts";
import { everyNth } from "../settling.ts";
import type { PlateauReadings } from "../writtenPlateau.ts";
import { atBollard, heldStretches } from "./heldStretches.ts";
import { flagged, inPercent, passed, percentText, unjudged } from "./verdict.ts";

/** Loss of thrust and growth of variance that must come together. Common practice, no source. */
const LOSS = 0.03;
const VARIANCE_RATIO = 3;
/** Chance of such a difference of spread by accident. */
const TOO_RARE = 0.001;
/** From this part of the top rotation rate on a plateau is looked at: air comes with load. */
const LOADED_PART = 0.6;
const FEWEST_READINGS = 30;
/** As many readings of a plateau are looked at. */
const MOST_READINGS = 512;

const SUBJECT = {
  code: "bench.ventilation",
  name: "Ventilation",
  limit: `no plateau where thrust is ${percentText(LOSS)} lower and its variance ${VARIANCE_RATIO} times greater at once (common practice)`,
};

/** Thrust over n², thinned, of a stretch; only parts of it are looked at, so that no calibration factor matters. */
interface Stretch {
  readonly held: MeasuredPlateau;
  readonly rate: number;
  readonly ratios: Float64Array;
  readonly mean: number;
}

interface Sign {
  readonly stretch: Stretch;
  /** Variance over what it should be. */
  readonly varianceRatio: number;
  /** Part of the thrust that is missing. */
  readonly loss: number;
  readonly rare: boolean;
  readonly within: boolean;
}

/**
 * Does the propeller draw air? Then thrust drops and starts to flutter: within a plateau (both sides of its greatest
 * step), or from the slower plateaus to the faster ones.
 */
export function ventilation(facts: RunFacts): QualityCheck {
  if (facts.recipe.fluid.kind === "air") return passed(SUBJECT, null, "The run was in air: there is no air to draw.");
  const stretches = heldStretches(facts)
    .map(stretchOf)
    .filter(({ ratios, mean }) => ratios.length >= FEWEST_READINGS && mean !== 0);
  const loaded = stretches.filter(({ rate }) => rate >= LOADED_PART * facts.rest.topRate);
  const slower = slowerOnes(stretches);
  const signs = loaded.flatMap((stretch) => [
    ...withinSign(stretch),
    ...(atBollard(facts) ? betweenSign(stretch, slower) : []),
  ]);
  if (signs.length === 0) {
    return unjudged(
      SUBJECT,
      `No fast plateau holds ${FEWEST_READINGS} readings with spread, so flutter can not be seen.`,
      "Log at 10 readings a second or more, without smoothing in the scale.",
    );
  }
  const found = signs.find(tells) ?? signs.reduce((a, b) => (Math.min(b.loss, 1) > a.loss ? b : a));
  const measured = inPercent(found.loss, {
    after: ` greatest drop of thrust, variance ×${formatNumber(found.varianceRatio, 2)}`,
  });
  if (!tells(found)) return passed(SUBJECT, measured, "Thrust neither drops nor flutters as the load grows.");
  const rpm = formatNumber(found.stretch.rate * 60);
  return flagged(SUBJECT, {
    measured,
    sentence: found.within
      ? `At ${rpm} rpm thrust drops by ${percentText(found.loss)} within the plateau and flutters from then on.`
      : `At ${rpm} rpm thrust is ${percentText(found.loss)} less than the slower plateaus promise, and flutters.`,
    mend: "Look for air drawn down from the surface: lower the propeller, put a plate at the surface above it, and leave the plateaus with air out of the fit.",
  });
}

const tells = ({ varianceRatio, loss, rare }: Sign) => rare && varianceRatio >= VARIANCE_RATIO && loss >= LOSS;

function stretchOf(held: MeasuredPlateau): Stretch {
  const seen = remembered(held.written, { stage: "ventilation", dependsOn: null }, () => {
    const ratios = ratiosOf(held.written.readings);
    return { ratios, mean: ratios.length > 0 ? moments(ratios).mean : 0 };
  });
  return { held, rate: held.rotationRate.mean, ...seen };
}

/** T/n² of evenly picked rows. */
function ratiosOf({ thrust, rotationRate }: PlateauReadings): Float64Array {
  const ratios = new Float64Array(thrust.length);
  for (let i = 0; i < ratios.length; i++) {
    const n = rotationRate[i]!;
    ratios[i] = n > 0 ? thrust[i]! / (n * n) : Number.NaN;
  }
  return everyNth(ratios, MOST_READINGS).slice();
}

/** The split of the stretch with the greatest step of the mean. */
function withinSign(stretch: Stretch): Sign[] {
  const { ratios, mean } = stretch;
  const at = greatestStep(ratios);
  const sides = [ratios.subarray(0, at), ratios.subarray(at)];
  const means = sides.map((side) => moments(side).mean);
  const size = means.map((value) => value * Math.sign(mean));
  const [low, high] = size[0]! < size[1]! ? [0, 1] : [1, 0];
  if (!(size[high]! > 0) || moments(sides[high]!).variance === 0) return [];
  const { varianceRatio, pValue } = brownForsythe(sides[low]!, sides[high]!);
  return [{ stretch, varianceRatio, loss: 1 - size[low]! / size[high]!, rare: pValue < TOO_RARE, within: true }];
}

function greatestStep(values: Float64Array): number {
  const count = values.length;
  const total = values.reduce((sum, value) => sum + value, 0);
  const margin = Math.max(8, count >> 3);
  let [best, at, before] = [-1, count >> 1, 0];
  for (let k = 1; k < count; k++) {
    before += values[k - 1]!;
    if (k < margin || count - k < margin) continue;
    const step = Math.abs(before / k - (total - before) / (count - k)) * Math.sqrt((k * (count - k)) / count);
    if (step > best) [best, at] = [step, k];
  }
  return at;
}

/** Slower plateaus that must be there to say what a faster one should do. */
const FEWEST_SLOWER = 2;
/** A plateau must be slower by this part to count as slower. */
const SLOWER = 0.97;

/** Relative spread falls as thrust grows above the noise floor, so that the next two slower ones bound it from above. */
function betweenSign(stretch: Stretch, slower: SlowerOnes): Sign[] {
  const { nextTwo, expected } = slower(stretch.rate);
  if (nextTwo.length < FEWEST_SLOWER || !Number.isFinite(expected) || expected === 0) return [];
  const next = nextTwo.flatMap(({ ratios, mean }) => Array.from(ratios, (ratio) => ratio / mean));
  if (moments(Float64Array.from(next)).variance === 0) return [];
  const own = stretch.ratios.map((ratio) => ratio / stretch.mean);
  const { varianceRatio, pValue } = brownForsythe(own, next);
  return [{ stretch, varianceRatio, loss: 1 - stretch.mean / expected, rare: pValue < TOO_RARE, within: false }];
}

/** The two next slower than a rate, and the T/n² that all slower ones promise, weighed by n⁴. */
type SlowerOnes = (rate: number) => { readonly nextTwo: readonly Stretch[]; readonly expected: number };

/** Sums are run up once: each stretch would else go through all others. */
function slowerOnes(stretches: readonly Stretch[]): SlowerOnes {
  const byRate = stretches.toSorted((a, b) => a.rate - b.rate);
  const weights = [0];
  const promised = [0];
  byRate.forEach(({ rate, mean }, i) => {
    weights.push(weights[i]! + rate ** 4);
    promised.push(promised[i]! + rate ** 4 * mean);
  });
  return (rate) => {
    const count = countBelow(byRate, SLOWER * rate);
    return {
      nextTwo: byRate.slice(Math.max(0, count - 2), count).reverse(),
      expected: promised[count]! / weights[count]!,
    };
  };
}

function countBelow(byRate: readonly Stretch[], rate: number): number {
  let [low, high] = [0, byRate.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (byRate[middle]!.rate < rate) low = middle + 1;
    else high = middle;
  }
  return low;
}

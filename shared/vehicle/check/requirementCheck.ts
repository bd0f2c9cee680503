import type { DemandCheck, RequirementCheck, VehicleDraws } from "../../model/vehicle/requirementAnswer.ts";
import { normalProbability } from "../../numeric/normalProbability.ts";
import { certaintyInWords } from "../../quantity/certaintyInWords.ts";
import { formatNumber } from "../../quantity/format.ts";
import { cutAtZero, formatTold, hasInterval, notBelowZero, type Told, withoutInterval } from "../../quantity/told.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { atMostWords } from "../motion/wayWarnings.ts";
import { uncertainOf } from "../propulsion/firstOrder.ts";
import { solvedDemands } from "./demands.ts";
import { type DrawnRequirement, requirementDraws } from "./requirementDraws.ts";
import type { DemandQuestion, SolvedDemand } from "./solvedDemand.ts";

/**
 * Whether a vehicle meets what is asked of it, with the probability of each demand by first order and, where drawn, by
 * Monte Carlo of all doubtful inputs.
 *
 *   p = Φ((found − needed)/u);  for a speed  p = Φ(F/u(F)),  F the force left of the thrust at the speed that is needed
 *
 * A speed is not straight in its drag, the force left is: on the sample vehicle 1.5 m/s through the water is met in 99.3 of
 * 100 draws; by the force 99.2, by the speed and its ± 97.4.
 *
 * Source   JCGM 106:2012, 7.2 (conformance probability of a normal result); JCGM 101:2008.
 */
export function requirementCheck(question: DemandQuestion, drawing: VehicleDraws | null): RequirementCheck | null {
  const requirement = question.vehicle.requirement;
  if (requirement === undefined) return null;
  const solved = solvedDemands(question);
  const drawn =
    drawing && solved.length > 0 ? requirementDraws(question.doubts, question.model.numbers, solved, drawing) : null;
  const { confidence } = requirement;
  const demands = [
    ...solved.map((one, i) => demandCheck(question, one, drawn?.each[i] ?? null)),
    ...enduranceChecks(question),
  ];
  const met = demands.every((one) => one.met);
  const certain = demands.every((one) => one.certain);
  return {
    ...{ met, certain, confidence, demands, probabilityAll: drawn?.all ?? null },
    draws: drawing && drawn && { ...drawing, failed: drawn.failed },
    sentence: sentenceOf(demands, confidence),
    warnings: [...manyFailed(drawing, drawn)],
  };
}

function demandCheck(
  { doubts, vehicle, why }: DemandQuestion,
  solved: SolvedDemand,
  drawn: number | null,
): DemandCheck {
  const { demand, name, unit, needed, better, fixed, limitedBy, atMost = false } = solved;
  const base = { demand, name, unit, needed, better, limitedBy };
  const { confidence } = vehicle.requirement!;
  if (solved.found === null) {
    const met = fixed!.met;
    const sure = met ? 1 : 0;
    return {
      ...base,
      found: null,
      margin: null,
      met,
      probability: sure,
      probabilityDrawn: drawn,
      certain: met,
      sentence: `${name}: ${fixed!.text}`,
    };
  }
  const left = solved.left && uncertainOf(doubts, solved.left);
  const found = uncertainOf(doubts, solved.found);
  if (solved.besideDepth && why !== null) {
    return {
      ...base,
      ...judged(base, withoutInterval(found.value, why), { drawn, confidence, probability: null, atMost }),
    };
  }
  const probability = left ? chance(left) : chance(aheadOf(base, found));
  const isSure = (left ?? found).standardUncertainty === 0;
  return { ...base, ...judged(base, boundedBy(demand, found), { drawn, confidence, probability, isSure, atMost }) };
}

/** Speeds over the ground may be negative; what is lifted goes straight with the forces; the rest does neither. */
function boundedBy(demand: DemandCheck["demand"], found: Uncertain): Told {
  if (demand === "speed") return found;
  return demand === "lift" ? cutAtZero(found) : notBelowZero(found);
}

/** How far a result is on the good side of what is needed. */
function aheadOf({ better, needed }: Pick<Asked, "better" | "needed">, { value, standardUncertainty }: Uncertain) {
  return { value: better === "more" ? value - needed : needed - value, standardUncertainty };
}

type Asked = Pick<DemandCheck, "name" | "unit" | "needed" | "better" | "limitedBy">;

interface Judging {
  /** Part of the draws that meet it; null: not drawn. */ readonly drawn: number | null;
  readonly confidence: number;
  /** Of first order; null: it does not hold here. */ readonly probability: number | null;
  /** No doubt is stated at all. */ readonly isSure?: boolean;
  /** What was found is an upper bound, which the probability does not know. */ readonly atMost?: boolean;
}

function judged(
  { name, unit, needed, better, limitedBy }: Asked,
  found: Told,
  { drawn, confidence, probability, isSure = false, atMost = false }: Judging,
) {
  const met = better === "more" ? found.value >= needed : found.value <= needed;
  const likely = drawn ?? probability;
  const certain = likely !== null && likely >= confidence;
  const margin = found.value > 0 ? (better === "more" ? found.value / needed : needed / found.value) - 1 : null;
  const asked = `${better === "more" ? "at least" : "at most"} ${formatNumber(needed)} ${unit}`;
  const sure = isSure && drawn === null ? "" : sureness(likely);
  const bound = atMost ? AT_MOST : "";
  const because = met || limitedBy === null ? "" : ` ${limitedBy.text}`;
  const verdict = met ? (certain ? "met" : "met, but not surely") : "not met";
  const sentence = `${name}: ${atMostWords(formatTold(found, { symbol: unit, factor: 1 }), atMost)} for ${asked}: ${verdict}${sure}.${bound}${because}`;
  return { found, margin, met, probability, probabilityDrawn: drawn, certain, sentence };
}

const AT_MOST =
  " It rests on coefficients that are known at rest only: what it really does, and how sure that is, is less. Measure at speed.";

/** How sure it is; not said where no doubt was stated at all, as nobody is then sure of anything. */
const sureness = (probability: number | null): string =>
  probability === null
    ? "; how sure can only be told by drawing the inputs"
    : `, ${certaintyInWords(probability)} sure`;

/** Φ(a/u): 1 or 0 without doubt. */
function chance({ value, standardUncertainty }: Pick<Uncertain, "value" | "standardUncertainty">): number {
  if (!(standardUncertainty > 0)) return value >= 0 ? 1 : 0;
  return normalProbability(value / standardUncertainty);
}

/** Time is worked out with the charge, by first order alone. */
function enduranceChecks({ vehicle, endurance }: DemandQuestion): DemandCheck[] {
  const { endurance: needed, confidence } = vehicle.requirement!;
  if (needed === undefined) return [];
  const base = {
    demand: "endurance",
    name: "Time it works",
    unit: "s",
    needed,
    better: "more",
    limitedBy: endurance.limitedBy,
  } as const;
  if ("unknown" in endurance) {
    const sentence = `Time it works: not known, as ${endurance.unknown}.`;
    return [
      {
        ...base,
        found: null,
        margin: null,
        met: false,
        probability: null,
        probabilityDrawn: null,
        certain: false,
        sentence,
      },
    ];
  }
  const { time } = endurance;
  const minutes = { symbol: "min", factor: 60 };
  const [probability, isSure] = [
    hasInterval(time) ? chance(aheadOf(base, time)) : null,
    time.standardUncertainty === 0,
  ];
  const one = judged(base, time, { drawn: null, confidence, probability, isSure });
  const verdict = one.met ? (one.certain ? "met" : "met, but not surely") : "not met";
  const sentence = `Time it works ${endurance.text}: ${formatTold(one.found, minutes)} for at least ${formatNumber(needed / 60)} min: ${verdict}${isSure ? "" : sureness(probability)}.${one.met ? "" : ` ${endurance.limitedBy.text}`}`;
  return [{ ...base, ...one, sentence }];
}

function sentenceOf(demands: readonly DemandCheck[], confidence: number): string {
  if (demands.length === 0) return "Nothing is asked of it.";
  const missed = demands.filter(({ met }) => !met);
  const unsure = demands.filter(({ met, certain }) => met && !certain);
  const percent = `${Number((100 * confidence).toPrecision(4))}\u202f%`;
  const first =
    missed.length > 0
      ? `It does not meet ${missed.length} of ${demands.length} demands.`
      : unsure.length > 0
        ? `It meets all ${demands.length} demands by the best estimate, ${unsure.length} of them with less than ${percent} probability.`
        : `It meets all ${demands.length} demands, each with at least ${percent} probability.`;
  const worst = missed[0] ?? unsure[0];
  return worst === undefined ? first : `${first} ${worst.sentence}`;
}

/** Part of the draws that may fail before it is told. */
const FEW = 0.01;

function manyFailed(drawing: VehicleDraws | null, drawn: DrawnRequirement | null): Warning[] {
  if (drawing === null || drawn === null || drawn.failed <= FEW * drawing.draws) return [];
  return [
    warning({
      code: "vehicle.draws-failed",
      where: "requirement",
      found: `${drawn.failed} of ${drawing.draws} draws are not physical, such as a negative resistance; they count as not met`,
      needed: "doubts that are small beside the inputs",
      mend: "State the most doubtful inputs better",
    }),
  ];
}

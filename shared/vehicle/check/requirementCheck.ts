import type { DemandCheck, RequirementCheck, VehicleDraws } from "../../model/vehicle/requirementAnswer.ts";
import { normalProbability } from "../../numeric/normalProbability.ts";
import { certaintyInWords } from "../../quantity/certaintyInWords.ts";
import { formatNumber, formatUncertain } from "../../quantity/format.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { uncertainOf } from "../propulsion/firstOrder.ts";
import { type DemandQuestion, type SolvedDemand, solvedDemands } from "./demands.ts";
import { type DrawnRequirement, requirementDraws } from "./requirementDraws.ts";

/**
 * Whether a vehicle meets what is asked of it, with the probability of each demand by first order and, where drawn, by
 * Monte Carlo of all doubtful inputs.
 *
 *   p = Φ((found − needed)/u);  for a speed  p = Φ(F/u(F)),  F the force left of the thrust at the speed that is needed
 *
 * A speed is not straight in its drag, the force left is: on the sample vehicle 1.5 m/s through the water is met in 98.1 of
 * 100 draws; by the force 97.9, by the speed and its ± 95.4.
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

function demandCheck({ doubts, vehicle }: DemandQuestion, solved: SolvedDemand, drawn: number | null): DemandCheck {
  const { demand, name, unit, needed, better, fixed, limitedBy } = solved;
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
  return { ...base, ...judged(base, uncertainOf(doubts, solved.found), { drawn, confidence, left }) };
}

type Asked = Pick<DemandCheck, "name" | "unit" | "needed" | "better" | "limitedBy">;

interface Judging {
  /** Part of the draws that meet it; null: not drawn. */ readonly drawn: number | null;
  readonly confidence: number;
  /** What says more surely than the result whether it is met: at least 0 where it is. */
  readonly left?: Uncertain | null | undefined;
}

function judged(
  { name, unit, needed, better, limitedBy }: Asked,
  found: Uncertain,
  { drawn, confidence, left }: Judging,
) {
  const ahead = better === "more" ? found.value - needed : needed - found.value;
  const met = ahead >= 0;
  const probability = left ? chance(left.value, left.standardUncertainty) : chance(ahead, found.standardUncertainty);
  const certain = (drawn ?? probability) >= confidence;
  const margin = found.value > 0 ? (better === "more" ? found.value / needed : needed / found.value) - 1 : null;
  const asked = `${better === "more" ? "at least" : "at most"} ${formatNumber(needed)} ${unit}`;
  const sure = sureness(left ?? found, drawn ?? probability);
  const because = met || limitedBy === null ? "" : ` ${limitedBy.text}`;
  const verdict = met ? (certain ? "met" : "met, but not surely") : "not met";
  const sentence = `${name}: ${formatUncertain(found, { symbol: unit, factor: 1 })} for ${asked}: ${verdict}${sure}.${because}`;
  return { found, margin, met, probability, probabilityDrawn: drawn, certain, sentence };
}

/** How sure it is; nothing where no doubt was stated at all, as nobody is then sure of anything. */
function sureness({ standardUncertainty }: Uncertain, probability: number): string {
  return standardUncertainty > 0 ? `, ${certaintyInWords(probability)} sure` : "";
}

/** Φ(a/u): 1 or 0 without doubt. */
function chance(ahead: number, u: number): number {
  if (!(u > 0)) return ahead >= 0 ? 1 : 0;
  return normalProbability(ahead / u);
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
    limitedBy: null,
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
  const found = uncertain(endurance.value, endurance.standardUncertainty);
  const minutes = { symbol: "min", factor: 60 };
  const one = judged(base, found, { drawn: null, confidence });
  const verdict = one.met ? (one.certain ? "met" : "met, but not surely") : "not met";
  const sentence = `Time it works ${endurance.text}: ${formatUncertain(found, minutes)} for at least ${formatNumber(needed / 60)} min: ${verdict}${sureness(found, one.probability)}.`;
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

import { CRITERIA, type ShortlistRequest } from "../model/shortlist.ts";
import type { NearMiss, Shortlist, ShortlistRow } from "../model/shortlistResult.ts";
import { answerInWords } from "./answer.ts";
import { Candidate } from "./candidate.ts";
import { CAUTIONS } from "./cautions.ts";
import { combinationCount } from "./combinations.ts";
import { combinationName, demandsOf, pointsOf, reachesOf, trainOf } from "./details.ts";
import { drawnDemands } from "./drawnDemands.ts";
import { easingOf, failuresOf, partTallies } from "./failures.ts";
import { missInWords } from "./missInWords.ts";
import type { PartRecords } from "./partRecords.ts";
import { doubtfulPoints } from "./pointDoubts.ts";
import type { Ranked } from "./rank.ts";
import { type Scoring, scoresOf } from "./score.ts";
import { scoringOf } from "./shortlist.ts";
import { shortlistWarnings } from "./shortlistWarnings.ts";
import { FRONT_PAIRS, type Miss, type Tally } from "./tally.ts";
import { valuesOf } from "./values.ts";
import { CRITERION_WORDS } from "./words.ts";
import { yardsticks } from "./yardstick.ts";

/** Points of a front that are told at most. */
const FRONT_POINTS = 300;

const METHOD =
  "The score is a weighted sum: for each criterion 0 is the worst and 1 the best of the combinations that meet the requirement, with a straight line between; the weights are divided by their sum. Thrust over power and tip speed are those at the demanded thrust. What a part does not state scores 0; an endurance without end scores 1. Combinations with a propeller of a published series, a yardstick, stand after those with one that is kept, whatever their score.";

/**
 * Every combination of a parts box against a requirement, told: those that meet it, ranked; why the others fail; the
 * nearest misses; what became of each part; fronts of two quantities. From the tally of `searchStretch` over all
 * combinations and the best by `rankStretch`: nothing is kept of a combination but a bit, unless it is told of.
 *
 *   score = Σ w_i s_i,   s_i = (x_i − worst_i)/(best_i − worst_i)   over those that meet,   Σ w_i = 1
 *
 * Source   operating point as shared/drive; weighted sum of normalised criteria, common practice, no source.
 * Assumes  as shared/drive: all thrusters alike, at one throttle, in the steady state.
 * Range    up to 50 million combinations.
 * Error    counts are exact: every combination is judged (see `searchStretch`). Probabilities are first order.
 */
export function finishedShortlist(
  request: ShortlistRequest,
  records: PartRecords,
  tally: Tally,
  ranked: readonly Ranked[],
): Shortlist {
  const { requirement } = request;
  const candidate = new Candidate(records, requirement);
  const scoring = scoringOf(requirement, tally);
  const rows = ranked.map((one, place) => rowOf(candidate, one, { request, scoring, rank: place + 1 }));
  const misses = tally.misses.map((miss) => missOf(candidate, miss));
  const failures = failuresOf(records, tally, (slot, number) => shortfallOf(candidate, slot, number));
  const counts = {
    ...records.sizes,
    combinations: combinationCount(records.sizes),
    meeting: tally.meeting,
    meetingByBestEstimate: tally.meetingByBestEstimate,
    meetingAt95: tally.meetingAt95,
  };
  const told = { counts, rows, failures, misses };
  return {
    answer: answerInWords(requirement, told),
    requirement,
    ...told,
    ranking: rankingOf(candidate, scoring),
    method: METHOD,
    easing: easingOf(failures, records, requirement.confidence),
    parts: partTallies(records, tally),
    fronts: frontsOf(records, tally),
    warnings: shortlistWarnings(request, records, tally),
    cautions: [...CAUTIONS],
  };
}

interface RowAbout {
  readonly request: ShortlistRequest;
  readonly scoring: Scoring;
  readonly rank: number;
}

function rowOf(candidate: Candidate, { number, score }: Ranked, about: RowAbout): ShortlistRow {
  const { request, scoring, rank } = about;
  candidate.take(number);
  const values = valuesOf(candidate);
  const demands = demandsOf(candidate).map(({ margin }) => margin);
  const points = doubtfulPoints(candidate);
  const train = trainOf(candidate);
  const { monteCarlo } = request;
  const drawn = monteCarlo !== undefined && rank <= monteCarlo.rows ? drawnDemands(candidate, monteCarlo) : null;
  const least = demands
    .filter(({ share }) => share !== null)
    .reduce<(typeof demands)[number] | null>((a, b) => (a === null || b.share! < a.share! ? b : a), null);
  const known = demands.flatMap(({ probability }) => (probability === null ? [] : [probability]));
  const finite = (value: number) => (Number.isFinite(value) ? value : null);
  return {
    ...{ rank, score: Math.max(0, score), points, demands, drawn },
    combination: combinationName(candidate.records, number),
    scores: scoresOf(values, scoring, unitOfMargin(candidate)),
    tightest: least === null ? "Nothing is asked that could be tight." : least.sentence,
    probability: known.length === 0 ? null : Math.min(...known),
    ...{ mass: finite(values.mass), price: finite(values.price), endurance: finite(values.endurance) },
    train,
    warnings: yardsticks(train.propeller),
  };
}

function missOf(candidate: Candidate, { number, shortfall }: Miss): NearMiss {
  candidate.take(number);
  const failing = demandsOf(candidate).filter(({ margin }) => !margin.kept);
  const points = pointsOf(candidate);
  const combination = combinationName(candidate.records, number);
  const margins = failing.map(({ margin }) => margin);
  const reaches = reachesOf(candidate);
  const sentence = missInWords(candidate.records.table, { combination, reaches, failing });
  return { combination, shortfall, failing: margins, points, sentence, train: trainOf(candidate) };
}

/** What a combination lacks of a demand, in its unit. */
function shortfallOf(candidate: Candidate, slot: number, number: number): number | null {
  candidate.take(number);
  const { allowed, actual } = candidate.judge;
  const amount = Math.abs(allowed[slot]! - actual[slot]!);
  return Number.isFinite(amount) ? amount : null;
}

/** The thrust margin is a share of the demanded thrust, or a thrust where none is demanded. */
function unitOfMargin({ judge }: Candidate): string {
  return judge.table.duties[0]!.thrust > 0 ? "1" : "N";
}

function rankingOf(candidate: Candidate, { ranges, weights }: Scoring): Shortlist["ranking"] {
  return CRITERIA.map((criterion) => {
    const { better, unit } = CRITERION_WORDS[criterion];
    const { least, greatest } = ranges[criterion];
    const known = Number.isFinite(least);
    const [worst, best] = better === "more" ? [least, greatest] : [greatest, least];
    return {
      ...{ criterion, better, weight: weights[criterion] },
      unit: criterion === "thrustMargin" ? unitOfMargin(candidate) : unit,
      worst: known ? worst : null,
      best: known ? best : null,
    };
  });
}

function frontsOf(records: PartRecords, { fronts }: Tally): Shortlist["fronts"] {
  return FRONT_PAIRS.map(([x, y], pair) => {
    const { points, of } = fronts[pair]!;
    const every = Math.max(1, Math.ceil(points.length / FRONT_POINTS));
    const told = points.filter((_, place) => place % every === 0 || place === points.length - 1);
    return {
      ...{ x, y, of, on: points.length },
      points: told.map((point) => ({ combination: combinationName(records, point.number), x: point.x, y: point.y })),
    };
  });
}

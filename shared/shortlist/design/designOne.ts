import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { SeriesPropeller } from "../../model/seriesPropeller.ts";
import type { PropellerDesign } from "../../model/shortlistDesign.ts";
import { goldenMaximum } from "../../numeric/goldenSection.ts";
import { seriesWarnings } from "../../propeller/series/seriesRange.ts";
import { seriesReynolds } from "../../propeller/series/seriesReynolds.ts";
import { formatNumber } from "../../quantity/format.ts";
import { seriesWords } from "../boxContents.ts";
import type { Candidate } from "../candidate.ts";
import { combinationName, demandsOf, pointsOf } from "../details.ts";
import type { PropellerRecord } from "../partRecords.ts";
import type { SeriesSizes } from "./seriesSizes.ts";

export interface Designing {
  /** Its list of propellers is its own: the one at the combination's place is exchanged. */
  readonly candidate: Candidate;
  readonly sizes: SeriesSizes;
  readonly aim: "thrustPerPower" | "greatestThrust";
  /** Combination of motor, controller, supply and gear. */ readonly number: number;
}

/** Worth of what can not run at all. */
const NOTHING = -1e6;
/** Tolerances of the search, as parts of diameter range and of the pitch ratio. */
const DIAMETER_TOLERANCE = 5e-4;
const PITCH_TOLERANCE = 5e-4;
/** Share of the range within which the best counts as lying at its edge. */
const EDGE = 1e-3;

/** The best propeller of a series for one motor with controller, supply and gear. */
export function designOne(designing: Designing): PropellerDesign {
  const { sizes } = designing;
  const start = bestOnGrid(designing);
  if (start === null) return noDesign(designing);
  const [d, p] = start;
  const { at: diameter, converged } = goldenMaximum(
    (D) => bestPitchAt(designing, D, p).value,
    ...around(sizes.diameters, d),
    { tolerance: DIAMETER_TOLERANCE * (sizes.diameters.at(-1)! - sizes.diameters[0]!) || 1e-9 },
  );
  const best = toEdges(designing, diameter, p);
  return described(designing, best, converged);
}

interface Found {
  readonly diameter: number;
  readonly pitchRatio: number;
}

/** Golden section never reaches an end of its range: where the greatest diameter is as good, it is that. */
function toEdges(designing: Designing, diameter: number, p: number): Found {
  const { diameters } = designing.sizes;
  const tried = [diameter, diameters[0]!, diameters.at(-1)!].map((D) => ({ D, pitch: bestPitchAt(designing, D, p) }));
  const best = tried.reduce((a, b) => (b.pitch.value > a.pitch.value ? b : a));
  return { diameter: best.D, pitchRatio: best.pitch.at };
}

function bestPitchAt(designing: Designing, diameter: number, p: number) {
  const { sizes } = designing;
  const worth = (pitch: number) => worthOf(designing, sizes.at(diameter, pitch));
  const [low, high] = around(sizes.pitches, p);
  const inside = goldenMaximum(worth, low, high, { tolerance: PITCH_TOLERANCE });
  const ends = [low, high].map((at) => ({ at, value: worth(at) }));
  return [inside, ...ends].reduce((a, b) => (b.value > a.value ? b : a));
}

function around(values: readonly number[], place: number): [number, number] {
  return [values[Math.max(0, place - 1)]!, values[Math.min(values.length - 1, place + 1)]!];
}

function bestOnGrid(designing: Designing): readonly [number, number] | null {
  const { sizes } = designing;
  let best: readonly [number, number] | null = null;
  let greatest = NOTHING;
  for (let d = 0; d < sizes.diameters.length; d++) {
    for (let p = 0; p < sizes.pitches.length; p++) {
      const worth = worthOf(designing, sizes.onGrid(d, p));
      if (worth <= greatest) continue;
      greatest = worth;
      best = [d, p];
    }
  }
  return best;
}

/** What is aimed at where every demand is kept (above 0); else the share that is missed (below 0). */
function worthOf({ candidate, number, aim }: Designing, propeller: PropellerRecord | null): number {
  if (propeller === null) return NOTHING;
  put(candidate, propeller);
  candidate.take(number);
  let least = Infinity;
  for (const share of candidate.judge.share) least = Math.min(least, share);
  if (least < 0) return Math.max(NOTHING, least);
  const greatestRate = candidate.greatestRate(0);
  const { solver, table } = candidate.judge;
  const greatest = solver.thrustAt(greatestRate);
  if (!(greatest > 0)) return NOTHING;
  if (aim === "greatestThrust") return greatest;
  const demanded = table.duties[0]!.thrust;
  const rate = demanded > 0 ? candidate.rates[0]! : greatestRate;
  return (demanded > 0 ? demanded : greatest) / solver.runAt(rate).electricalPower;
}

function put({ records }: Candidate, propeller: PropellerRecord): void {
  (records.propellers as PropellerRecord[])[0] = propeller;
}

function namesOf({ candidate, sizes, number }: Designing) {
  const { motor, controller, supply, gear } = combinationName(candidate.records, number);
  return { motor, controller, supply, gear, series: sizes.series };
}

function noDesign(designing: Designing): PropellerDesign {
  const names = namesOf(designing);
  return {
    ...names,
    ...{ state: "none", diameter: null, pitchRatio: null, diameterAtEdge: false, pitchAtEdge: false, reynolds: null },
    ...{ points: [], demands: [], propeller: null, converged: true, warnings: [] },
    sentence: `${names.motor} with ${names.supply}: no propeller of the ${seriesWords(names.series)} runs within the diameters and pitches allowed.`,
  };
}

function described(designing: Designing, { diameter, pitchRatio }: Found, converged: boolean): PropellerDesign {
  const { candidate, sizes, number } = designing;
  const record = sizes.made(diameter, pitchRatio);
  put(candidate, record);
  candidate.take(number);
  const demands = demandsOf(candidate).map(({ margin }) => margin);
  const points = pointsOf(candidate);
  const meets = demands.every(({ kept }) => kept);
  const reynolds = reynoldsAt(designing, diameter, points[0]?.rotationRate);
  const series = { ...sizes.series, pitchRatio } as SeriesPropeller;
  const names = namesOf(designing);
  const [diameters, pitches] = [sizes.diameters, sizes.pitches];
  return {
    ...names,
    ...{ state: meets ? "meets" : "nearest", diameter, pitchRatio, reynolds, points, demands, converged },
    diameterAtEdge: atEdge(diameter, diameters),
    pitchAtEdge: atEdge(pitchRatio, pitches),
    propeller: record.document,
    sentence: sentenceOf(names, { diameter, pitchRatio }, points[0]),
    warnings: seriesWarnings({ series, ...(reynolds !== null && { reynolds }) }),
  };
}

function atEdge(value: number, values: readonly number[]): boolean {
  const [low, high] = [values[0]!, values.at(-1)!];
  return Math.min(value - low, high - value) <= EDGE * (high - low);
}

function reynoldsAt({ candidate, sizes }: Designing, diameter: number, rotationRate: number | undefined) {
  if (rotationRate === undefined || !(rotationRate > 0)) return null;
  const { kinematicViscosity } = fluidProperties(candidate.requirement.water);
  const { advanceSpeed } = candidate.judge.table.duties[0]!;
  return seriesReynolds(sizes.series, { diameter, rotationRate, advanceSpeed, kinematicViscosity });
}

function sentenceOf(
  { motor, supply, series }: ReturnType<typeof namesOf>,
  { diameter, pitchRatio }: Found,
  point: PropellerDesign["points"][number] | undefined,
): string {
  const size = `${formatNumber(1000 * diameter)} mm, P/D ${formatNumber(pitchRatio)}`;
  const does =
    point === undefined
      ? ""
      : `: ${formatNumber(point.thrustPerPower)} N/W at ${formatNumber(point.thrust)} N${point.greatestThrust === null ? "" : `, up to ${formatNumber(point.greatestThrust)} N within all limits`}`;
  return `${motor} with ${supply}, ${seriesWords(series)}, ${size}${does}.`;
}

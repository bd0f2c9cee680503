import type { ShortlistRequirement } from "../../model/shortlist.ts";
import type { PropellerDesign, PropellerDesignRequest, PropellerDesigns } from "../../model/shortlistDesign.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { seriesPropeller } from "../boxContents.ts";
import { Candidate } from "../candidate.ts";
import { CAUTIONS } from "../cautions.ts";
import { combinationCount } from "../combinations.ts";
import type { PartRecords } from "../partRecords.ts";
import { makingOf } from "../recordMaking.ts";
import { recordsOf } from "../recordsOf.ts";
import { requireBox } from "../requireBox.ts";
import { combinationsInWords, countInWords } from "../words.ts";
import { type Designing, designOne } from "./designOne.ts";
import { SeriesSizes } from "./seriesSizes.ts";

/** Combinations of motor, controller, supply, gear and series that are designed for at most. */
const MOST_DESIGNS = 2000;

/**
 * Diameter and pitch of a series propeller that suit each motor with each controller, supply and gear best: the demanded
 * thrust with the least electrical power, or the greatest thrust within all limits.
 *
 * Source   series as `openWaterOfSeries`; operating point as shared/drive. The range of diameter and pitch is walked in
 *          steps, so that no hump is missed that is wider than one, and the best is placed by golden section (Kiefer 1953).
 * Assumes  the Reynolds number of the series; a small, rough propeller does less.
 * Range    diameters from the least, or a quarter of the greatest, up to that of the requirement, which must be stated;
 *          pitch ratios of the series.
 * Yields   the share that is done.
 * Throws   InputProblem `shortlist.empty-box`, `shortlist.no-diameter` or `shortlist.too-many-designs`; OutOfDomain for
 *          blades or an area ratio outside the series.
 */
export function* designPropellersInSteps(request: PropellerDesignRequest): Generator<number, PropellerDesigns> {
  const { requirement, warnings } = designable(request.requirement);
  const [least, greatest] = diameters(request);
  const { propeller } = seriesPropeller({ ...request.series[0]!, pitchRatio: 1 }, greatest);
  const box = { ...request.box, propellers: [propeller], scaleTo: [], series: [] };
  requireBox(requirement, box);
  const records: PartRecords = recordsOf(requirement, box);
  const combinations = combinationCount(records.sizes);
  requireFew(combinations * request.series.length);
  const { motors, supplies } = records;
  const making = makingOf(requirement, { motor: motors[0]!.document, supply: supplies[0]!.document, propeller });
  const designs: PropellerDesign[] = [];
  for (const [place, series] of request.series.entries()) {
    const sizes = new SeriesSizes(making, series, [least, greatest]);
    for (let number = 0; number < combinations; number++) {
      const candidate = new Candidate({ ...records, propellers: [...records.propellers] }, requirement);
      const designing: Designing = { candidate, sizes, aim: request.aim, number };
      designs.push(designOne(designing));
      yield (place * combinations + number + 1) / (combinations * request.series.length);
    }
  }
  const sorted = [...designs].sort((a, b) => worth(b, request.aim) - worth(a, request.aim));
  return { answer: answer(sorted), designs: sorted, warnings, cautions: [...CAUTIONS] };
}

/** A design that meets before one that does not; then by what is aimed at, or by the least left. */
function worth({ state, points, demands }: PropellerDesign, aim: PropellerDesignRequest["aim"]): number {
  if (state === "none") return -Infinity;
  if (state === "nearest") return -1e6 + Math.min(...demands.map(({ share }) => share ?? -1e3));
  const first = points[0];
  return (aim === "thrustPerPower" ? first?.thrustPerPower : first?.greatestThrust) ?? 0;
}

function answer(designs: readonly PropellerDesign[]): string {
  const meeting = designs.filter(({ state }) => state === "meets").length;
  const [best] = designs;
  const head = `${countInWords(meeting)} of ${combinationsInWords(designs.length)} of motor, controller, supply, gear and series ${meeting === 1 ? "has" : "have"} a propeller that meets the requirement.`;
  return best === undefined || best.state === "none"
    ? head
    : `${head} ${meeting > 0 ? "Best" : "Nearest"}: ${best.sentence}`;
}

/** Series are known ahead only, and say nothing of mass and price. */
function designable(requirement: ShortlistRequirement) {
  const { thrustAstern, asternEstimate, ...rest } = requirement;
  const judged = thrustAstern === undefined || asternEstimate !== undefined;
  const ahead: ShortlistRequirement = { ...(judged ? requirement : rest), notStated: "nothing" };
  const warnings: Warning[] = judged
    ? []
    : [
        warning({
          code: "shortlist.series-astern",
          where: "requirement.thrustAstern",
          found: "The thrust astern is left out of the design: the series are not known turning astern",
          needed: "stated shares of the coefficients astern",
          mend: "State them as an estimate, and measure the propeller that is made",
        }),
      ];
  return { requirement: ahead, warnings };
}

function diameters({ requirement, leastDiameter }: PropellerDesignRequest): readonly [number, number] {
  const greatest = requirement.diameter;
  if (greatest !== undefined && (leastDiameter ?? 0) <= greatest) return [leastDiameter ?? greatest / 4, greatest];
  throw new InputProblem({
    code: "shortlist.no-diameter",
    where: "requirement.diameter",
    found:
      greatest === undefined
        ? "The requirement states no greatest diameter, and a larger propeller is nearly always better"
        : "The least diameter is above the greatest",
    needed: "the greatest diameter that fits, and a least one below it",
    mend: "State the room there is for the propeller",
  });
}

function requireFew(count: number): void {
  if (count <= MOST_DESIGNS) return;
  throw new InputProblem({
    code: "shortlist.too-many-designs",
    where: "box",
    found: `${countInWords(count)} propellers would be designed`,
    needed: `at most ${countInWords(MOST_DESIGNS)}`,
    mend: "Design for fewer motors, controllers, supplies, gears or series at a time",
  });
}

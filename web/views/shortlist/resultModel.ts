import type { Criterion } from "../../../shared/model/shortlist.ts";
import type {
  CombinationName,
  CriterionScore,
  DemandMargin,
  DutyPoint,
  FailureCount,
  PointQuantity,
  Shortlist,
  ShortlistRow,
} from "../../../shared/model/shortlistResult.ts";
import { CELSIUS_ZERO } from "../../../shared/quantity/constants.ts";
import { formatNumber, formatQuantity, type ShownUnit } from "../../../shared/quantity/format.ts";
import { pointInWords } from "../../../shared/shortlist/pointInWords.ts";
import { AMPERE, METRE_PER_SECOND, NEWTON, NEWTON_PER_WATT, PERCENT, VOLT } from "../bench/shownUnits.ts";

const THIN = "\u202f";
const GRAM: ShownUnit = { symbol: "g", factor: 1e-3 };
const CELSIUS: ShownUnit = { symbol: "°C", factor: 1, offset: CELSIUS_ZERO };
const MINUTE: ShownUnit = { symbol: "min", factor: 60 };

/** "Motor C with Controller 2, 3.0 : 1, on Six cells". */
export function combinationText({ motor, controller, gear, supply, propeller }: CombinationName): string {
  const between = [controller, gear].filter((part) => part !== null);
  return `${motor}${between.length > 0 ? ` with ${between.join(" and ")}` : ""}, ${propeller}, on ${supply}`;
}

export interface ResultColumn {
  readonly key: string;
  readonly label: string;
  readonly cell: (row: ShortlistRow) => string;
  /** Words, which may break over lines, not a number. */
  readonly isText?: boolean;
}

const ahead = ({ points }: ShortlistRow): DutyPoint | undefined => points.find(({ duty }) => duty === "ahead");
const atDuty = (row: ShortlistRow): DutyPoint | undefined => ahead(row) ?? row.points[0];

/** Columns of the table of those that meet: what is told of each, at the demanded thrust. */
const RESULT_COLUMNS: readonly ResultColumn[] = [
  { key: "score", label: "Score", cell: ({ score }) => formatNumber(score, 2) },
  { key: "motor", label: "Motor", cell: ({ combination }) => combination.motor, isText: true },
  { key: "propeller", label: "Propeller", cell: ({ combination }) => combination.propeller, isText: true },
  { key: "controller", label: "Controller", cell: ({ combination }) => combination.controller ?? "–", isText: true },
  { key: "gear", label: "Gear", cell: ({ combination }) => combination.gear ?? "none", isText: true },
  { key: "supply", label: "Supply", cell: ({ combination }) => combination.supply, isText: true },
  {
    key: "greatest",
    label: "Most it pushes",
    cell: (row) => ofPoint(row, "greatestThrust", NEWTON),
  },
  { key: "current", label: "Supply current", cell: (row) => ofPoint(row, "supplyCurrent", AMPERE) },
  { key: "voltage", label: "Supply voltage", cell: (row) => ofPoint(row, "supplyVoltage", VOLT) },
  { key: "throttle", label: "Throttle", cell: (row) => ofPoint(row, "throttle", PERCENT) },
  {
    key: "thrustPerPower",
    label: "Thrust for its power",
    cell: (row) => ofPoint(row, "thrustPerPower", NEWTON_PER_WATT),
  },
  { key: "tipSpeed", label: "Tip speed", cell: (row) => ofPoint(row, "tipSpeed", METRE_PER_SECOND) },
  { key: "winding", label: "Winding", cell: (row) => ofPoint(row, "windingTemperature", CELSIUS) },
  { key: "mass", label: "Mass", cell: ({ mass }) => quantity(mass, GRAM) },
  { key: "price", label: "Price", cell: ({ price }) => (price === null ? "–" : formatNumber(price, 3)) },
  { key: "endurance", label: "Endurance", cell: ({ endurance }) => quantity(endurance, MINUTE) },
  { key: "tightest", label: "Tightest", cell: ({ tightest }) => tightest, isText: true },
  { key: "sure", label: "How sure", cell: ({ probability, drawn }) => sureText(drawn?.all ?? probability) },
];

/** Columns in which at least one row has something to say; the names of the parts always stand. */
export function shownColumns(rows: readonly ShortlistRow[]): ResultColumn[] {
  return RESULT_COLUMNS.filter(({ cell }) => rows.some((row) => !["–", "none", ""].includes(cell(row))));
}

function quantity(value: number | null, unit: ShownUnit): string {
  return value === null ? "–" : formatQuantity(value, unit, 3);
}

/** A number at the demanded thrust with its doubt, as far as the parts state any. */
function ofPoint(row: ShortlistRow, quantity: PointQuantity, unit: ShownUnit): string {
  const point = atDuty(row);
  return (point && pointInWords(point, quantity, unit)) ?? "–";
}

/** A probability as a person says it; never 100 %, which no measurement allows. */
export function sureText(probability: number | null): string {
  if (probability === null) return "–";
  if (probability > 0.995) return `over 99${THIN}%`;
  if (probability < 0.005) return `under 1${THIN}%`;
  return `${Math.round(100 * probability)}${THIN}%`;
}

/** Demands of one combination, the tightest first. */
export function marginRows(demands: readonly DemandMargin[]): DemandMargin[] {
  const least = ({ share }: DemandMargin) => share ?? Number.POSITIVE_INFINITY;
  return [...demands].sort((a, b) => least(a) - least(b));
}

/** Why combinations fail, with the share of all that is drawn as a bar. */
export function failureBars({
  failures,
  counts,
}: Shortlist): { readonly failure: FailureCount; readonly share: number }[] {
  return failures.map((failure) => ({
    failure,
    share: counts.combinations === 0 ? 0 : failure.count / counts.combinations,
  }));
}

const CRITERION_NAMES: Readonly<Record<Criterion, string>> = {
  thrustPerPower: "thrust for its power",
  mass: "mass",
  price: "price",
  thrustMargin: "thrust to spare",
  tipSpeed: "tip speed",
  endurance: "endurance",
};

/** "0.62 = 0.41 thrust for its power + 0.21 mass". */
export function scoreText({ score, scores }: ShortlistRow): string {
  const parts = scores
    .filter(({ weight }: CriterionScore) => weight > 0)
    .map(({ criterion, contribution }) => `${formatNumber(contribution, 2)} for ${CRITERION_NAMES[criterion]}`);
  return `Score ${formatNumber(score, 2)}${parts.length > 1 ? ` = ${parts.join(" + ")}` : ""}`;
}

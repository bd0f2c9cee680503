import type { BladeElement } from "../../model/bladeElements.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { reynoldsWords } from "../reynoldsWords.ts";
import type { PolarTables } from "../section/polarTables.ts";
import { shareOf, UNREMARKABLE } from "./shareOfBlade.ts";

interface PolarUse {
  readonly elements: readonly BladeElement[];
  /** The section at 0.7 of the radius. */ readonly middle: BladeElement;
  /** k_p, m. */ readonly roughness: number;
}

/** Where polars are used beyond what they were measured for. */
export function polarWarnings(polars: PolarTables, { elements, middle, roughness }: PolarUse): Warning[] {
  return [
    ...slopeWarnings(polars),
    ...angleWarnings(polars, elements),
    ...reynoldsWarnings(polars, middle),
    ...roughnessWarnings(roughness),
  ];
}

const degrees = (angle: number) => `${formatNumber((angle * 180) / Math.PI, 3)}°`;

/** Twice the slope of a thin section, 2π; no section in steady flow lifts so steeply from stall to stall. */
const GREATEST_SLOPE = 4 * Math.PI;

function slopeWarnings({ liftSlope }: PolarTables): Warning[] {
  if (liftSlope <= GREATEST_SLOPE) return [];
  const perDegree = (slope: number) => formatNumber((slope * Math.PI) / 180, 2);
  return [
    warning({
      code: "propeller.polar-steep",
      where: "polars",
      found: `The lift coefficient of the polar rises by ${perDegree(liftSlope)} a degree`,
      needed: `about ${perDegree(2 * Math.PI)}, as of a thin section`,
      mend: "If radians were written under a header of degrees, correct the header",
    }),
  ];
}

function angleWarnings({ angles: [first, last] }: PolarTables, elements: readonly BladeElement[]): Warning[] {
  const share = shareOf(elements, ({ angleOfAttack }) => angleOfAttack < first || angleOfAttack > last);
  if (share <= UNREMARKABLE) return [];
  return [
    warning({
      code: "propeller.polar-beyond-angles",
      where: "polars",
      found: `Over ${formatPercent(share)} of the blade the angle of attack lies outside the polar, ${degrees(first)} to ${degrees(last)}`,
      needed: "",
      mend: "The section is taken as stalled there, as a plate",
    }),
  ];
}

function reynoldsWarnings({ logReynolds }: PolarTables, { reynolds }: BladeElement): Warning[] {
  if (logReynolds.length === 0) return [];
  const [low, high] = [Math.exp(logReynolds[0]!), Math.exp(logReynolds.at(-1)!)];
  if (reynolds >= low && reynolds <= high) return [];
  return [
    warning({
      code: "propeller.polar-beyond-reynolds",
      where: "polars",
      found: `The Reynolds number at 0.7 of the radius, ${reynoldsWords(reynolds)}, lies outside the polars, ${reynoldsWords(low)} to ${reynoldsWords(high)}`,
      needed: "",
      mend: "The nearest polar is used as it is",
    }),
  ];
}

function roughnessWarnings(roughness: number): Warning[] {
  if (roughness === 0) return [];
  return [
    warning({
      code: "propeller.roughness-unused",
      where: "surface.roughness",
      found: "The polars carry the roughness they were measured with; the one given is not used",
      needed: "",
      mend: "Use the lift and drag factors for another finish",
    }),
  ];
}

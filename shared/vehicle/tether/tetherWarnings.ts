import type { SolvedTether, TetherRequest } from "../../model/vehicle/tetherShape.ts";
import { formatQuantity } from "../../quantity/format.ts";
import type { Problem } from "../../quantity/problem.ts";
import { formatTold } from "../../quantity/told.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { HERTZ, METRE, METRE_PER_SECOND, NEWTON } from "./shownUnits.ts";

/** Strouhal number of a round cylinder, Reynolds number 300 to 1e5: Hoerner, Fluid-Dynamic Drag (1965), ch. 3. */
const STROUHAL = 0.2;
/** Flow square to the tether from which strumming is spoken of, m/s, and the coefficient that allows for it; common practice, no source. */
const STRUMMING = { from: 0.1, allowedForBy: 1.5 } as const;
/** Length over straight distance under which stretch, which is not in the model, decides on the tension; common practice, no source. */
const TAUT = 1.001;
/** Part of the length that a tether may pass a plane by before it is told. */
const SLIGHT = 1e-6;

type Shape = Pick<SolvedTether, "points" | "greatestTension" | "greatestNormalSpeed">;

/** What a reader must know of a solved tether. */
export function tetherWarnings(request: TetherRequest, shape: Shape): Warning[] {
  return [
    aboveSurface(request, shape),
    onBottom(request, shape),
    beyondProfile(request, shape),
    taut(request),
    strumming(request, shape),
    overload(request, shape),
  ]
    .filter((problem) => problem !== null)
    .map(warning);
}

const metres = (length: number) => formatQuantity(length, METRE);
const depthsOf = ({ points }: Shape) => points.map(({ depth }) => depth);

function aboveSurface({ tether }: TetherRequest, shape: Shape): Problem | null {
  const highest = -Math.min(...depthsOf(shape));
  if (!(highest > SLIGHT * tether.length)) return null;
  return {
    code: "vehicle.tether-above-surface",
    where: "tether.netWeightPerLength",
    found: `The computed tether rises to ${metres(highest)} above the surface; a real one lies on the water there`,
    needed: "a tether under the surface all along",
    mend: "Take the forces as a rough estimate",
  };
}

function onBottom({ tether, surroundings: { seabedDepth } }: TetherRequest, shape: Shape): Problem | null {
  const deepest = Math.max(...depthsOf(shape));
  if (seabedDepth === undefined || !(deepest > seabedDepth + SLIGHT * tether.length)) return null;
  return {
    code: "vehicle.tether-on-bottom",
    where: "surroundings.seabedDepth",
    found: `The tether hangs down to ${metres(deepest)}, the bottom is at ${metres(seabedDepth)}; a real one lies on the bottom and drags`,
    needed: "a tether clear of the bottom",
    mend: "Pay out less, or use a tether that does not sink",
  };
}

function beyondProfile({ tether, surroundings: { current } }: TetherRequest, shape: Shape): Problem | null {
  if (current.kind === "uniform") return null;
  const [top, bottom] = [current.profile[0]!.depth, current.profile.at(-1)!.depth];
  const depths = depthsOf(shape);
  const [high, deep] = [Math.max(0, Math.min(...depths)), Math.max(...depths)];
  if (!(high < top - SLIGHT * tether.length || deep > bottom + SLIGHT * tether.length)) return null;
  return {
    code: "vehicle.tether-beyond-profile",
    where: "surroundings.current.profile",
    found: `The tether lies between ${metres(high)} and ${metres(deep)}, the current is known from ${metres(top)} to ${metres(bottom)}; its last value is held beyond`,
    needed: "a current for all depths of the tether",
    mend: "Add rows to the table",
  };
}

function taut({ tether, vehicle, given }: TetherRequest): Problem | null {
  if (given.what !== "upperEnd") return null;
  const { forward, starboard, depth } = given.upperEnd;
  const distance = Math.hypot(forward, starboard, vehicle.depth - depth);
  if (tether.length >= TAUT * distance) return null;
  return {
    code: "vehicle.tether-taut",
    where: "tether.length",
    found: `${metres(tether.length)} of tether over ${metres(distance)} is all but taut: its tension depends on its stretch, which is not computed`,
    needed: `at least ${metres(TAUT * distance)}`,
    mend: "Pay out more, or take the tension as an upper bound",
  };
}

function strumming({ tether }: TetherRequest, { greatestNormalSpeed }: Shape): Problem | null {
  const { from, allowedForBy } = STRUMMING;
  if (greatestNormalSpeed < from || tether.normalDragCoefficient >= allowedForBy) return null;
  const frequency = formatQuantity((STROUHAL * greatestNormalSpeed) / tether.diameter, HERTZ);
  return {
    code: "vehicle.tether-strumming",
    where: "tether.normalDragCoefficient",
    found: `Water passes the tether at up to ${formatQuantity(greatestNormalSpeed, METRE_PER_SECOND)} and sheds eddies at about ${frequency}; if the tether strums, its drag is up to twice what a coefficient of ${tether.normalDragCoefficient} gives`,
    needed: "a coefficient of 1.5 to 2.5 for a tether that strums",
    mend: "Compute that case too",
  };
}

function overload({ tether: { strength } }: TetherRequest, { greatestTension }: Shape): Problem | null {
  if (strength === undefined || greatestTension.tension.value <= strength) return null;
  return {
    code: "vehicle.tether-overload",
    where: "tether.strength",
    found: `The tension reaches ${formatTold(greatestTension.tension, NEWTON)}, the tether may carry ${formatQuantity(strength, NEWTON)}`,
    needed: "less tension than the tether may carry",
    mend: "Pay out more, come nearer, or wait for less current; keep clear of a tether under load",
  };
}

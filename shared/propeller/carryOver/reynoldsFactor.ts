import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { BladeSection, CarryOver, CarryOverFactor, CarryOverRequest } from "../../model/carryOver.ts";
import type { FluidState } from "../../model/fluid.ts";
import { formatNumber } from "../../quantity/format.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { bladeReynolds } from "../coefficients.ts";
import { reynoldsWords } from "../reynoldsWords.ts";
import { sectionDrag } from "../section/sectionDrag.ts";
import { bladeSection } from "./bladeSection.ts";
import { between, type DoubtfulFactor, entry } from "./factor.ts";
import { ittcScaleEffect } from "./ittcScaleEffect.ts";
import { type ReynoldsRoute, reynoldsByBlades } from "./reynoldsByBlades.ts";

/**
 * Exponents of the Reynolds number in K_T and K_Q of a small research propeller at rest, Re 1.9e4 to 7.4e4: K_T 0.076,
 * K_Q -0.103. Straight lines through log values by numpy 2.4.6 `polyfit`; its smaller sister (Re 5e3 to 2.9e4) gives
 * 0.043 and -0.045.
 *
 * Source   Deters, Ananda & Selig, Reynolds number effects on the performance of small-scale propellers, AIAA
 *          2014-2151; University of Illinois propeller data set, volume 2, DA4002 of 9 x 6.75 in.
 */
const TREND = { thrust: 0.076, torque: -0.103 } as const;

/**
 * Reynolds number up to which the trend is taken to go on; above it blades of full size are known to change by drag
 * alone.
 */
const TREND_END = 2e5;

/** Most the Reynolds number may change for the trend where the number itself is not known: the trend's own decade. */
const GREATEST_TREND = Math.log(10);

/**
 * Factors on K_T and K_Q from a decade of the blade Reynolds number downwards, by the same trend.
 * @example decadeBelow().thrust // 0.839
 */
export function decadeBelow(): ReynoldsRoute {
  return { thrust: Math.exp(-TREND.thrust * GREATEST_TREND), torque: Math.exp(-TREND.torque * GREATEST_TREND) };
}

/** Doubt of the drag rule itself, as a part of what it changes; common practice, no source. */
const RULE_DOUBT = 0.25;

/** Change of a coefficient up to which the drag rule, made for small ones, is followed. */
const GREATEST_CHANGE = 0.5;

export interface ReynoldsFactor {
  readonly reynolds: CarryOver["reynolds"];
  readonly factor: CarryOverFactor;
}

/**
 * What the change of the blade Reynolds number does to K_T and K_Q.
 *
 * One way to tell is the change of section drag alone (ITTC form), another the trend measured on a small research
 * propeller, where lift changes too; above Re 2e5 both are the drag. Where the shape of the blades is known, blade elements
 * are a third. The middle between least and greatest is taken, with the half-width over sqrt(3) as its standard
 * uncertainty (GUM 4.3.7). Without a blade the bounds are no change at all and the trend.
 *
 * Throws   OutOfDomain `propeller.carry-over-too-far` where drag alone would change a coefficient by more than half;
 *          InputProblem as `checkedGeometry`.
 */
export function reynoldsFactor(request: CarryOverRequest): ReynoldsFactor {
  const { measured, target } = request;
  const blade = bladeSection(request);
  const change = Math.log(relativeReynolds(target) / relativeReynolds(measured));
  if (blade === undefined) {
    const inTrend = Math.sign(change) * Math.min(Math.abs(change), GREATEST_TREND);
    return {
      reynolds: { measured: null, target: null },
      factor: listed(upToTrend(inTrend, "thrust"), upToTrend(inTrend, "torque"), WITHOUT_BLADE),
    };
  }
  const carried = { measured, target, blade };
  const reynolds = { measured: reynoldsOf(measured, carried), target: reynoldsOf(target, carried) };
  const byDrag = dragFactors(reynolds.measured, reynolds.target, carried);
  const byTrend = trendFactors(reynolds, carried);
  const byBlades = reynoldsByBlades(request);
  const routes = [byDrag, byTrend, ...(byBlades === null ? [] : [byBlades])];
  const bounds = (of: "thrust" | "torque") => {
    const all = routes.map((route) => route[of]);
    return withRuleDoubt(between(Math.min(...all), Math.max(...all)), byDrag[of]);
  };
  const reason = `Blade Reynolds number at 0.75 R ${reynoldsWords(reynolds.target)} in place of ${reynoldsWords(reynolds.measured)}. ${toldRoutes(routes)} The middle between least and greatest is taken.${blade.roughness === 0 ? SMOOTH : ""}`;
  return { reynolds, factor: listed(bounds("thrust"), bounds("torque"), reason) };
}

/** The factors of drag, trend and, where there is one, of blade elements, in words. */
function toldRoutes([byDrag, byTrend, byBlades]: readonly ReynoldsRoute[]): string {
  const told = ({ thrust, torque }: ReynoldsRoute) =>
    `${formatNumber(thrust, 4)} on K_T and ${formatNumber(torque, 4)} on K_Q`;
  const ofBlades = byBlades === undefined ? "" : `, blade elements of these blades ${told(byBlades)}`;
  return `Drag alone (ITTC form) gives ${told(byDrag!)}, the trend of a small research propeller (Deters, Ananda & Selig 2014) ${told(byTrend!)}${ofBlades}.`;
}

const SMOOTH = " The blades are taken as smooth; rough ones change less.";

const WITHOUT_BLADE =
  "Chord and pitch are not stated, so that the Reynolds number is not known: between no change and the whole trend of small research propellers (Deters, Ananda & Selig 2014).";

interface Carried extends Pick<CarryOverRequest, "measured" | "target"> {
  readonly blade: BladeSection;
}

type Side = CarryOverRequest["measured"] | CarryOverRequest["target"];

/** n D²/ν: the Reynolds number but for the shape, which is the same on both sides. */
function relativeReynolds({ fluid, rotationRate, diameter }: Side): number {
  return (rotationRate * diameter ** 2) / viscosity(fluid);
}

function viscosity(fluid: FluidState): number {
  return fluidProperties(fluid).kinematicViscosity;
}

function reynoldsOf({ fluid, rotationRate, diameter }: Side, { blade, measured: { advanceRatio } }: Carried): number {
  return bladeReynolds({
    ...{ rotationRate, diameter, radius: 0.75 },
    chord: blade.chordRatio * diameter,
    advanceSpeed: advanceRatio * rotationRate * diameter,
    kinematicViscosity: viscosity(fluid),
  });
}

/** K_T and K_Q after the change of drag over those before. */
function dragFactors(before: number, after: number, { blade, measured, target }: Carried): ReynoldsRoute {
  const { thicknessRatio, roughness, chordRatio } = blade;
  const drag = (reynolds: number, diameter: number) =>
    sectionDrag({ reynolds, thicknessRatio, chord: chordRatio * diameter, roughness });
  const dragChange = drag(before, measured.diameter) - drag(after, target.diameter);
  const { thrust, torque } = ittcScaleEffect({ ...blade, dragChange });
  const factors = {
    thrust: 1 - thrust / measured.thrustCoefficient.value,
    torque: 1 - torque / measured.torqueCoefficient.value,
  };
  const farthest = Math.max(Math.abs(factors.thrust - 1), Math.abs(factors.torque - 1));
  if (farthest > GREATEST_CHANGE) throw tooFar(before, after, farthest);
  return factors;
}

/** The trend up to where it ends, drag alone above. */
function trendFactors({ measured, target }: { measured: number; target: number }, carried: Carried): ReynoldsRoute {
  const above = dragFactors(Math.max(measured, TREND_END), Math.max(target, TREND_END), carried);
  const inTrend = Math.log(Math.min(target, TREND_END) / Math.min(measured, TREND_END));
  return {
    thrust: above.thrust * Math.exp(TREND.thrust * inTrend),
    torque: above.torque * Math.exp(TREND.torque * inTrend),
  };
}

/** Between no change and the whole trend. */
function upToTrend(inTrend: number, of: "thrust" | "torque"): DoubtfulFactor {
  return between(1, Math.exp(TREND[of] * inTrend));
}

function tooFar(before: number, after: number, change: number): OutOfDomain {
  return new OutOfDomain({
    code: "propeller.carry-over-too-far",
    where: "measured.rotationRate",
    found: `From a blade Reynolds number at 0.75 R of ${reynoldsWords(before)} to ${reynoldsWords(after)} the drag alone would change a coefficient by ${formatNumber(100 * change)} %`,
    needed: `at most ${100 * GREATEST_CHANGE} %`,
    mend: "Measure faster, larger or in water, nearer to the Reynolds number at work",
  });
}

function withRuleDoubt({ factor, uncertainty }: DoubtfulFactor, byDrag: number): DoubtfulFactor {
  return { factor, uncertainty: Math.hypot(uncertainty, (RULE_DOUBT * (byDrag - 1)) / factor) };
}

function listed(thrust: DoubtfulFactor, torque: DoubtfulFactor, reason: string): CarryOverFactor {
  return entry({ cause: "reynolds", actsOn: "coefficients", reason }, thrust, torque);
}

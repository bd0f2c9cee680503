import { type CoefficientPair, coefficientPair, pairFromMerit } from "../../../shared/drive/coefficientPair.ts";
import { measuredCurve, seriesPropellerCurve, withShapeOf } from "../../../shared/drive/propellerCurves.ts";
import type { DrivePropeller, PropellerCurve, PropellerSource } from "../../../shared/model/drivePropeller.ts";
import type { FluidState } from "../../../shared/model/fluid.ts";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { areaRatioOf } from "../../../shared/propeller/series/areaRatioOf.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { wholeRate } from "../theory/subject.ts";
import { reductionsOf, type VariantRuns } from "../variants/variantGroups.ts";
import { meanStaticMerit, meanThrustCoefficient, meanTorqueCoefficient } from "../variants/variantMean.ts";

/** Where a torque coefficient comes from. */
export type TorqueSource = "torque" | "motorConstants" | "statedMerit" | PropellerSource;

/** A propeller with the evidence behind it, as Drive, Shortlist and Vehicle take it. */
export interface PropellerInHand {
  readonly name: string;
  readonly style: number;
  readonly propeller: DrivePropeller;
  readonly torqueSource: TorqueSource;
  /** Mountings behind the coefficients; 0 for typed and computed ones. */
  readonly runs: number;
  /** Static merit of all its mountings; absent where none was measured. */
  readonly staticMerit?: Uncertain;
  /** Where it was measured; absent for typed and computed ones. */
  readonly stand?: { readonly fluid: FluidState; readonly topRate: number; readonly part: Propeller | undefined };
}

export interface MeasuredVariant {
  readonly group: VariantRuns;
  /** Static merit that stands in where no torque was measured. */
  readonly merit: number;
  /** The propeller among the parts. */
  readonly part: Propeller | undefined;
}

/** Where the chord is not known, for the shape at speed alone, which hardly hangs on it. Common practice, no source. */
const USUAL_AREA_RATIO = 0.5;

/** A variant of the bench as a drive takes it; null where it has no thrust coefficient yet. */
export function measuredPropeller({ group, merit, part }: MeasuredVariant): PropellerInHand | null {
  const reductions = reductionsOf(group);
  const [first] = reductions;
  const thrustCoefficient = meanThrustCoefficient(reductions);
  if (first === undefined || thrustCoefficient === null || !(thrustCoefficient.value > 0)) return null;
  const torqueCoefficient = meanTorqueCoefficient(reductions);
  const source = reductions.find(({ powerSource }) => powerSource !== null)?.powerSource ?? "statedMerit";
  const pair =
    torqueCoefficient === null
      ? pairFromMerit(thrustCoefficient, { value: merit, standardUncertainty: 0 })
      : coefficientPair({ thrustCoefficient, torqueCoefficient, runs: reductions, isSameCopy: true });
  const staticMerit = meanStaticMerit(reductions);
  const run = group.members[0]!.run;
  const { curve, from } = aheadCurve(pair, reductions, part);
  const astern = asternCurve(reductions);
  const rates = reductions.flatMap(({ plateaus }) => plateaus.map(({ rotationRate }) => rotationRate.value));
  return {
    name: group.name,
    style: group.style,
    torqueSource: torqueCoefficient === null ? "statedMerit" : source,
    runs: reductions.length,
    ...(staticMerit !== null && { staticMerit }),
    stand: { fluid: run.recipe.fluid, topRate: wholeRate(Math.max(...rates)), part },
    propeller: {
      name: group.name,
      source: "measured",
      from,
      // The same propeller with the same diameter was on the stand: what its diameter is wrong by cancels in the thrust.
      diameter: { value: first.diameter.value, standardUncertainty: 0 },
      ahead: curve,
      ...(astern && { astern }),
      ...shapeOf(part),
    },
  };
}

/** Measured at rest; at speed by a tow of the same variant, else by the shape of the series most like it. */
function aheadCurve(
  pair: CoefficientPair,
  reductions: readonly Reduction[],
  part: Propeller | undefined,
): { readonly curve: PropellerCurve; readonly from: string } {
  const advance = reductions.find((one) => one.advance?.powerCurve)?.advance;
  if (advance) return { curve: measuredCurve(pair, advance), from: "measured at rest and at speed" };
  const series = part && likeSeries(part);
  if (!series) return { curve: measuredCurve(pair), from: "measured at rest" };
  const shape = seriesPropellerCurve({ series, outsideRange: true }).curve;
  return {
    curve: { ...measuredCurve(pair), ...withShapeOf(pair, shape) },
    from: "measured at rest; at speed by the shape of the series of equal pitch, scaled to it",
  };
}

function likeSeries(part: Propeller) {
  const { bladeCount, pitchRatio, nozzle } = part;
  if (pitchRatio === undefined) return null;
  if (nozzle) return { family: "ka-4-70-19a", pitchRatio } as const;
  const blades = Math.min(7, Math.max(2, bladeCount ?? 3));
  return {
    family: "wageningen-b",
    blades,
    pitchRatio,
    areaRatio: areaRatioOf({ ...part, bladeCount: blades }) ?? USUAL_AREA_RATIO,
  } as const;
}

function asternCurve(reductions: readonly Reduction[]): PropellerCurve | undefined {
  const reverse = reductions.find((one) => one.reverse?.torqueCoefficient)?.reverse;
  if (!reverse?.torqueCoefficient) return undefined;
  const { thrustCoefficient, torqueCoefficient, thrustFit, powerFit } = reverse;
  return coefficientPair({ thrustCoefficient, torqueCoefficient, runs: [{ thrustFit, powerFit }], isSameCopy: true });
}

function shapeOf(part: Propeller | undefined) {
  if (part === undefined) return { nozzle: false };
  const { bladeCount, pitchRatio, nozzle, mass, price } = part;
  const areaRatio = areaRatioOf(part);
  return {
    nozzle,
    ...(bladeCount !== undefined && { bladeCount }),
    ...(pitchRatio !== undefined && { pitchRatio }),
    ...(areaRatio !== null && { areaRatio }),
    ...(mass !== undefined && { mass }),
    ...(price !== undefined && { price }),
  };
}

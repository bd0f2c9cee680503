import type { Reduction } from "../../../shared/model/reduction.ts";
import { bollardEstimate, limitThrust, thrustOfMerit } from "../../../shared/propeller/bollardEstimate.ts";
import { powerCoefficient } from "../../../shared/propeller/coefficients.ts";
import { formatQuantity } from "../../../shared/quantity/format.ts";
import { scaled, type Uncertain } from "../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../charts/chartSpec.ts";
import { thrustScale } from "../bench/fitCharts.ts";
import { plateauName } from "../bench/plateausModel.ts";
import { MILLIMETRE, RPM } from "../bench/shownUnits.ts";
import { freeStyle } from "../variants/variantGroups.ts";
import { meanThrustCoefficient } from "../variants/variantMean.ts";
import type { MeasuredVariant, TheoryInputs } from "./theoryModel.ts";

export type PowerKind = "shaftPower" | "electricalPower";

const STEPS = 40;

/** Measured thrust against power, the prediction of the stated merit, and the region momentum theory rules out. */
export function thrustPowerChart(
  variants: readonly MeasuredVariant[],
  inputs: TheoryInputs,
  kind: PowerKind,
): ChartSpec {
  const measured = variants.map((variant) => powerSeries(variant, kind)).filter((series) => series.points.length > 0);
  const reach = greatest(measured) * 1.08 || statedPower(inputs, kind) * 1.3;
  const passed = kind === "shaftPower" ? 1 : inputs.driveEfficiency;
  const name = kind === "shaftPower" ? "shaft power" : "electrical power";
  return {
    title: `Thrust against ${name} with the momentum limit`,
    x: { label: name[0]!.toUpperCase() + name.slice(1), unit: "W", min: 0 },
    y: { label: "Bollard thrust", unit: "N", min: 0 },
    series: [
      // Even a lossless motor passes on no more than it takes, so the limit for electrical power is that of the shaft.
      {
        id: "limit",
        name: `Momentum limit of a ${formatQuantity(inputs.diameter, MILLIMETRE)} disc`,
        kind: "limit",
        style: 0,
        points: curve(reach, (power) => limitThrust(power, inputs)),
      },
      {
        id: "prediction",
        name: `Prediction, static merit ${inputs.staticMerit.toFixed(2)}`,
        kind: "prediction",
        style: freeStyle(variants),
        points: curve(reach, (power) => thrustOfMerit(power * passed, inputs.staticMerit, inputs)),
      },
      ...measured,
    ],
  };
}

/** Measured thrust and fit against rotation rate, with what the stated merit would make of the same shaft power. */
export function thrustRateChart(variants: readonly MeasuredVariant[], inputs: TheoryInputs): ChartSpec {
  const measured = variants.map(rateSeries).filter((series) => series.points.length > 0);
  const reach = greatest(measured) * 1.05;
  const driver = mostPowerful(variants);
  return {
    title: "Thrust against rotation rate with the prediction",
    x: { label: "Rotation rate", unit: "rpm", min: 0 },
    y: { label: "Bollard thrust", unit: "N", min: 0 },
    series: [
      ...(driver === null ? [] : samePowerSeries(driver, { inputs, reach, style: freeStyle(variants) })),
      ...variants.flatMap((variant) => fitSeries(variant, reach)),
      ...measured,
    ],
  };
}

interface Driver {
  readonly name: string;
  readonly reduction: Reduction;
  readonly powerCoefficient: Uncertain;
}

/** The variant that takes the most shaft power at a rotation rate: the limit at its power holds for the others too. */
function mostPowerful(variants: readonly MeasuredVariant[]): Driver | null {
  const known = variants.flatMap(({ name, reductions }) =>
    reductions.flatMap((reduction): Driver[] =>
      reduction.powerCoefficient === null ? [] : [{ name, reduction, powerCoefficient: reduction.powerCoefficient }],
    ),
  );
  const power = (one: Driver) => shaftPowerAt(one.reduction, one.powerCoefficient.value, 1);
  return known.reduce<Driver | null>((most, one) => (most === null || power(one) > power(most) ? one : most), null);
}

/** Limit and prediction at the shaft power that `reduction` measured at each rotation rate; the band is that of C_P. */
function samePowerSeries(
  { name, reduction, powerCoefficient: coefficient }: Driver,
  { inputs, reach, style }: { readonly inputs: TheoryInputs; readonly reach: number; readonly style: number },
): ChartSeries[] {
  const disc = { ...inputs, density: reduction.fluid.density, diameter: reduction.diameter.value };
  const along = (thrustAt: (shaftPower: number) => number) =>
    curve(reach, (rpm) => thrustAt(shaftPowerAt(reduction, coefficient.value, rpm * RPM.factor)));
  const banded = curve(reach, (rpm) => rpm).map(({ x }): ChartPoint => {
    if (x === 0) return { x, y: 0 };
    const thrust = (c: number) =>
      thrustOfMerit(shaftPowerAt(reduction, Math.max(c, 1e-9), x * RPM.factor), inputs.staticMerit, disc);
    const [low, high] = coefficient.interval95;
    return { x, y: thrust(coefficient.value), yInterval: [thrust(low), thrust(high)] };
  });
  return [
    {
      id: "limit",
      name: `Momentum limit at the shaft power of ${name}`,
      kind: "limit",
      style: 0,
      points: along((power) => limitThrust(power, disc)),
    },
    {
      id: "prediction",
      name: `Static merit ${inputs.staticMerit.toFixed(2)} at the shaft power of ${name}`,
      kind: "prediction",
      style,
      points: banded,
    },
  ];
}

function shaftPowerAt({ fluid, diameter }: Reduction, coefficient: number, rotationRate: number): number {
  const ofOneWatt = powerCoefficient({ shaftPower: 1, density: fluid.density, rotationRate, diameter: diameter.value });
  return coefficient / ofOneWatt;
}

function powerSeries({ name, style, reductions }: MeasuredVariant, kind: PowerKind): ChartSeries {
  const points = reductions.flatMap(({ plateaus }) =>
    plateaus.flatMap((plateau, index): ChartPoint[] => {
      const power = plateau[kind];
      if (power === null || !plateau.used) return [];
      return [
        {
          x: power.value,
          xInterval: power.interval95,
          ...thrustOf(plateau.thrust),
          note: `${name}, ${plateauName(index)}`,
        },
      ];
    }),
  );
  return { id: `measured-${name}`, name, legend: name, kind: "measured", style, points };
}

function rateSeries({ name, style, reductions }: MeasuredVariant): ChartSeries {
  const points = reductions.flatMap(({ plateaus }) =>
    plateaus.flatMap((plateau, index): ChartPoint[] =>
      plateau.used
        ? [
            {
              x: plateau.rotationRate.value / RPM.factor,
              ...thrustOf(plateau.thrust),
              note: `${name}, ${plateauName(index)}`,
            },
          ]
        : [],
    ),
  );
  return { id: `measured-${name}`, name, legend: name, kind: "measured", style, points };
}

/** The line of the variant's mean coefficient, in the water and with the diameter of its first run. */
function fitSeries({ name, style, reductions }: MeasuredVariant, reach: number): ChartSeries[] {
  const [reduction] = reductions;
  const coefficient = meanThrustCoefficient(reductions);
  if (reduction === undefined || coefficient === null) return [];
  const points = curve(reach, (rpm) => rpm).map(({ x }): ChartPoint => {
    if (x === 0) return { x, y: 0, yInterval: [0, 0] };
    const thrust = scaled(coefficient, thrustScale(reduction, x * RPM.factor));
    return { x, y: thrust.value, yInterval: thrust.interval95 };
  });
  return [{ id: `fit-${name}`, name: `Fit, ${name}`, legend: name, kind: "fit", style, points }];
}

function thrustOf(thrust: Uncertain): Pick<ChartPoint, "y" | "yInterval"> {
  return { y: thrust.value, yInterval: thrust.interval95 };
}

/** Points from zero to `reach`, closer together near zero, where thrust against power bends most. */
function curve(reach: number, y: (x: number) => number): ChartPoint[] {
  if (!(reach > 0)) return [];
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const x = reach * (step / STEPS) ** 2;
    return { x, y: step === 0 ? 0 : y(x) };
  });
}

function greatest(series: readonly ChartSeries[]): number {
  return Math.max(0, ...series.flatMap((one) => one.points.map((point) => point.xInterval?.[1] ?? point.x)));
}

function statedPower(inputs: TheoryInputs, kind: PowerKind): number {
  return bollardEstimate(inputs)[kind];
}

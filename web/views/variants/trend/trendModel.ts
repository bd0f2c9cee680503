import type { Optimum, RunQuantityName, Trend } from "../../../../shared/model/trend.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../../../shared/propeller/coefficients.ts";
import { openWaterOfSeries } from "../../../../shared/propeller/series/openWaterOfSeries.ts";
import { staticMerit } from "../../../../shared/propeller/staticMerit.ts";
import { formatNumber, formatUncertain } from "../../../../shared/quantity/format.ts";
import { uncertain } from "../../../../shared/quantity/uncertain.ts";
import { capitalised } from "../../../app/words.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";

export const QUANTITY_NAMES: Readonly<Record<RunQuantityName, string>> = {
  thrustCoefficient: "Thrust coefficient",
  powerCoefficient: "Power coefficient",
  staticMerit: "Static merit",
  thrustAtElectricalPower: "Thrust at an electrical power",
  thrustAtThrottle: "Thrust at a throttle",
};

/** A series propeller whose curve over the pitch ratio lies behind the measured one. */
export interface TheoryScrew {
  readonly blades: number;
  readonly areaRatio: number;
}

/** Runs over the factor, their curve with its band, and what a series of equal blades does. */
export function trendPicture(trend: Trend, styleOf: (variant: string) => number, screw: TheoryScrew | null): ChartSpec {
  const { scale, unit } = axisOf(trend);
  const at = (x: number) => x / scale;
  const variants = [...new Set(trend.points.map(({ variant }) => variant))];
  return {
    title: `${capitalised(trend.quantityTitle)} against ${trend.factorTitle}`,
    x: { label: capitalised(trend.factorTitle), unit },
    y: { label: capitalised(trend.quantityTitle), unit: trend.quantityUnit === "1" ? "" : trend.quantityUnit, min: 0 },
    numbered: true,
    series: [
      {
        id: "trend",
        name: trend.order === 1 ? "Straight line through the runs" : "Curve of second order through the runs",
        kind: "fit",
        style: TREND_STYLE,
        points: trend.band.map(({ x, value, interval95 }) => ({ x: at(x), y: value, yInterval: [...interval95] })),
      },
      ...theorySeries(trend, screw),
      ...variants.map(
        (variant): ChartSeries => ({
          ...{ id: `runs-${variant}`, name: variant || "runs", kind: "measured", style: styleOf(variant) },
          points: runPoints(trend, variant, at),
        }),
      ),
    ],
    ...(trend.optimum?.inside
      ? {
          markers: [
            {
              x: at(trend.optimum.at.value),
              label: `${trend.optimum.kind} ${formatNumber(at(trend.optimum.at.value))}`,
            },
          ],
        }
      : {}),
  };
}

function runPoints({ points }: Trend, variant: string, at: (x: number) => number): ChartPoint[] {
  return points
    .filter((point) => point.variant === variant)
    .map(({ x, value, standardUncertainty, run }) => {
      return { x: at(x), y: value, yInterval: uncertain(value, standardUncertainty).interval95, note: run };
    });
}

const TREND_STYLE = 4;
const THEORY_STYLE = 9;

/** The B series over the pitch ratio at bollard, where the quantity is one that a series has. */
function theorySeries({ factor, quantity, band }: Trend, screw: TheoryScrew | null): ChartSeries[] {
  if (factor !== "pitchRatio" || screw === null) return [];
  const points = band.flatMap(({ x: pitchRatio }): ChartPoint[] => {
    const series = { family: "wageningen-b", ...screw, pitchRatio } as const;
    const point = openWaterOfSeries({ series, advanceRatio: 0, outsideRange: true });
    const y = ofSeries(quantity, point.thrustCoefficient, point.torqueCoefficient);
    return y === null ? [] : [{ x: pitchRatio, y }];
  });
  if (points.length === 0) return [];
  const name = `B ${screw.blades}-${Math.round(100 * screw.areaRatio)}, smooth and large`;
  return [{ id: "series", name, kind: "prediction", style: THEORY_STYLE, points }];
}

function ofSeries(quantity: RunQuantityName, thrustCoefficient: number, torqueCoefficient: number): number | null {
  const powerCoefficient = torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT;
  if (quantity === "thrustCoefficient") return thrustCoefficient;
  if (quantity === "powerCoefficient") return powerCoefficient;
  return quantity === "staticMerit" ? staticMerit({ thrustCoefficient, powerCoefficient }) : null;
}

/** Lengths are shown in millimetres. */
function axisOf({ factorUnit, factor }: Trend): { readonly scale: number; readonly unit: string } {
  if (factorUnit !== "m") return { scale: 1, unit: factorUnit === "1" ? "" : factorUnit };
  return factor === "immersion" ? { scale: 1, unit: "m" } : { scale: 1e-3, unit: "mm" };
}

/** Where the curve turns, or that it does so outside what was measured. */
export function optimumWords(trend: Trend, optimum: Optimum): string {
  const { scale, unit } = axisOf(trend);
  const where = formatUncertain(optimum.at, { symbol: unit, factor: scale });
  if (!optimum.inside) return `No ${optimum.kind} lies inside what was measured; the curve would turn at ${where}.`;
  return `The ${optimum.kind} lies at ${where}.`;
}

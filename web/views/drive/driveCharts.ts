import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { ChartMarker, ChartPoint, ChartSpec } from "../../charts/chartSpec.ts";
import type { Driven } from "./driveModel.ts";
import type { AgainstVoltage } from "./driveState.ts";
import { POINT_QUANTITIES, type PointQuantity } from "./pointText.ts";

/** Steps of a sweep from zero to full throttle; a sweep that the supply cuts short has fewer points. */
export const SWEEP_STEPS = 40;

export const SHOWN_CHOICES: readonly { readonly value: PointQuantity; readonly label: string }[] = POINT_QUANTITIES.map(
  ({ key, name }) => ({ value: key, label: name }),
);

/** One quantity against throttle, every propeller side by side, with bands. */
export function throttlePicture(driven: readonly Driven[], throttle: number, quantity: PointQuantity): ChartSpec {
  const { name, axis, unit } = quantityOf(quantity);
  return {
    title: `${name} against throttle`,
    x: { label: "Throttle", unit: "%", min: 0, max: 100 },
    y: { label: axis ?? name, unit: unit.symbol, ...fromZero(quantity) },
    series: driven
      .filter(({ sweep }) => sweep.length > 0)
      .map(({ inHand, sweep }) => ({
        id: `${quantity}-${inHand.name}`,
        name: inHand.name,
        kind: "prediction" as const,
        style: inHand.style,
        points: sweep.map((point, step) => shownPoint(point, (100 * step) / SWEEP_STEPS, quantity)),
      })),
    markers: [{ x: throttle * 100, label: `${Math.round(100 * throttle)} %` }, ...firstLimit(driven)],
  };
}

/** The same against the open-circuit voltage of the supply, at the chosen throttle. */
export function voltagePicture(
  against: readonly AgainstVoltage[],
  throttle: number,
  quantity: PointQuantity,
): ChartSpec {
  const { name, axis, unit } = quantityOf(quantity);
  return {
    title: `${name} against supply voltage at ${Math.round(100 * throttle)} % throttle`,
    x: { label: "Open-circuit voltage", unit: "V" },
    y: { label: axis ?? name, unit: unit.symbol, ...fromZero(quantity) },
    series: against.map(({ inHand, points }) => ({
      id: `${quantity}-${inHand.name}`,
      name: inHand.name,
      kind: "prediction" as const,
      style: inHand.style,
      points: points.map(({ voltage, point }) => shownPoint(point, voltage, quantity)),
    })),
  };
}

/** Efficiency of each link of the chain over the throttle, for one propeller. */
export function chainPicture({ inHand, sweep }: Driven): ChartSpec {
  const links = [
    ["supply", "Pack and leads"],
    ["controller", "Controller"],
    ["motor", "Motor"],
    ["gear", "Gear"],
    ["propeller", "Propeller"],
  ] as const;
  const used = links.filter(([key]) => key !== "gear" || hasGear(sweep));
  return {
    title: `Efficiency of each link over the throttle, ${inHand.name}`,
    x: { label: "Throttle", unit: "%", min: 0, max: 100 },
    y: { label: "Power out over power in", unit: "%", min: 0, max: 100 },
    series: used.map(([key, name], style) => ({
      ...{ id: key, name, style },
      kind: "prediction" as const,
      points: sweep.flatMap((point, step) =>
        point.rotationRate > 0 ? [{ x: (100 * step) / SWEEP_STEPS, y: 100 * point.efficiencies[key] }] : [],
      ),
    })),
  };
}

/** A gear that loses nothing is none; a rotor at rest tells nothing. */
const hasGear = (sweep: readonly OperatingPoint[]) =>
  sweep.some(({ efficiencies, rotationRate }) => rotationRate > 0 && efficiencies.gear < 1 - 1e-9);

const quantityOf = (quantity: PointQuantity) => POINT_QUANTITIES.find(({ key }) => key === quantity)!;

/** A temperature has no zero worth showing. */
const fromZero = (quantity: PointQuantity) => (quantity === "windingTemperature" ? {} : { min: 0 });

function shownPoint(point: OperatingPoint, x: number, quantity: PointQuantity): ChartPoint {
  const { unit } = quantityOf(quantity);
  const shown = (si: number) => si / unit.factor - (unit.offset ?? 0);
  const doubt = point.uncertainties?.[quantity];
  const y = shown(point[quantity]);
  if (doubt === undefined) return { x, y };
  return { x, y, yInterval: [shown(doubt.interval95[0]), shown(doubt.interval95[1])] };
}

/** Where the first limit of all is met; which one it is, and those of the others, are told in words beside the picture. */
function firstLimit(driven: readonly Driven[]): ChartMarker[] {
  const reached = driven.flatMap(({ point }) =>
    (point?.limits ?? []).flatMap((limit) => limit.reachedAtThrottle ?? []),
  );
  return reached.length === 0 ? [] : [{ x: 100 * Math.min(...reached), label: "first limit" }];
}

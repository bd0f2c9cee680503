import type { BladeGeometryAnswer } from "../../../../shared/model/bladeElements.ts";
import type { BladeGeometry } from "../../../../shared/model/bladeGeometry.ts";
import type { Propeller } from "../../../../shared/model/parts/propeller.ts";
import { plainGeometry } from "../../../../shared/propeller/blade/plainGeometry.ts";
import { areaRatioOf } from "../../../../shared/propeller/series/areaRatioOf.ts";
import { seriesGeometry } from "../../../../shared/propeller/series/seriesGeometry.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { bladeGeometryOf } from "../../../../shared/sections/bladeGeometryOf.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";

const DEGREE = Math.PI / 180;

/** The table of a blade as text, in the units builders measure in; it can be read back. */
export function tableText({ stations }: BladeGeometry): string {
  const skewed = stations.some(({ skew }) => skew !== undefined);
  const head = `radius (mm); chord (mm); pitch angle (deg); thickness (mm); camber (mm)${skewed ? "; skew (deg)" : ""}`;
  const rows = stations.map(({ radius, chord, pitchAngle, thickness, camber, skew = 0 }) =>
    [
      ...[radius, chord].map(millimetres),
      written(pitchAngle / DEGREE),
      ...[thickness, camber].map(millimetres),
      ...(skewed ? [written(skew / DEGREE)] : []),
    ].join("; "),
  );
  return [head, ...rows].join("\n");
}

const millimetres = (metres: number) => written(metres * 1000);
const written = (value: number) => String(Number(value.toPrecision(5)));

export type ShapeRead = { readonly read: BladeGeometryAnswer } | { readonly problem: string };

/** The blade that `text` describes, or in words what is wrong with it. */
export function shapeOf(
  text: string,
  frame: { readonly bladeCount: number; readonly diameter: number; readonly hubDiameter: number | null },
): ShapeRead {
  if (text.trim() === "") return { problem: "Paste or type one row a radius, or let an outline be made." };
  const { hubDiameter, ...rest } = frame;
  try {
    return {
      read: bladeGeometryOf({ from: "table", text, ...rest, ...(hubDiameter === null ? {} : { hubDiameter }) }),
    };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

export type OutlineName = "series" | "elliptic" | "constant";
export const OUTLINES: Readonly<Record<OutlineName, string>> = {
  series: "Wageningen B outline",
  elliptic: "Elliptic",
  constant: "Equal chord",
};

export interface OutlineDraft {
  readonly outline: OutlineName;
  readonly pitchRatio: number;
  readonly areaRatio: number;
  readonly thicknessRatio: number;
  readonly camberRatio: number;
}

/** The outline that fits what is known of a propeller: its pitch ratio, and the area that its chord at 0.7 R makes. */
export function outlineLike(propeller: Propeller): OutlineDraft {
  const areaRatio = areaRatioOf(propeller) ?? 0.4;
  return {
    outline: "series",
    pitchRatio: propeller.pitchRatio ?? 0.8,
    areaRatio: Math.round(Math.min(Math.max(areaRatio, 0.3), 1.05) * 100) / 100,
    thicknessRatio: 0.08,
    camberRatio: 0.04,
  };
}

/** A blade of that outline; in words why there is none. */
export function madeOutline(
  draft: OutlineDraft,
  {
    bladeCount,
    diameter,
    hubDiameter,
  }: { readonly bladeCount: number; readonly diameter: number; readonly hubDiameter: number },
): { readonly text: string } | { readonly problem: string } {
  const { outline, pitchRatio, areaRatio, thicknessRatio, camberRatio } = draft;
  try {
    const geometry =
      outline === "series"
        ? seriesGeometry({
            series: { family: "wageningen-b", blades: bladeCount, areaRatio, pitchRatio },
            diameter,
            outsideRange: true,
          })
        : plainGeometry({
            from: "outline",
            ...{ outline, bladeCount, diameter, hubDiameter, pitchRatio, areaRatio, thicknessRatio, camberRatio },
          });
    return { text: tableText(geometry) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

/** What the table comes to: so that a slip in a column is seen before it is used. */
export function shapeWords({ stations, bladeCount, diameter, hubDiameter }: BladeGeometry): string {
  const area = stations.slice(1).reduce((sum, { radius, chord }, at) => {
    const before = stations[at]!;
    return sum + ((chord + before.chord) / 2) * (radius - before.radius);
  }, 0);
  const areaRatio = (bladeCount * area) / ((Math.PI * diameter ** 2) / 4);
  const place = stations.reduce((near, one) =>
    Math.abs(one.radius - 0.35 * diameter) < Math.abs(near.radius - 0.35 * diameter) ? one : near,
  );
  const pitchRatio = (2 * Math.PI * place.radius * Math.tan(place.pitchAngle)) / diameter;
  return (
    `${stations.length} sections from ${formatQuantity(stations[0]!.radius, MILLIMETRE)} to ${formatQuantity(stations.at(-1)!.radius, MILLIMETRE)}, ` +
    `hub ${formatQuantity(hubDiameter, MILLIMETRE)}; area ratio ${formatNumber(areaRatio, 2)}; near 0.7 R chord ${formatQuantity(place.chord, MILLIMETRE)}, ` +
    `P/D ${formatNumber(pitchRatio)}, thickness ${formatNumber((100 * place.thickness) / place.chord, 2)}\u202f% and camber ` +
    `${formatNumber((100 * place.camber) / place.chord, 2)}\u202f% of the chord.`
  );
}

/** Chord and thickness over the radius, with the pitch angle on the right. */
export function shapePicture({ stations }: BladeGeometry): ChartSpec {
  const against = (y: (station: (typeof stations)[number]) => number) =>
    stations.map((station) => ({ x: station.radius * 1000, y: y(station) }));
  return {
    title: "Blade shape over the radius",
    x: { label: "Radius", unit: "mm", min: 0 },
    y: { label: "Chord, thickness", unit: "mm", min: 0 },
    y2: { label: "Pitch angle", unit: "°", min: 0 },
    series: [
      { id: "chord", name: "Chord", kind: "fit", style: 0, points: against(({ chord }) => chord * 1000) },
      {
        id: "thickness",
        name: "Thickness",
        kind: "fit",
        style: 2,
        points: against(({ thickness }) => thickness * 1000),
      },
      {
        id: "pitch",
        name: "Pitch angle, right axis",
        kind: "fit",
        style: 1,
        secondAxis: true,
        points: against(({ pitchAngle }) => pitchAngle / DEGREE),
      },
    ],
  };
}

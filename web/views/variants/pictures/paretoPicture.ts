import type { Plateau } from "../../../../shared/model/reduction.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { plateauName } from "../../bench/plateausModel.ts";
import type { VariantRuns } from "../variantGroups.ts";
import { NAMED_BY_MARKERS } from "../variantsChart.ts";

export type PowerName = "electricalPower" | "shaftPower";

/**
 * Thrust against power of every plateau, with the front: the points that no other beats in thrust for as little power. What lies
 * under it is beaten by something that was measured.
 */
export function paretoPicture(groups: readonly VariantRuns[], kind: PowerName): ChartSpec {
  const measured = groups.map((group) => pointsOf(group, kind)).filter(({ points }) => points.length > 0);
  const front = paretoFront(measured.flatMap(({ points }) => points));
  const name = kind === "electricalPower" ? "Electrical power" : "Shaft power";
  return {
    title: `Thrust against ${name.toLowerCase()}, with the front of what was measured`,
    x: { label: name, unit: "W", min: 0 },
    y: { label: "Thrust", unit: "N", min: 0 },
    numbered: measured.length > NAMED_BY_MARKERS ? measured.map((one) => one.name) : false,
    series: [
      ...(front.length < 2
        ? []
        : [{ id: "front", name: "Front", kind: "fit" as const, style: FRONT_STYLE, points: front }]),
      ...measured,
    ],
  };
}

const FRONT_STYLE = 4;

/** The points that are not beaten: none has as much thrust for as little power. In order of power. */
export function paretoFront(points: readonly ChartPoint[]): ChartPoint[] {
  const byPower = [...points].sort((a, b) => a.x - b.x || b.y - a.y);
  let best = Number.NEGATIVE_INFINITY;
  return byPower.flatMap(({ x, y }) => {
    if (y <= best) return [];
    best = y;
    return [{ x, y }];
  });
}

function pointsOf({ name, style, members }: VariantRuns, kind: PowerName): ChartSeries {
  const points = members.flatMap(({ run, reduction }) =>
    (reduction?.plateaus ?? []).flatMap((plateau, index) =>
      pointOf(plateau, kind, `${run.name}, ${plateauName(index).toLowerCase()}`),
    ),
  );
  return { id: `power-${name}`, name, kind: "measured", style, points };
}

function pointOf(plateau: Plateau, kind: PowerName, note: string): ChartPoint[] {
  const power = plateau[kind];
  if (power === null || !plateau.used) return [];
  return [
    {
      x: power.value,
      xInterval: power.interval95,
      y: plateau.thrust.value,
      yInterval: plateau.thrust.interval95,
      note,
    },
  ];
}

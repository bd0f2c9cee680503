import type { SpeedOverTether } from "../../../../shared/model/vehicle/speedOverTether.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";

/** Speed ahead over the tether paid out, with where scenario and requirement stand on it. */
export function tetherLimitPicture({ points, scenario, requirement }: SpeedOverTether): ChartSpec {
  const moving = points.flatMap(({ length, speed }) => (speed === null ? [] : [{ length, speed }]));
  const asked = requirement?.needed == null ? [] : [{ x: requirement.at.length, y: requirement.needed }];
  const marks = [
    ...(scenario === null ? [] : [{ x: scenario.length, label: "scenario" }]),
    ...(requirement === null || requirement.at.length === scenario?.length
      ? []
      : [{ x: requirement.at.length, label: "asked for" }]),
  ];
  return {
    title: "Speed ahead against the tether paid out",
    x: { label: "Tether paid out", unit: "m", min: 0 },
    y: { label: "Speed through the water", unit: "m/s", min: 0 },
    series: [
      {
        ...{ id: "speed", name: "Greatest steady speed, 95 % band", style: 0 },
        kind: "prediction",
        points: moving.map(({ length, speed }) => ({ x: length, y: speed.value, yInterval: speed.interval95 })),
      },
      ...(asked.length === 0
        ? []
        : [{ id: "asked", name: "Asked for", style: 1, kind: "measured" as const, points: asked }]),
    ],
    markers: marks,
  };
}

import type { SpeedOverTether } from "../../../../shared/model/vehicle/speedOverTether.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";

/** Speed ahead over the tether paid out, with where scenario and requirement stand on it. */
export function tetherLimitPicture({ points, scenario, requirement }: SpeedOverTether): ChartSpec {
  const moving = points.flatMap(({ length, speed }) => (speed === null ? [] : [{ length, speed }]));
  const needed = requirement?.needed ?? null;
  const ends = [points[0]!, points.at(-1)!];
  const isSame = requirement !== null && requirement.at.length === scenario?.length;
  const marks = [
    ...(scenario === null || isSame ? [] : [{ x: scenario.length, label: "scenario" }]),
    ...(requirement === null
      ? []
      : [{ x: requirement.at.length, label: isSame ? "scenario, asked for" : "asked for" }]),
  ];
  return {
    title: "Speed ahead against the tether paid out",
    x: { label: "Tether paid out", unit: "m", min: 0 },
    y: { label: "Speed through the water", unit: "m/s", min: 0 },
    series: [
      {
        ...{ id: "speed", name: "Greatest steady speed", style: 0 },
        kind: "prediction",
        points: moving.map(({ length, speed: { value, interval95 } }) => ({
          ...{ x: length, y: value },
          ...(interval95 && { yInterval: interval95 }),
        })),
      },
      ...(needed === null
        ? []
        : [
            {
              ...{ id: "asked", name: "Speed asked for", style: 1, kind: "fit" as const },
              points: ends.map(({ length }) => ({ x: length, y: needed })),
            },
          ]),
    ],
    markers: marks,
  };
}

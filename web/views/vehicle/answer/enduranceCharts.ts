import type { MissionAnswer, SpeedAnswer } from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";

/** Share of the mission below which a leg is not named in the picture. */
const SLIVER = 0.08;

/** Charge and bus voltage through the mission. */
export function trackPicture({ track, legs }: MissionAnswer): ChartSpec {
  const begins = track.filter(({ leg }, at) => at === 0 || track[at - 1]!.leg !== leg);
  // Names that would lie over one another help nobody: a leg that is a sliver of the mission has none.
  const whole = track.at(-1)?.time ?? 0;
  const marks = begins.filter(({ time }, at) => (begins[at + 1]?.time ?? whole) - time >= SLIVER * whole);
  return {
    title: "Charge and voltage through the mission",
    x: { label: "Time", unit: "min", min: 0 },
    y: { label: "Charge left", unit: "%", min: 0, max: 100 },
    y2: { label: "Bus voltage", unit: "V" },
    series: [
      {
        ...{ id: "charge", name: "Charge left", style: 0 },
        kind: "prediction",
        points: track.map(({ time, charge }) => ({ x: time / 60, y: 100 * charge })),
      },
      {
        ...{ id: "voltage", name: "Bus voltage", style: 1, secondAxis: true },
        kind: "prediction",
        points: track.map(({ time, voltage }) => ({ x: time / 60, y: voltage })),
      },
    ],
    markers: marks.slice(0, 12).map(({ time, leg }) => ({ x: time / 60, label: legs[leg]?.name ?? "" })),
  };
}

/** Way and time on the usable charge against the speed. */
export function rangePicture({ points }: SpeedAnswer): ChartSpec {
  const moving = points.filter(({ speed }) => speed > 0);
  return {
    title: "How far and how long on the usable charge",
    x: { label: "Speed through the water", unit: "m/s", min: 0 },
    y: { label: "Way through the water", unit: "km", min: 0 },
    y2: { label: "Time", unit: "min", min: 0 },
    series: [
      {
        ...{ id: "range", name: "Way", style: 0 },
        kind: "prediction",
        points: moving.map(({ speed, range }) => ({ x: speed, y: range / 1000 })),
      },
      {
        ...{ id: "time", name: "Time", style: 1, secondAxis: true },
        kind: "prediction",
        points: moving.map(({ speed, time }) => ({ x: speed, y: time / 60 })),
      },
      ...(points.some(({ reach }) => reach !== null)
        ? [
            {
              ...{ id: "reach", name: "Out and back along the current", style: 2 },
              kind: "prediction" as const,
              points: moving.flatMap(({ speed, reach }) => (reach === null ? [] : [{ x: speed, y: reach / 1000 }])),
            },
          ]
        : []),
    ],
  };
}

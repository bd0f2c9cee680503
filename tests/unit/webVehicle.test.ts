import { expect, test } from "vitest";
import type { MissionAnswer, SpeedAnswer } from "../../shared/model/vehicle/enduranceAnswer.ts";
import type { HeadingPolar, SteadyMotion } from "../../shared/model/vehicle/motionAnswer.ts";
import type { VehicleAnswer } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { rangePicture, trackPicture } from "../../web/views/vehicle/answer/enduranceCharts.ts";
import { polarShape } from "../../web/views/vehicle/answer/polarShape.ts";
import { forcePicture } from "../../web/views/vehicle/answer/speedModel.ts";
import { COMPARED } from "../../web/views/vehicle/compareModel.ts";

const heading = (currentFrom: number, speedOverGround: number | null) => ({ currentFrom, speedOverGround });
const polar = (...points: ReturnType<typeof heading>[]) => ({ points }) as unknown as HeadingPolar;

test("a current from ahead is drawn up, one from starboard to the right, lengths as the speed", () => {
  const { points, rings } = polarShape(polar(heading(0, 0.5), heading(Math.PI / 2, 1), heading(Math.PI, 1.5)), 100);
  const greatest = rings.at(-1)!.speed;
  expect(greatest).toBeGreaterThanOrEqual(1.5);
  const places = points.map(({ x, y }) => [Math.round(x) + 0, Math.round(y) + 0]);
  expect(places).toEqual([
    [0, Math.round(-50 / greatest)],
    [Math.round(100 / greatest), 0],
    [0, Math.round(150 / greatest)],
  ]);
});

test("rings stand at round speeds, two to five of them", () => {
  for (const most of [0.12, 0.4, 0.99, 1.7, 3.2]) {
    const { rings } = polarShape(polar(heading(0, most), heading(1, most)), 100);
    expect(rings.length).toBeGreaterThanOrEqual(2);
    expect(rings.length).toBeLessThanOrEqual(5);
    expect(["1", "2", "5"]).toContain(String(rings[0]!.speed.toExponential(0))[0]);
  }
});

test("where the vehicle is carried back there is no point, and no crooked line to the middle", () => {
  const { points } = polarShape(polar(heading(0, -0.2), heading(1, null), heading(2, 0.4)), 100);
  expect(points).toHaveLength(1);
});

const CURVE = [
  { speed: 0, available: 60, drag: 0, tether: 0, weight: 0 },
  { speed: 1, available: 50, drag: 20, tether: 5, weight: 0 },
];
const motion = (curve: SteadyMotion["curve"]) =>
  ({
    way: "ahead",
    curve,
    speed: { value: 1.4, standardUncertainty: 0.05, interval95: [1.3, 1.5] },
  }) as unknown as SteadyMotion;

test("what stands against the thrusters is the sum of its parts, and each part there is has a line", () => {
  const { series, markers } = forcePicture(motion(CURVE));
  expect(series.map(({ id }) => id)).toEqual(["available", "against", "tether"]);
  expect(series[1]!.points[1]).toEqual({ x: 1, y: 25 });
  expect(markers).toEqual([{ x: 1.4, label: "1.40 m/s" }]);
  const bare = forcePicture(motion(CURVE.map((point) => ({ ...point, tether: 0 }))));
  expect(bare.series.map(({ name }) => name)).toEqual(["Thrusters can give", "Drag of the hull"]);
});

test("the mission is drawn in minutes and per cent, with each leg marked where it begins", () => {
  const at = (time: number, leg: number, charge: number) => ({ time, leg, charge, voltage: 15, current: 5 });
  const mission = {
    legs: [{ name: "out" }, { name: "back" }],
    track: [at(0, 0, 1), at(600, 0, 0.8), at(600, 1, 0.8), at(900, 1, 0.7)],
  };
  const { series, markers } = trackPicture(mission as unknown as MissionAnswer);
  expect(series[0]!.points[1]).toEqual({ x: 10, y: 80 });
  expect(markers).toEqual([
    { x: 0, label: "out" },
    { x: 10, label: "back" },
  ]);
});

test("out and back along a current has a line only where there is a current", () => {
  const point = (reach: number | null) => ({ speed: 0.5, range: 1200, time: 2400, reach });
  const ids = (reach: number | null) =>
    rangePicture({ points: [point(reach)] } as unknown as SpeedAnswer).series.map(({ id }) => id);
  expect(ids(null)).toEqual(["range", "time"]);
  expect(ids(400)).toEqual(["range", "time", "reach"]);
});

test("vehicles are held against each other by numbers with units, and a dash where there is none", () => {
  const answer = {
    ...{ motions: [motion(CURVE)], headings: null, endurance: null, requirement: null },
    vertical: { climb: null, greatestPayload: null },
  } as unknown as VehicleAnswer;
  const cells = Object.fromEntries(COMPARED.map(({ name, cell }) => [name, cell(answer)]));
  expect(cells["Speed ahead"]).toBe("1.40 ± 0.10\u202fm/s");
  expect(cells["Speed up"]).toBe("–");
  expect(cells["What it must do"]).toBe("–");
});

test("a requirement that is missed names what is missed", () => {
  const requirement = {
    demands: [
      { met: false, name: "speed" },
      { met: true, name: "lift" },
    ],
    certain: false,
  };
  const cell = COMPARED.find(({ name }) => name === "What it must do")!.cell;
  expect(cell({ requirement } as unknown as VehicleAnswer)).toBe("misses speed");
});

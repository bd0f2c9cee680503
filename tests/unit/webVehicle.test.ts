import { expect, test } from "vitest";
import type { MissionAnswer, SpeedAnswer } from "../../shared/model/vehicle/enduranceAnswer.ts";
import type { HeadingPolar, LimitingPart, SteadyMotion } from "../../shared/model/vehicle/motionAnswer.ts";
import type { Vehicle } from "../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { plainMessage } from "../../web/app/plainMessage.ts";
import { legText, legTime } from "../../web/views/vehicle/answer/answerText.ts";
import { rangePicture, trackPicture } from "../../web/views/vehicle/answer/enduranceCharts.ts";
import { polarShape } from "../../web/views/vehicle/answer/polarShape.ts";
import { forcePicture } from "../../web/views/vehicle/answer/speedModel.ts";
import {
  type AnsweredVehicle,
  COMPARED,
  differenceSentence,
  differences,
} from "../../web/views/vehicle/compareModel.ts";
import { limitSection, wayToLimit } from "../../web/views/vehicle/limitPlace.ts";

const heading = (currentFrom: number, speedOverGround: number | null, greatestCurrentHeld: number | null = null) => ({
  ...{ currentFrom, speedOverGround, greatestCurrentHeld },
});
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

const told = (value: number, { voltage = 16 } = {}): AnsweredVehicle => {
  const speed = { value, standardUncertainty: 0.1, interval95: [value - 0.196, value + 0.196] };
  const ahead = { ...{ way: "ahead", force: null, speed }, shares: [{ input: "drag.ahead", contribution: -0.1 }] };
  return {
    of: {
      ...{ drag: "of one hull", water: "sea", interaction: {}, scenario: {}, drives: [], supply: { voltage } },
    } as unknown as Vehicle,
    answer: {
      ...{ motions: [ahead], headings: null, endurance: null, requirement: null },
      vertical: { climb: null, greatestPayload: null },
    } as unknown as VehicleAnswer,
  };
};

test("two vehicles of one hull differ in a speed that the doubt of each alone would hide", () => {
  const made = differences(told(1.4), told(1.5, { voltage: 18 }));
  expect(made).toEqual([{ name: "Speed ahead", isTold: true, text: expect.any(String), line: expect.any(String) }]);
  expect(made[0]!.line).toMatch(/^\+0\.10* ?.*m\/s, differs$/);
  expect(differenceSentence("A", "B", made)).toMatch(/^“B” differs from “A” beyond the doubt in speed ahead \(\+0\.1/);
});

test("vehicles that do not differ are said not to, and what is not known of both is left out", () => {
  const [same] = differences(told(1.4), told(1.4));
  expect(same).toMatchObject({ isTold: false, line: "the same" });
  expect(differenceSentence("A", "B", [same!])).toContain("can not be told apart");
});

test("the line back ends at the limiting part and leads to where it is described", () => {
  const limit = (part: LimitingPart["part"]) => ({ part, drive: null, limit: "", text: "" });
  const names = (part: LimitingPart["part"]) => wayToLimit(limit(part)).map(({ name }) => name);
  expect(names("motor")).toEqual(["layout", "propeller", "motor"]);
  expect(names("pack")).toEqual(["layout", "propeller", "motor", "controller", "pack"]);
  expect(names("nothing")).toEqual([]);
  expect([limitSection(limit("fuse")), limitSection(limit("tether")), limitSection(null)]).toEqual([
    "build-supply",
    "build-tether",
    null,
  ]);
});

test("the current that is held is drawn to the scale of the speed", () => {
  const { heldPath, rings } = polarShape(polar(heading(0, 0.5, 2), heading(Math.PI, 1, 1)), 100);
  expect(rings.at(-1)!.speed).toBe(2);
  expect(heldPath).toBe("M0.0 -100.0 L0.0 50.0 Z");
});

test("a short leg is told in seconds and as done, one that was cut with what cut it", () => {
  const leg = { time: 40, distance: 8, state: "done", sentence: "Done in 40.0 s." } as const;
  expect([legTime(leg), legText(leg)]).toEqual(["40.0\u202fs", "done, 8.00\u202fm"]);
  expect([legTime({ time: 600 }), legText({ ...leg, distance: 0 })]).toEqual(["10.0\u202fmin", "done"]);
  expect(legText({ ...leg, state: "cut", sentence: "The charge ends it." })).toBe("The charge ends it.");
});

test("a warning that names a field of a drive is said without the name of the field", () => {
  const message = "asternEstimate: Astern nothing was measured.";
  expect(plainMessage({ message, where: "Net thruster: asternEstimate" })).toBe("Astern nothing was measured.");
  expect(plainMessage({ message: "Bars of the frame: slow.", where: "surge, forward: Bars of the frame" })).toBe(
    "Bars of the frame: slow.",
  );
});

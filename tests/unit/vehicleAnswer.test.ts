import { describe, expect, test } from "vitest";
import type { VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { VehicleAnswer } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { VehicleBuild } from "../../shared/model/vehicle/vehicleBuild.ts";
import { vehicleOf } from "../../shared/vehicle/build/vehicleOf.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { FRESH_18, SIX_THRUSTERS, TWO_THRUSTERS, vehicleFrom } from "./vehicleExample.ts";

const { tether: _tether, scenario: _scenario, ...free } = SIX_THRUSTERS;
const swimsFree: VehicleInput = { ...free, scenario: { depth: 10, currentSpeed: 0.3, currentSpeedUncertainty: 0.05 } };
const answer = vehicleAnswer(vehicleFrom(swimsFree), { draws: 400, seed: 3 });

describe("the whole answer", () => {
  test("is what its document says", () => {
    expect(VehicleAnswer.safeParse(answer).error?.issues ?? []).toEqual([]);
    expect(answer.converged).toBe(true);
  });

  test("starboard and port of a vehicle alike on both sides are alike", () => {
    const speeds = answer.motions
      .filter(({ way }) => way === "starboard" || way === "port")
      .map(({ speed }) => speed!.value);
    expect(speeds[0]).toSatisfy(relative(speeds[1]!, 1e-8));
  });

  test("headings from starboard and from port are alike, and make way as the triangle says", () => {
    const points = answer.headings!.points;
    for (let i = 1; i < 12; i++) {
      expect(points[i]!.speedOverGround).toSatisfy(relative(points[24 - i]!.speedOverGround!, 1e-9));
      expect(points[i]!.greatestCurrentHeld).toSatisfy(relative(points[24 - i]!.greatestCurrentHeld!, 1e-6));
    }
    const ahead = answer.motions[0]!.speed!.value;
    expect(points[0]!.speedOverGround).toSatisfy(relative(ahead - 0.3, 1e-9));
    expect(points[12]!.speedOverGround).toSatisfy(relative(ahead + 0.3, 1e-9));
  });

  test("the speed's doubts by cause add up to its own", () => {
    const { shares, speed } = answer.motions[0]!;
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeGreaterThan(0.99);
    const variance = shares.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
    expect(Math.sqrt(variance)).toSatisfy(relative(speed!.standardUncertainty!, 1e-2));
  });

  test("without the drive in the way the drag area alone moves the speed as a balance of forces says", () => {
    // Differences of the whole answer, in place of the derivative of the root.
    const more = vehicleAnswer(
      vehicleFrom({
        ...swimsFree,
        drag: {
          ...swimsFree.drag,
          surge: {
            ...swimsFree.drag.surge!,
            forward: { drag: { from: "typed", dragArea: 0.0551, standardUncertainty: 0.006 } },
          },
        },
      }),
    );
    const change = more.motions[0]!.speed!.value - answer.motions[0]!.speed!.value;
    const drag = answer.motions[0]!.shares.find(({ input }) => input === "drag.ahead")!;
    expect((change / 0.0001) * 0.006).toSatisfy(relative(drag.contribution, 0.01));
  });

  test("the probabilities drawn are near those of first order", () => {
    for (const { probability, probabilityDrawn } of answer.requirement!.demands) {
      if (probability === null || probabilityDrawn === null) continue;
      expect(Math.abs(probability - probabilityDrawn)).toBeLessThan(0.1);
    }
    expect(answer.requirement!.draws).toEqual({ draws: 400, seed: 3, failed: 0 });
  });

  test.each([
    { area: 0.036, probability: 0.8413447460685429 },
    { area: 0.024, probability: 0.15865525393145707 },
  ])("with the drag alone in doubt a speed has the probability of its drag area: $area m²", ({ area, probability }) => {
    const dragged = (dragArea: number, standardUncertainty: number, requirement: VehicleInput["requirement"]) =>
      vehicleAnswer(
        vehicleFrom({
          ...TWO_THRUSTERS,
          drag: { surge: { forward: { drag: { from: "typed", dragArea, standardUncertainty } } } },
          ...(requirement && { requirement }),
        }),
      );
    const speed = dragged(area, 0, undefined).motions[0]!.speed!.value;
    const demand = dragged(0.03, 0.006, { speed }).requirement!.demands[0]!;
    // scipy 1.17.1, stats.norm.cdf([1, -1]): a vehicle goes as fast as asked where its drag area is at most that one.
    expect(demand.probability).toSatisfy(relative(probability, 1e-5));
  });

  test("a demand in the middle of the doubt is met in half of the draws, first order and drawn", () => {
    const at = answer.motions[0]!.speed!.value;
    const half = vehicleAnswer(vehicleFrom({ ...swimsFree, requirement: { speed: at } }), { draws: 1000, seed: 5 });
    const demand = half.requirement!.demands[0]!;
    expect(demand.probability).toSatisfy(relative(0.5, 1e-3));
    // Four standard deviations of a share of 1000 draws.
    expect(Math.abs(demand.probabilityDrawn! - 0.5)).toBeLessThan(0.065);
    expect(half.requirement!.certain).toBe(false);
  });

  test("a demand that is out of reach names the part in the way", () => {
    const { requirement } = vehicleAnswer(vehicleFrom({ ...swimsFree, requirement: { speed: 5 } }));
    expect(requirement!.met).toBe(false);
    expect(requirement!.sentence).toMatch(/not met/);
    expect(requirement!.demands[0]!.limitedBy!.part).toBe("pack");
  });
});

describe("what can not be answered", () => {
  const refused = (change: Partial<VehicleInput>) => () => vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, ...change }));

  test("a drive that does not exist", () => {
    const thrusters = [{ ...TWO_THRUSTERS.thrusters[0]!, drive: "bow" }];
    expect(refused({ thrusters })).toThrow(/does not have\. Needed: one of stern/);
  });

  test("a mass below 0", () => {
    expect(refused({ mass: { value: -3 } })).toThrow(/more than 0 kg/);
  });

  test("a tether shorter than the depth", () => {
    const tether = { cable: { diameter: 0.006 } };
    expect(refused({ tether, scenario: { depth: 30, tetherLength: 20 } })).toThrow(/does not reach/);
  });

  test("a supply that collapses under the rest of the vehicle moves nothing", () => {
    const dead = vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, hotelPower: { value: 500 } }));
    expect(dead.motions[0]!).toMatchObject({ state: "stands", speed: null });
    expect(dead.motions[0]!.atRest!.limitedBy.part).toBe("pack");
  });
});

describe("a propeller that was not measured astern", () => {
  test("pushes ahead only, and a warning says so", () => {
    const two = vehicleAnswer(vehicleFrom(TWO_THRUSTERS));
    expect(two.motions[1]!.force!.value).toBe(0);
    expect(two.warnings.map(({ code }) => code)).toContain("vehicle.pushes-ahead-only");
  });

  test("with stated shares pushes astern by them", () => {
    const asternEstimate = { thrustShare: 0.7, torqueShare: 1, relativeUncertainty: 0.1 };
    const drives = [{ ...TWO_THRUSTERS.drives[0]!, asternEstimate }];
    const two = vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, drives }));
    // Equal torque, so equal current and rotation rate: the thrust is the share.
    expect(two.motions[1]!.force!.value).toSatisfy(relative(0.7 * two.motions[0]!.force!.value, 1e-9));
    expect(two.warnings.map(({ code }) => code)).toContain("drive.astern-estimated");
  });
});

describe("a vehicle made of parts", () => {
  const [drive] = TWO_THRUSTERS.drives;
  const vehicle = vehicleFrom(TWO_THRUSTERS);
  const { drives: _d, supply: _s, water: _w, tether: _t, ...own } = TWO_THRUSTERS;
  const build = VehicleBuild.parse({
    ...own,
    drives: [{ name: "stern", motorId: "m1", controllerId: "c1", propeller: { from: "named", name: "sanded" } }],
    supply: { packId: "p1" },
  });
  const parts = {
    motors: new Map([["m1", vehicle.drives[0]!.motor]]),
    controllers: new Map([["c1", vehicle.drives[0]!.controller!]]),
    gears: new Map(),
    packs: new Map([["p1", vehicle.supply.pack]]),
    tethers: new Map(),
  };

  test("is the vehicle of those parts", () => {
    const propellers = new Map([["sanded", vehicle.drives[0]!.propeller]]);
    expect(vehicleOf(build, { water: FRESH_18, parts, propellers })).toEqual({ state: "complete", vehicle });
  });

  test("names each part that is missing", () => {
    const built = vehicleOf(build, { water: FRESH_18, parts: { ...parts, packs: new Map() }, propellers: new Map() });
    expect(built.state === "incomplete" && built.problems.map(({ code, where }) => [code, where])).toEqual([
      ["vehicle.missing-propeller", "drives.0.propeller"],
      ["vehicle.missing-part", "supply.packId"],
    ]);
    expect(drive!.name).toBe("stern");
  });
});

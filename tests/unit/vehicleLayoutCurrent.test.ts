import { describe, expect, test } from "vitest";
import { currentAt, currentPieces } from "../../shared/vehicle/layout/currentLaw.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import * as L from "./vehicleLayouts.ts";
import { codesOf } from "./vehicleLayouts.ts";

describe("current of the bus", () => {
  const current = { forward: [{ thrust: 10, current: 6 }], reverse: [{ thrust: 6, current: 5 }] };

  test("one point follows the power 1.5, more points straight lines", () => {
    expect(currentAt([{ thrust: 10, current: 4 }], 2.5)).toBeCloseTo(0.5, 12);
    const table = [
      { thrust: 8, current: 4 },
      { thrust: 4, current: 1 },
    ];
    expect([2, 4, 6, 8, 10].map((thrust) => currentAt(table, thrust))).toEqual([0.5, 1, 2.5, 4, 5.5]);
  });

  test("the pieces of the power law lie above it by at most 0.3 % of the greatest current", () => {
    const pieces = currentPieces([{ thrust: 10, current: 6 }], 10);
    let [thrust, drawn] = [0, 0];
    for (const { width, slope } of pieces) {
      for (const part of [0.25, 0.5, 0.75]) {
        const off = drawn + part * width * slope - 6 * ((thrust + part * width) / 10) ** 1.5;
        expect(off).toBeGreaterThan(0);
        expect(off).toBeLessThan(0.003 * 6);
      }
      thrust += width;
      drawn += width * slope;
    }
    expect([thrust, drawn]).toEqual([expect.closeTo(10, 10), expect.closeTo(6, 10)]);
  });

  test.each([
    ["no current stated", { busCurrentLimit: 10 }, {}, "vehicle.layout-no-current"],
    [
      "a hotel that takes it all",
      { busCurrentLimit: 10, hotelCurrent: 11 },
      { current },
      "vehicle.layout-hotel-over-bus",
    ],
    [
      "a table that ends early",
      {},
      {
        current: {
          ...current,
          forward: [
            { thrust: 2, current: 1 },
            { thrust: 5, current: 4 },
          ],
        },
      },
      "vehicle.layout-current-ends-early",
    ],
    [
      "a table that flattens",
      {},
      {
        current: {
          ...current,
          forward: [
            { thrust: 2, current: 4 },
            { thrust: 10, current: 6 },
          ],
        },
      },
      "vehicle.layout-current-not-convex",
    ],
    ["torque to be counted that is not stated", { countReactionTorque: true }, {}, "vehicle.layout-no-torque"],
    [
      "a centre of buoyancy that is too low",
      { righting: { weight: 100, centreOfBuoyancy: { x: 0, y: 0, z: 0.02 } } },
      {},
      "vehicle.layout-not-righting",
    ],
  ])("%s is told", (_, more, each, code) => {
    expect(codesOf(layoutAnswer(L.layoutOf(L.VECTORED, 6, more, () => each)))).toContain(code);
  });

  test("a hotel that takes it all leaves no thrust within the bus", () => {
    const answer = layoutAnswer(
      L.layoutOf(L.VECTORED, 6, { busCurrentLimit: 10, hotelCurrent: 11 }, () => ({ current })),
    );
    expect(answer.reach[0]!.ways[0]!.withBusLimit!.value.value).toBe(0);
    expect(answer.outlines[0]!.cornersWithBusLimit).toEqual([[0, 0]]);
  });
});

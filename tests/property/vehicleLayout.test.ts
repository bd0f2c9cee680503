import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LayoutAnswer } from "../../shared/model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../shared/model/vehicle/layoutRequest.ts";
import { pcg32 } from "../../shared/numeric/pcg32.ts";
import { allocator } from "../../shared/vehicle/layout/allocate.ts";
import { AXES } from "../../shared/vehicle/layout/axes.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import * as L from "../unit/vehicleLayouts.ts";

const tenth = (least: number, most: number) => fc.integer({ min: least * 10, max: most * 10 }).map((one) => one / 10);
const direction = fc
  .tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }))
  .filter((parts) => parts.some((one) => one !== 0));
const thruster = fc.record({
  placed: fc.tuple(fc.tuple(tenth(-0.5, 0.5), tenth(-0.4, 0.4), tenth(-0.2, 0.2)), direction),
  forward: fc.integer({ min: 1, max: 20 }),
  reverse: fc.integer({ min: 1, max: 20 }),
});
const layout = fc.array(thruster, { minLength: 1, maxLength: 8 }).map((all) =>
  L.layoutOf(
    all.map(({ placed }) => placed),
    6,
    {},
    (i) => L.limited(all[i]!.forward, all[i]!.reverse),
  ),
);
const RUNS = { numRuns: 25 };

const sizeOf = ({ thrusters }: LayoutRequest) =>
  thrusters.reduce((sum, { limits }) => sum + limits.forward.value + limits.reverse.value, 0);
const demandsOf = ({ reach }: LayoutAnswer) =>
  reach.flatMap(({ axis, ways }) => ways.map((one) => ({ axis, way: one.way, ...one.greatest })));
const valuesOf = (answer: LayoutAnswer) => demandsOf(answer).map(({ value }) => value.value);

const changed = (
  request: LayoutRequest,
  change: (one: LayoutRequest["thrusters"][number]) => object,
): LayoutRequest => ({
  ...request,
  thrusters: request.thrusters.map((one) => ({ ...one, ...change(one) })),
});

describe("any layout", () => {
  test("thrusts keep within their limits, make the value they are shown with, and leave held axes at zero", () => {
    fc.assert(
      fc.property(layout, (request) => {
        const answer = layoutAnswer(request);
        expect(answer.converged).toBe(true);
        for (const { axis, forces, wrench, value } of demandsOf(answer)) {
          forces.forEach((one, i) => {
            const { forward, reverse } = request.thrusters[i]!.limits;
            expect(one).toBeLessThanOrEqual(forward.value * (1 + 1e-9));
            expect(one).toBeGreaterThanOrEqual(-reverse.value * (1 + 1e-9));
          });
          for (const held of answer.held) {
            const made = wrench[AXES.indexOf(held)]!;
            expect(Math.abs(made - (held === axis ? value.value : 0))).toBeLessThan(1e-7 * sizeOf(request));
          }
        }
      }),
      RUNS,
    );
  });

  test("twice the limits push twice as hard", () => {
    fc.assert(
      fc.property(layout, (request) => {
        const twice = changed(request, ({ limits }) => L.limited(2 * limits.forward.value, 2 * limits.reverse.value));
        const [one, two] = [valuesOf(layoutAnswer(request)), valuesOf(layoutAnswer(twice))];
        for (const [k, value] of two.entries())
          expect(Math.abs(value - 2 * one[k]!)).toBeLessThan(1e-7 * sizeOf(request));
      }),
      RUNS,
    );
  });

  test("its mirror image does the same, with sway, roll and yaw the other way", () => {
    fc.assert(
      fc.property(layout, (request) => {
        const mirrored = changed(request, ({ position, direction: d }) => ({
          position: { ...position, y: -position.y },
          direction: { ...d, y: -d.y },
        }));
        const [own, other] = [layoutAnswer(request), layoutAnswer(mirrored)];
        expect(other.held).toEqual(own.held);
        const turned = ["sway", "roll", "yaw"];
        own.reach.forEach(({ axis, ways }, k) => {
          const [up, low] = ways.map((one) => one.greatest.value.value);
          const [otherUp, otherLow] = other.reach[k]!.ways.map((one) => one.greatest.value.value);
          const expected = turned.includes(axis) ? [-low!, -up!] : [up!, low!];
          expect(Math.abs(otherUp! - expected[0]!)).toBeLessThan(1e-7 * sizeOf(request));
          expect(Math.abs(otherLow! - expected[1]!)).toBeLessThan(1e-7 * sizeOf(request));
        });
      }),
      RUNS,
    );
  });

  // Zero thrust of the lost one was always allowed, so its loss can only take something away.
  test("a loss never helps", () => {
    fc.assert(
      fc.property(layout, (request) => {
        for (const { axes } of layoutAnswer(request).losses)
          for (const { before, after } of axes)
            expect(Math.abs(after.value)).toBeLessThanOrEqual(Math.abs(before.value) + 1e-7 * sizeOf(request));
      }),
      RUNS,
    );
  });

  test("the outline holds the extremes of its axes and is convex", () => {
    fc.assert(
      fc.property(layout, (request) => {
        const answer = layoutAnswer(request);
        const near = 1e-6 * sizeOf(request);
        for (const { axes, corners } of answer.outlines) {
          for (const [k, axis] of axes.entries()) {
            const ways = answer.reach.find((one) => one.axis === axis)?.ways ?? [];
            // The other axis of the plane is free here and held there, so the outline may reach farther.
            const ends = corners.map((one) => one[k]!);
            expect(Math.max(...ends)).toBeGreaterThanOrEqual((ways[0]?.greatest.value.value ?? 0) - near);
            expect(Math.min(...ends)).toBeLessThanOrEqual((ways[1]?.greatest.value.value ?? 0) + near);
          }
          corners.forEach((p, k) => {
            const [a, b] = [corners.at(k - 1)!, corners[(k + 1) % corners.length]!];
            const turn = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
            expect(turn).toBeGreaterThanOrEqual(-near * near);
          });
        }
      }),
      RUNS,
    );
  });

  test("what is allotted makes the demand, or the stated part of it", () => {
    const wanted = fc.array(fc.integer({ min: -10, max: 10 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(layout, wanted, (request, numbers) => {
        const { held } = layoutAnswer(request);
        const found = allocator(request)(Object.fromEntries(held.map((axis, k) => [axis, numbers[k]!])));
        found.achieved.forEach((one, k) => {
          expect(Math.abs(one - found.scale * found.wanted[k]!)).toBeLessThan(1e-6 * sizeOf(request));
        });
        expect(found.forces.every(Number.isFinite)).toBe(true);
      }),
      RUNS,
    );
  });
});

test("a limit on the bus takes away and never gives, and thrust grows with it", () => {
  const current = { forward: [{ thrust: 10, current: 6 }], reverse: [{ thrust: 6, current: 5 }] };
  const at = (busCurrentLimit: number) =>
    layoutAnswer(L.unlike({ busCurrentLimit }, () => ({ current }))).reach.flatMap(({ ways }) =>
      ways.map((one) => [Math.abs(one.withBusLimit!.value.value), Math.abs(one.greatest.value.value)] as const),
    );
  const [small, large] = [at(6), at(12)];
  small.forEach(([limited], k) => {
    expect(limited).toBeLessThan(large[k]![0] + 1e-9);
    expect(large[k]![0]).toBeLessThanOrEqual(large[k]![1] + 1e-9);
  });
});

/**
 * Limits drawn about the stated ones, the answer worked out for the truth: the interval about the answer of the drawn
 * limits must hold the true one about as often as it says.
 */
test("95 % intervals hold the truth of drawn limits in more than 90 of 100 draws, whatever governs", () => {
  const draw = pcg32(11, 3);
  const normal = () => {
    const [a, b] = [(draw() + 1) / 2 ** 32, draw() / 2 ** 32];
    return Math.sqrt(-2 * Math.log(a)) * Math.cos(2 * Math.PI * b);
  };
  const u = 0.4;
  const truth = layoutAnswer(L.layoutOf(L.VECTORED)).reach[0]!.ways[0]!.greatest.value.value;
  for (const drives of [1, 2, 4]) {
    let held = 0;
    for (let k = 0; k < 150; k++) {
      const errors = Array.from({ length: drives }, normal);
      const request = L.layoutOf(L.VECTORED, 6, { axes: ["surge", "sway", "yaw"] }, (i) => ({
        drive: `D${i % drives}`,
        limits: {
          forward: { value: 10 + u * errors[i % drives]!, standardUncertainty: u },
          reverse: { value: 6 + u * errors[i % drives]!, standardUncertainty: u },
        },
      }));
      const [low, high] = layoutAnswer(request).reach[0]!.ways[0]!.greatest.value.interval95;
      if (low <= truth && truth <= high) held += 1;
    }
    expect(held / 150, `${drives} drives`).toBeGreaterThan(0.9);
  }
});

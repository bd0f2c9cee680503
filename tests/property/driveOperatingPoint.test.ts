import fc from "fast-check";
import { expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { DriveRequest, type OperatingPoint } from "../../shared/model/drive.ts";
import { OutOfDomain } from "../../shared/quantity/problem.ts";
import { relative } from "../relative.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const requests = fc
  .record({
    speedConstant: between(10, 300),
    motorResistance: fc.oneof(fc.constant(0), between(0.005, 2)),
    noLoadCurrent: fc.oneof(fc.constant(0), between(0.05, 3)),
    noLoadCurrentSlope: fc.oneof(fc.constant(0), between(1e-5, 5e-3)),
    controllerResistance: fc.oneof(fc.constant(0), between(0.001, 0.1)),
    supplyVoltage: between(5, 60),
    supplyResistance: fc.oneof(fc.constant(0), between(1e-6, 1)),
    hotelPower: fc.oneof(fc.constant(0), between(0.1, 200)),
    thrusters: fc.integer({ min: 1, max: 8 }),
    diameter: between(0.02, 0.3),
    thrustCoefficient: between(0.05, 0.5),
    torqueCoefficient: between(0.005, 0.08),
    density: fc.oneof(between(990, 1030), between(1, 1.3)),
    throttle: fc.oneof(fc.constantFrom(0, 1), between(1e-4, 1)),
  })
  .map((input) => DriveRequest.parse(input));

/** The point, or undefined where the supply can not hold the loads. */
function held(request: DriveRequest): OperatingPoint | undefined {
  try {
    return operatingPoint(request);
  } catch (refusal) {
    if (refusal instanceof OutOfDomain && refusal.problem.code === "supply.collapse") return undefined;
    throw refusal;
  }
}

const given = (property: (point: OperatingPoint, request: DriveRequest) => void) =>
  fc.property(requests, (request) => {
    const point = held(request);
    fc.pre(point !== undefined);
    property(point, request);
  });

test("what leaves the ideal source is lost, used by the hotel load or delivered at the shafts, to rounding", () => {
  fc.assert(
    given((point, { supplyVoltage, hotelPower, thrusters }) => {
      const { losses, shaftPower } = point;
      const perThruster = losses.controllerResistance + losses.winding + losses.friction + shaftPower;
      const drawn = supplyVoltage * point.supplyCurrent;
      const spent = losses.supplyResistance + hotelPower + thrusters * perThruster;
      expect(Math.abs(spent - drawn)).toBeLessThanOrEqual(1e-11 * Math.max(drawn, 1e-9));
      expect(Math.abs(perThruster - point.electricalPower)).toBeLessThanOrEqual(1e-12 * Math.max(perThruster, 1e-9));
    }),
    { numRuns: 2000, endOnFailure: true },
  );
});

test("every number of every point that exists is finite and not negative, and efficiencies do not exceed 1", () => {
  fc.assert(
    given((point) => {
      for (const [name, value] of Object.entries(point)) {
        if (typeof value === "number") expect(value, name).toSatisfy((x) => Number.isFinite(x) && x >= 0);
      }
      const { supply, controller, motor } = point.efficiencies;
      for (const efficiency of [supply, controller, motor, point.efficiency])
        expect(efficiency).toBeLessThanOrEqual(1 + 1e-12);
      expect(point.warnings.map((w) => w.code)).not.toContain("drive.not-converged");
    }),
    { numRuns: 2000, endOnFailure: true },
  );
});

test("thrust rises with the throttle as long as the supply is above half its open-circuit voltage", () => {
  fc.assert(
    given((point, request) => {
      const more = held({ ...request, throttle: Math.min(1, request.throttle * 1.05) });
      fc.pre(more !== undefined && more.supplyVoltage >= request.supplyVoltage / 2);
      expect(more.thrust).toBeGreaterThanOrEqual(point.thrust * (1 - 1e-12));
    }),
    { numRuns: 500, endOnFailure: true },
  );
});

test("thrust and bus voltage rise with the open-circuit voltage", () => {
  fc.assert(
    given((point, request) => {
      const more = held({ ...request, supplyVoltage: request.supplyVoltage * 1.02 })!;
      expect(more.supplyVoltage).toBeGreaterThan(point.supplyVoltage);
      expect(more.thrust).toBeGreaterThanOrEqual(point.thrust * (1 - 1e-12));
    }),
    { numRuns: 500, endOnFailure: true },
  );
});

test("resistances that go to zero lead to the ideal motor: speed K_v δ U_oc", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const ideal = { ...request, motorResistance: 0, controllerResistance: 0, supplyResistance: 0 };
      const { rotationRate } = operatingPoint(ideal);
      expect(rotationRate * 2 * Math.PI).toSatisfy(
        relative(request.speedConstant * request.throttle * request.supplyVoltage, 1e-12),
      );
      const nearly = operatingPoint({ ...ideal, motorResistance: 1e-12 });
      expect(nearly.rotationRate).toSatisfy(relative(rotationRate, 1e-3));
    }),
    { numRuns: 300, endOnFailure: true },
  );
});

test("a propeller without load leaves the motor at its no-load current", () => {
  fc.assert(
    given((_, request) => {
      const free = held({ ...request, torqueCoefficient: 1e-15, throttle: 1 });
      fc.pre(free !== undefined && free.rotationRate > 0);
      const noLoad = request.noLoadCurrent + request.noLoadCurrentSlope * 2 * Math.PI * free.rotationRate;
      expect(Math.abs(free.motorCurrent - noLoad)).toBeLessThan(1e-4);
    }),
    { numRuns: 300, endOnFailure: true },
  );
});

test("N thrusters on R_s work as one thruster on N R_s with an N-th of the hotel load", () => {
  fc.assert(
    given((point, request) => {
      const { thrusters: N } = request;
      const one = operatingPoint({
        ...request,
        thrusters: 1,
        supplyResistance: request.supplyResistance * N,
        hotelPower: request.hotelPower / N,
      });
      expect(one.supplyVoltage).toSatisfy(relative(point.supplyVoltage, 1e-9));
      if (point.thrust > 0) expect(one.thrust).toSatisfy(relative(point.thrust, 1e-8));
    }),
    { numRuns: 500, endOnFailure: true },
  );
});

test("without hotel load and speed-dependent friction the rotation rate is the root of the closed-form quadratic", () => {
  fc.assert(
    fc.property(requests, (any) => {
      const request = { ...any, hotelPower: 0, noLoadCurrentSlope: 0 };
      const point = held(request);
      fc.pre(point !== undefined && point.rotationRate > 0);
      const { throttle: delta, speedConstant: Kv, noLoadCurrent: I0, supplyVoltage: U0 } = request;
      const A =
        request.motorResistance +
        request.controllerResistance +
        request.thrusters * delta * delta * request.supplyResistance;
      const c = request.torqueCoefficient * request.density * request.diameter ** 5 * Kv;
      const b = (2 * Math.PI) / Kv;
      const d = delta * U0 - I0 * A;
      expect(point.rotationRate).toSatisfy(relative((2 * d) / (b + Math.sqrt(b * b + 4 * c * A * d)), 1e-9));
    }),
    { numRuns: 500, endOnFailure: true },
  );
});

test("at the throttle stated for a limit the limited quantity is at the limit, and never above it before", () => {
  const limits = fc.record({
    motorCurrent: between(0.1, 60),
    motorPower: between(1, 800),
    controllerCurrent: between(0.1, 60),
    supplyCurrent: between(0.1, 120),
  });
  fc.assert(
    fc.property(requests, limits, between(0, 0.999), (plain, given, before) => {
      const request = { ...plain, limits: given };
      const some = held({ ...request, throttle: 0 });
      fc.pre(some !== undefined);
      for (const { name, limit, reachedAtThrottle } of some.limits) {
        const of = (point: OperatingPoint) => point.limits.find((state) => state.name === name)!.actual;
        if (reachedAtThrottle === null || reachedAtThrottle === 0) continue;
        const there = operatingPoint({ ...request, throttle: reachedAtThrottle });
        // Half the open-circuit voltage is a turning point of the power, where a last bit moves the voltage by its root.
        expect(of(there), name).toSatisfy(relative(limit, name === "supply voltage" ? 1e-6 : 1e-7));
        const earlier = of(operatingPoint({ ...request, throttle: before * reachedAtThrottle }));
        if (name === "supply voltage") expect(earlier).toBeGreaterThanOrEqual(limit * (1 - 1e-6));
        else expect(earlier, name).toBeLessThanOrEqual(limit * (1 + 1e-7));
      }
    }),
    { numRuns: 500, endOnFailure: true },
  );
});

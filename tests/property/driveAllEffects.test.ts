import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chainOf } from "../../shared/drive/chain.ts";
import { emptyLimits, fillLimits, limitInputsOf } from "../../shared/drive/limitNumbers.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { emptyState, thrustOf } from "../../shared/drive/shaftState.ts";
import { solveForThrust, solveFull } from "../../shared/drive/solveFull.ts";
import { DriveRequest, LIMIT_NAMES, type OperatingPoint } from "../../shared/model/drive.ts";
import { OutOfDomain } from "../../shared/quantity/problem.ts";
import { relative } from "../relative.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const noneOr = (min: number, max: number) => fc.oneof(fc.constant(0), between(min, max));

const chains = {
  speedConstant: between(10, 300),
  motorResistance: noneOr(0.005, 2),
  noLoadCurrent: noneOr(0.05, 3),
  noLoadCurrentSlope: noneOr(1e-5, 5e-3),
  heat: fc.record({
    surroundings: between(272, 303),
    resistanceTemperature: between(285, 350),
    thermalResistance: noneOr(0.05, 8),
    temperatureLimit: between(310, 450),
  }),
  wetTorque: fc.record({ coefficient: noneOr(1e-8, 1e-6), exponent: between(1, 3) }),
  gearRatio: between(0.3, 6),
  gearEfficiency: between(0.5, 1),
  controllerResistance: noneOr(0.001, 0.1),
  freewheelVoltage: noneOr(0.05, 1.2),
  switchingLoss: noneOr(0.001, 0.1),
  standbyPower: noneOr(0.05, 3),
  supplyVoltage: between(5, 60),
  supplyResistance: noneOr(1e-6, 1),
  hotelPower: noneOr(0.1, 100),
  thrusters: fc.integer({ min: 1, max: 8 }),
  diameter: between(0.02, 0.3),
  thrustCoefficient: between(0.1, 0.5),
  torqueCoefficient: between(0.015, 0.08),
  density: between(990, 1030),
  throttle: fc.oneof(fc.constantFrom(0, 1), between(1e-3, 1)),
};

const atRest = fc.record(chains).map((input) => DriveRequest.parse(input));

/** Curves that fall with J as those of propellers do. */
const atSpeed = fc
  .record({ ...chains, advanceSpeed: between(0.05, 4), thrustFall: between(0.6, 1.4), torqueFall: between(0.5, 1) })
  .map(({ thrustFall, torqueFall, ...input }) =>
    DriveRequest.parse({
      ...input,
      openWater: {
        thrust: [-thrustFall * input.thrustCoefficient, -0.1 * thrustFall * input.thrustCoefficient],
        torque: [-torqueFall * input.torqueCoefficient, -0.1 * torqueFall * input.torqueCoefficient],
        greatestAdvanceRatio: 0.9,
      },
    }),
  );

/** The point, or undefined where the supply can not hold the loads. */
function held(request: DriveRequest): OperatingPoint | undefined {
  try {
    return operatingPoint(request);
  } catch (refusal) {
    if (refusal instanceof OutOfDomain && refusal.problem.code === "supply.collapse") return undefined;
    throw refusal;
  }
}

const given = (from: fc.Arbitrary<DriveRequest>, property: (point: OperatingPoint, request: DriveRequest) => void) =>
  fc.property(from, (request) => {
    const point = held(request);
    fc.pre(point !== undefined);
    property(point, request);
  });

describe.each([
  ["at rest", atRest],
  ["at speed", atSpeed],
] as const)("with every effect at work, %s", (_, requests) => {
  test("what leaves the ideal source is lost, used by the hotel load or delivered at the shafts, to rounding", () => {
    fc.assert(
      given(requests, (point, { supplyVoltage, hotelPower, thrusters }) => {
        const { supplyResistance, ...own } = point.losses;
        const perThruster = Object.values(own).reduce((sum, loss) => sum + loss, point.shaftPower);
        const drawn = supplyVoltage * point.supplyCurrent;
        const spent = supplyResistance + hotelPower + thrusters * perThruster;
        expect(Math.abs(spent - drawn)).toBeLessThanOrEqual(1e-11 * Math.max(drawn, 1e-3));
        expect(Math.abs(perThruster - point.electricalPower)).toBeLessThanOrEqual(1e-11 * Math.max(perThruster, 1e-3));
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test("every number is finite, no loss is negative, no efficiency above 1, and the search settles", () => {
    fc.assert(
      given(requests, (point) => {
        for (const [name, value] of Object.entries(point)) {
          if (typeof value === "number") expect(value, name).toSatisfy(Number.isFinite);
        }
        for (const [name, loss] of Object.entries(point.losses)) expect(loss, name).toBeGreaterThanOrEqual(0);
        const { supply, controller, motor, gear } = point.efficiencies;
        for (const efficiency of [supply, controller, motor, gear]) expect(efficiency).toBeLessThanOrEqual(1 + 1e-12);
        expect(point.warnings.map(({ code }) => code)).not.toContain("drive.not-converged");
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test("thrust, current and winding temperature rise with the throttle above half the open-circuit voltage", () => {
    fc.assert(
      given(requests, (point, request) => {
        const more = held({ ...request, throttle: Math.min(1, request.throttle * 1.05) });
        fc.pre(more !== undefined && more.supplyVoltage >= request.supplyVoltage / 2 && point.status !== "windmilling");
        for (const name of ["thrust", "rotationRate", "motorCurrent", "windingTemperature"] as const) {
          expect(more[name] - point[name], name).toBeGreaterThanOrEqual(-1e-11 * Math.abs(point[name]) - 1e-13);
        }
      }),
      { numRuns: 500, endOnFailure: true },
    );
  });

  test("the furthest throttle within all limits exceeds none, and a hair more exceeds the one that is named", () => {
    const limits = fc.record({
      motorCurrent: between(0.5, 60),
      motorPower: between(5, 800),
      supplyCurrent: between(0.5, 120),
      supplyVoltage: between(3, 12),
      cavitation: between(5, 200),
    });
    fc.assert(
      fc.property(requests, limits, (plain, stated) => {
        const request = { ...plain, limits: stated, throttle: 1 };
        const chain = chainOf(request);
        const state = solveFull(chain, fillLimits(emptyLimits(), limitInputsOf(request), chain), 1, emptyState());
        fc.pre(state.status === "turning" && state.throttle > 1e-3);
        const there = operatingPoint({ ...request, throttle: Math.min(1, state.throttle) });
        expect(thrustOf(chain, state)).toSatisfy(
          (T: number) => Math.abs(T - there.thrust) <= 1e-5 * Math.abs(T) + 1e-9,
        );
        const reached = LIMIT_NAMES[state.limit];
        for (const { name, limit, actual } of there.limits) {
          const over = name.includes("voltage") ? limit / actual : actual / limit;
          expect(over, name).toBeLessThanOrEqual(1 + 1e-6);
          if (name === reached) expect(over, name).toBeGreaterThanOrEqual(1 - 1e-6);
        }
        if (reached === undefined) expect(state.throttle).toBe(1);
        else expect(there.governingLimit).toSatisfy((name) => sameLimit(name, reached, there));
      }),
      { numRuns: 500, endOnFailure: true },
    );
  });

  test("the throttle for a thrust gives that thrust", () => {
    fc.assert(
      given(requests, (point, request) => {
        fc.pre(point.status === "turning" && point.supplyVoltage >= request.supplyVoltage / 2);
        const chain = chainOf(request);
        const state = emptyState();
        const reach = solveForThrust(chain, emptyLimits(), point.thrust, state);
        expect(reach).toSatisfy((one: string) => one === "held" || request.throttle > 1 - 1e-9);
        expect(state.throttle).toSatisfy(relative(request.throttle, 1e-6));
        expect(state.busVoltage).toSatisfy(relative(point.supplyVoltage, 1e-6));
      }),
      { numRuns: 500, endOnFailure: true },
    );
  });
});

/** Two limits may be reached at one throttle to rounding. */
function sameLimit(name: string, other: string, { limits }: OperatingPoint): boolean {
  const [a, b] = [name, other].map((one) => limits.find((limit) => limit.name === one)?.reachedAtThrottle ?? 1);
  return Math.abs(a! - b!) <= 1e-6;
}

import { describe, expect, test } from "vitest";
import { chainOf } from "../../shared/drive/chain.ts";
import { emptyLimits, fillLimits, limitInputsOf } from "../../shared/drive/limitNumbers.ts";
import { emptyState, thrustOf } from "../../shared/drive/shaftState.ts";
import { solveAtSpeed, solveForThrust, solveFull } from "../../shared/drive/solveFull.ts";
import { type DriveRequestInput, LIMIT_NAMES } from "../../shared/model/drive.ts";
import { relative } from "../relative.ts";
import { driveRequest } from "./driveRequest.ts";

function prepared(change: Partial<DriveRequestInput>) {
  const request = driveRequest(change);
  const chain = chainOf(request);
  return { chain, limits: fillLimits(emptyLimits(), limitInputsOf(request), chain), state: emptyState() };
}

function full(change: Partial<DriveRequestInput>, cap = 1) {
  const { chain, limits, state } = prepared(change);
  return solveFull(chain, limits, cap, state);
}

const nameOf = (limit: number) => LIMIT_NAMES[limit] ?? "none";

describe("the furthest throttle", () => {
  test.each<[string, Partial<DriveRequestInput>]>([
    ["motor current", { limits: { motorCurrent: 10, controllerCurrent: 30 } }],
    ["controller current", { limits: { motorCurrent: 20, controllerCurrent: 10 } }],
    ["motor power", { limits: { motorPower: 50 } }],
    ["supply current", { limits: { supplyCurrent: 9, fuseCurrent: 30 } }],
    ["fuse current", { limits: { supplyCurrent: 20, fuseCurrent: 9 } }],
    ["tether current", { limits: { tetherCurrent: 9, fuseCurrent: 10 } }],
    ["least supply voltage", { limits: { supplyVoltage: 14.5 } }],
    ["cavitation", { limits: { cavitation: 30, ventilation: 40 } }],
    ["ventilation", { limits: { cavitation: 40, ventilation: 30 } }],
    ["winding temperature", { heat: { surroundings: 283.15, thermalResistance: 1.5, temperatureLimit: 300 } }],
    ["supply voltage", { thrusters: 6 }],
    ["none", { thrusters: 1 }],
  ])("%s bounds it", (name, change) => {
    const state = full(change);
    expect(nameOf(state.limit)).toBe(name);
    expect(state.status).toBe("turning");
    if (name === "none") expect(state.throttle).toBe(1);
    else expect(state.throttle).toBeLessThan(1);
  });

  test("a cap on the throttle comes before a limit that it does not reach", () => {
    const state = full({ limits: { motorCurrent: 10 } }, 0.3);
    expect(nameOf(state.limit)).toBe("none");
    expect(state.throttle).toBe(0.3);
  });

  test("a supply that full throttle would collapse is opened up to its greatest power", () => {
    const state = full({ supplyResistance: 0.6, hotelPower: 90 });
    expect(nameOf(state.limit)).toBe("supply voltage");
    expect(state.busVoltage).toSatisfy(relative(8, 1e-12));
  });

  test("a limit that the hotel load exceeds alone leaves closed throttle, under its name", () => {
    const state = full({ hotelPower: 60, limits: { fuseCurrent: 3 } });
    expect(state.status).toBe("atRest");
    expect(state.throttle).toBe(0);
    expect(nameOf(state.limit)).toBe("fuse current");
  });

  test("water warmer than the winding may be leaves closed throttle", () => {
    const state = full({ heat: { surroundings: 303, thermalResistance: 1, temperatureLimit: 300 } });
    expect([state.status, state.throttle, nameOf(state.limit)]).toEqual(["atRest", 0, "winding temperature"]);
  });
});

describe("a thrust that is asked for", () => {
  const reachOf = (thrust: number, change: Partial<DriveRequestInput>) => {
    const { chain, limits, state } = prepared(change);
    return { reach: solveForThrust(chain, limits, thrust, state), state, chain };
  };

  test("is met at the rate by hand, n = sqrt(T/(K_T ρ D⁴))", () => {
    const { reach, state, chain } = reachOf(10, {});
    expect(reach).toBe("held");
    expect(state.angularVelocity).toSatisfy(relative(2 * Math.PI * Math.sqrt(10 / (0.3 * 998.6 * 0.07 ** 4)), 1e-14));
    expect(thrustOf(chain, state)).toSatisfy(relative(10, 1e-14));
  });

  test.each<[string, number, Partial<DriveRequestInput>]>([
    ["beyondFullThrottle", 60, { thrusters: 1 }],
    ["beyondLimit", 30, { thrusters: 1, limits: { motorCurrent: 10 } }],
    ["beyondSupply", 200, {}],
    ["beyondCurve", -1, {}],
    ["runaway", 45, { heat: { surroundings: 293.15, thermalResistance: 8 } }],
    ["beyondCurve", 0, { advanceSpeed: 2, openWater: { thrust: [-0.1], torque: [-0.01], greatestAdvanceRatio: 0.5 } }],
  ])("says %s for %d N of what can not be held", (expected, thrust, change) => {
    const { reach, state } = reachOf(thrust, change);
    expect(reach).toBe(expected);
    if (expected === "beyondFullThrottle") expect(state.throttle).toBeGreaterThan(1);
    if (expected === "beyondLimit") expect(nameOf(state.limit)).toBe("motor current");
  });

  test("no thrust at rest is closed throttle, and a negative rate lies on no curve", () => {
    const { reach, state } = reachOf(0, {});
    expect([reach, state.status, state.throttle]).toEqual(["held", "atRest", 0]);
    const { chain, limits } = prepared({});
    expect(solveAtSpeed(chain, limits, -1, state)).toBe("beyondCurve");
  });
});

import { expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { throttleSweep } from "../../shared/drive/throttleSweep.ts";
import type { Controller } from "../../shared/model/parts/controller.ts";
import type { Motor } from "../../shared/model/parts/motor.ts";
import type { Pack } from "../../shared/model/parts/pack.ts";
import { SWEEP_STEPS, thrustChart } from "../../web/views/drive/driveCharts.ts";
import {
  type Chosen,
  type Driven,
  type DrivenPropeller,
  driveAnswer,
  driveRequest,
  governingText,
  pointRows,
  torqueSourceText,
} from "../../web/views/drive/driveModel.ts";
import { drivenPropellers } from "../../web/views/drive/drivenPropellers.ts";
import { efficiencyChain, whereTheWattsGo } from "../../web/views/drive/powerFlow.ts";
import { variantGroups } from "../../web/views/variants/variantGroups.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const MOTOR: Motor = {
  name: "motor",
  speedConstant: 60,
  resistance: 0.1,
  noLoadCurrent: 0.5,
  noLoadCurrentSlope: 0,
  currentLimit: 12,
  note: "",
};
const CONTROLLER: Controller = { name: "controller", resistance: 0.01, note: "" };
const PACK: Pack = { name: "pack", openCircuitVoltage: 14.8, resistance: 0.04, note: "" };
const CHOSEN: Chosen = {
  motor: MOTOR,
  controller: CONTROLLER,
  pack: PACK,
  thrusters: 2,
  hotelPower: 10,
  density: 1025,
};
const GROUPS = variantGroups([runOf("s", { variant: "sanded" })], () =>
  reductionOf({ thrustCoefficient: 0.25, powerCoefficient: 0.2 }),
);
const PROPELLER: DrivenPropeller = drivenPropellers(GROUPS, 0.5, null)[0]!;

function drivenAt(throttle: number, chosen = CHOSEN): Driven {
  const request = driveRequest(chosen, PROPELLER, throttle);
  return {
    propeller: PROPELLER,
    sweep: throttleSweep(request, SWEEP_STEPS),
    point: operatingPoint(request),
    problem: "",
  };
}

test("the request carries parts, water, coefficients and their doubts, and only the limits that are stated", () => {
  const request = driveRequest(CHOSEN, PROPELLER, 0.6);
  expect(request).toMatchObject({
    speedConstant: 60,
    controllerResistance: 0.01,
    thrusters: 2,
    hotelPower: 10,
    throttle: 0.6,
  });
  expect(request.limits).toEqual({ motorCurrent: 12 });
  expect(request.uncertainties.thrustCoefficient).toBeCloseTo(0.0025, 12);
  expect(driveRequest({ ...CHOSEN, controller: null }, PROPELLER, 0.6).controllerResistance).toBe(0);
});

test("the doubt of the diameter is not counted twice: the same propeller was on the stand", () => {
  expect(PROPELLER.diameter.standardUncertainty).toBe(0);
});

test("without a measured torque the coefficient comes from the stated merit and says so", () => {
  const groups = variantGroups([runOf("s", { variant: "sanded" })], () => reductionOf({ powerCoefficient: null }));
  const [propeller] = drivenPropellers(groups, 0.5, null);
  // K_Q = (K_T/π)^1.5 / (√2 FM) with K_T = 0.2 and FM = 0.5.
  expect(propeller!.torqueCoefficient.value).toBeCloseTo((0.2 / Math.PI) ** 1.5 / (Math.SQRT2 * 0.5), 12);
  expect(propeller!.torqueCoefficient.standardUncertainty / propeller!.torqueCoefficient.value).toBeCloseTo(0.015, 9);
  expect(torqueSourceText(propeller!, 0.5)).toContain("stated static merit of 0.50");
});

test("a typed propeller stands next to the measured ones with a style of its own", () => {
  const typed = { name: "typed", diameter: 0.08, thrustCoefficient: 0.3, torqueCoefficient: 0.04 };
  const all = drivenPropellers(GROUPS, 0.5, typed);
  expect(all.map(({ name, style, torqueSource }) => [name, style, torqueSource])).toEqual([
    ["sanded", 0, "torque"],
    ["typed", 1, "typed"],
  ]);
});

test("the answer names throttle, thrust with its doubt, weight and current", () => {
  const text = driveAnswer([drivenAt(0.6)], 0.6, 2);
  expect(text).toMatch(
    /^At 60\u202f% throttle each of 2 thrusters pulls [\d.]+ ± [\d.]+\u202fN \([\d.]+\u202fkgf\) with “sanded”, drawing [\d.]+ ± [\d.]+\u202fA from the pack\.$/,
  );
});

test("without a point the answer says what is needed, or what stands in the way", () => {
  expect(driveAnswer([], 0.6, 1)).toContain("Choose a motor and a pack");
  const collapsed: Driven = { propeller: PROPELLER, sweep: [], point: null, problem: "The supply collapses." };
  expect(driveAnswer([collapsed], 0.6, 1)).toBe("The supply collapses.");
});

test("the power of the pack is accounted for to the last watt", () => {
  const { point } = drivenAt(0.7);
  const watts = whereTheWattsGo(point!, 2, 10);
  const total = watts.reduce((sum, one) => sum + one.power, 0);
  expect(total / (PACK.openCircuitVoltage * point!.supplyCurrent)).toBeCloseTo(1, 9);
  expect(watts.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
});

test("the links of the chain multiply to ideal power over the power of the pack, hotel load aside", () => {
  const { point } = drivenAt(0.7, { ...CHOSEN, thrusters: 1, hotelPower: 0 });
  const product = efficiencyChain(point!).reduce((share, link) => share * link.share, 1);
  const ideal = point!.shaftPower * point!.efficiencies.propeller;
  expect(product).toBeCloseTo(ideal / (PACK.openCircuitVoltage * point!.supplyCurrent), 9);
});

test("the limit that comes first is named with the throttle that reaches it", () => {
  const driven = drivenAt(0.3);
  const limit = driven.point!.limits.find((one) => one.name === "motor current")!;
  expect(limit.reachedAtThrottle).not.toBeNull();
  expect(governingText(driven)).toContain(
    `the motor current governs; its limit of 12.0\u202fA is reached at ${Math.round(100 * limit.reachedAtThrottle!)}\u202f% throttle`,
  );
});

test("where no limit is reached the text says that the pack's voltage bounds it", () => {
  const { currentLimit: _limit, ...unlimited } = MOTOR;
  const weak = drivenAt(0.3, { ...CHOSEN, motor: { ...unlimited, speedConstant: 10 } });
  expect(governingText(weak)).toContain("no stated limit is reached");
});

test("the table has one column a propeller and a dash where there is no point", () => {
  const rows = pointRows([drivenAt(0.6), { propeller: PROPELLER, sweep: [], point: null, problem: "x" }]);
  expect(rows.every((row) => row.cells.length === 2 && row.cells[1] === "–")).toBe(true);
  expect(rows[1]!.cells[0]).toMatch(/kgf$/);
});

test("the sweep is drawn from zero to full throttle with bands that hold the line", () => {
  const { series, markers } = thrustChart([drivenAt(0.6)], 0.6);
  const { points } = series[0]!;
  expect([points[0]!.x, points.at(-1)!.x]).toEqual([0, 100]);
  const { y, yInterval } = points[20]!;
  expect(yInterval![0]).toBeLessThan(y);
  expect(yInterval![1]).toBeGreaterThan(y);
  expect(markers![0]).toEqual({ x: 60, label: "60 %" });
});

test("a sweep that the supply cuts short keeps its throttles", () => {
  const driven = drivenAt(0.3);
  const { series } = thrustChart([{ ...driven, sweep: driven.sweep.slice(0, 11) }], 0.3);
  expect(series[0]!.points.at(-1)!.x).toBeCloseTo(25, 12);
});

test("of more than two propellers the answer names the least and the greatest thrust", () => {
  const named = (name: string, throttle: number): Driven => ({
    ...drivenAt(throttle),
    propeller: { ...PROPELLER, name },
  });
  const text = driveAnswer([named("middle", 0.5), named("most", 0.7), named("least", 0.3)], 0.5, 1);
  expect(text).toMatch(/pulls from .* with “least”, .*, to .* with “most”/);
  expect(text).not.toContain("middle");
});

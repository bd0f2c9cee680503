import { expect, test } from "vitest";
import { driveRequestOf } from "../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { throttleSweep } from "../../shared/drive/throttleSweep.ts";
import { DriveTrain } from "../../shared/model/driveTrain.ts";
import type { Motor } from "../../shared/model/parts/motor.ts";
import { typedPropeller } from "../../web/views/drive/computedPropellers.ts";
import { chainPicture, SWEEP_STEPS, throttlePicture } from "../../web/views/drive/driveCharts.ts";
import {
  carriedText,
  type Driven,
  driveAnswer,
  governingText,
  pointRows,
  torqueSourceText,
} from "../../web/views/drive/driveModel.ts";
import { measuredPropeller } from "../../web/views/drive/measuredPropeller.ts";
import { pointText } from "../../web/views/drive/pointText.ts";
import { stripShape } from "../../web/views/drive/watts/stripShape.ts";
import { wattFlow } from "../../web/views/drive/watts/wattFlow.ts";
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
const GROUPS = variantGroups([runOf("s", { variant: "sanded" })], () =>
  reductionOf({ thrustCoefficient: 0.25, powerCoefficient: 0.2 }),
);
const IN_HAND = measuredPropeller({ group: GROUPS[0]!, merit: 0.5, part: undefined })!;
const TRAIN = DriveTrain.parse({
  supply: { pack: { name: "pack", openCircuitVoltage: 14.8, resistance: 0.04 } },
  controller: { name: "controller", resistance: 0.01 },
  motor: MOTOR,
  propeller: IN_HAND.propeller,
  thrusters: 2,
  hotelPower: 10,
  water: { kind: "sea", temperature: 285.15, salinity: 33 },
});

function drivenAt(throttle: number, change: Partial<DriveTrain> = {}): Driven {
  const prepared = driveRequestOf({ ...TRAIN, ...change }, { throttle, direction: "ahead", advanceSpeed: 0 });
  return {
    inHand: IN_HAND,
    sweep: throttleSweep(prepared.request, SWEEP_STEPS),
    point: operatingPoint(prepared.request),
    problem: "",
    carried: null,
    prepared,
  };
}

const NOTHING: Driven = {
  inHand: IN_HAND,
  sweep: [],
  point: null,
  problem: "The supply collapses.",
  carried: null,
  prepared: null,
};
const around = (thrusters: number, hotelPower: number, { prepared }: Driven) => ({
  ...{ thrusters, hotelPower },
  supplyParts: prepared!.supply.parts,
});

test("the doubt of the diameter is not counted twice: the same propeller was on the stand", () => {
  expect(IN_HAND.propeller.diameter.standardUncertainty).toBe(0);
  expect(IN_HAND.stand).toMatchObject({ topRate: 30 });
});

test("without a measured torque the coefficient comes from the stated merit and says so", () => {
  const groups = variantGroups([runOf("s", { variant: "sanded" })], () => reductionOf({ powerCoefficient: null }));
  const inHand = measuredPropeller({ group: groups[0]!, merit: 0.5, part: undefined })!;
  const { torqueCoefficient } = inHand.propeller.ahead;
  // K_Q = (K_T/π)^1.5 / (√2 FM) with K_T = 0.2 and FM = 0.5.
  expect(torqueCoefficient.value).toBeCloseTo((0.2 / Math.PI) ** 1.5 / (Math.SQRT2 * 0.5), 12);
  expect(torqueCoefficient.standardUncertainty / torqueCoefficient.value).toBeCloseTo(0.015, 9);
  expect(torqueSourceText(inHand, 0.5)).toContain("stated static merit of 0.50");
});

test("a typed propeller has the coefficients that were typed and no doubt", () => {
  const typed = { name: "typed", diameter: 0.08, thrustCoefficient: 0.3, torqueCoefficient: 0.04 };
  const { propeller, torqueSource, runs } = typedPropeller(typed, 0.5, 3);
  expect([torqueSource, runs]).toEqual(["typed", 0]);
  expect(propeller.ahead.thrustCoefficient).toEqual({ value: 0.3, standardUncertainty: 0 });
  expect(propeller.ahead.torqueCoefficient).toEqual({ value: 0.04, standardUncertainty: 0 });
});

test("known at rest only, or at speed by the series of equal pitch where the part states it", () => {
  expect(IN_HAND.propeller.ahead.openWater).toBeUndefined();
  const part = { name: "p", diameter: 0.1, diameterUncertainty: 0, nozzle: false, note: "", pitchRatio: 0.9 };
  const inHand = measuredPropeller({ group: GROUPS[0]!, merit: 0.5, part })!;
  expect(inHand.propeller.ahead.thrustCoefficient).toEqual(IN_HAND.propeller.ahead.thrustCoefficient);
  // The thrust of a B screw ends a little above its pitch ratio: Oosterveld & van Oossanen (1975), figures.
  expect(inHand.propeller.ahead.openWater!.greatestAdvanceRatio).toBeGreaterThan(0.9);
  expect(inHand.propeller.ahead.openWater!.greatestAdvanceRatio).toBeLessThan(1.1);
  expect(inHand.propeller.from).toContain("series of equal pitch");
});

test("the answer names throttle, thrust with its doubt, weight and current", () => {
  const text = driveAnswer([drivenAt(0.6)], 0.6, 2);
  expect(text).toMatch(
    /^At 60\u202f% throttle each of 2 thrusters pulls [\d.]+ ± [\d.]+\u202fN \([\d.]+\u202fkgf\) with “sanded”, drawing [\d.]+ ± [\d.]+\u202fA from the supply\. “sanded” at 60\u202f% throttle is past what its parts allow: motor current [\d.]+ ± [\d.]+\u202fA \(at most 12\.0 A\)\. Within the limits it pulls .* Extrapolated: “sanded” turns at \d+\u202frpm, measured up to 1800\u202frpm\.$/,
  );
});

test("without a point the answer says what is needed, or what stands in the way", () => {
  expect(driveAnswer([], 0.6, 1)).toContain("Choose a motor and a pack");
  expect(driveAnswer([NOTHING], 0.6, 1)).toBe("The supply collapses.");
});

test("the power of the supply is accounted for to the last watt", () => {
  const driven = drivenAt(0.7);
  const watts = wattFlow(driven.point!, around(2, 10, driven));
  const total = watts.reduce((sum, one) => sum + one.power, 0);
  expect(total / (14.8 * driven.point!.supplyCurrent)).toBeCloseTo(1, 9);
  expect(watts.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
});

test("the loss of the supply is shared as the resistances of its parts are", () => {
  const lead = { length: 2, size: { given: "resistance", resistancePerLength: 0.005 }, pairs: 1 } as const;
  const driven = drivenAt(0.7, { supply: { pack: { ...TRAIN.supply.pack, lead } } });
  const watts = wattFlow(driven.point!, around(2, 10, driven));
  const [pack, leads] = ["Pack", "Leads"].map((name) => watts.find((one) => one.name === name)!.power);
  // Two metres there and back at 5 mΩ/m: 20 mΩ beside the 40 mΩ of the pack.
  expect(pack! / leads!).toBeCloseTo(2, 9);
});

test("the links of the chain multiply to ideal power over the power of the supply, hotel load aside", () => {
  const { point } = drivenAt(0.7, { thrusters: 1, hotelPower: 0 });
  const { supply, controller, motor, gear, propeller } = point!.efficiencies;
  const ideal = point!.shaftPower * propeller;
  expect(supply * controller * motor * gear * propeller).toBeCloseTo(ideal / (14.8 * point!.supplyCurrent), 9);
});

test("the stream of power ends as high as the share that pushes, and each branch is as thick as its share", () => {
  const driven = drivenAt(0.7);
  const flows = wattFlow(driven.point!, around(2, 10, driven));
  const { branches, trunk, width } = stripShape(flows, 800);
  expect(branches.map(({ flow }) => flow.name)).toEqual(
    flows.filter(({ kind }) => kind !== "push").map(({ name }) => name),
  );
  expect(branches.every(({ at }) => at.x > 0 && at.x < width)).toBe(true);
  const { share } = flows.find(({ kind }) => kind === "push")!;
  const tops = [...trunk.matchAll(/ (-?[\d.]+)(?= |$)/g)].map(([, y]) => Number(y));
  // The stream starts 120 px high; where it leaves on the right its lower edge lies at its share of that.
  expect(tops).toContain(Math.round((6 + 120 * share) * 10) / 10);
});

test("carried coefficients are told with their factor, uncarried ones as measured", () => {
  expect(carriedText(drivenAt(0.5))).toBe(
    "sanded: coefficients as they were measured; what another Reynolds number changes is not counted, nor its doubt.",
  );
  const factor = { cause: "reynolds", actsOn: "coefficients", reason: "" } as const;
  const sizes = { thrust: 1.01, torque: 0.99, thrustUncertainty: 0.01, torqueUncertainty: 0.02 };
  const carried = { factor: { ...factor, ...sizes }, reynolds: { measured: 16_000, target: 230_000 } };
  const text = carriedText({ ...drivenAt(0.5), carried: carried as Driven["carried"] });
  expect(text).toContain("2.3e5 at full throttle here, at most 1.6e4 on the stand");
  expect(text).toMatch(/thrust × 1\.010 ± 0\.020, torque × 0\.99 ± 0\.04/);
});

test("the limit that comes first is named with the throttle that reaches it", () => {
  const driven = drivenAt(0.3);
  const limit = driven.point!.limits.find((one) => one.name === "motor current")!;
  expect(limit.reachedAtThrottle).not.toBeNull();
  expect(governingText(driven)).toContain(
    `motor current governs; its limit of 12.0\u202fA is reached at ${Math.round(100 * limit.reachedAtThrottle!)}\u202f% throttle`,
  );
});

test("where no limit is reached the text says that the supply's voltage bounds it", () => {
  const { currentLimit: _limit, ...unlimited } = MOTOR;
  const weak = drivenAt(0.3, { motor: { ...unlimited, speedConstant: 10 } });
  expect(governingText(weak)).toContain("no stated limit is reached");
});

test("the table has one column a propeller and a dash where there is no point", () => {
  const rows = pointRows([drivenAt(0.6), NOTHING]);
  expect(rows.every((row) => row.cells.length === 2 && row.cells[1] === "–")).toBe(true);
  expect(rows[1]!.cells[0]).toMatch(/kgf$/);
});

test("the sweep is drawn from zero to full throttle with bands that hold the line", () => {
  const { series, markers } = throttlePicture([drivenAt(0.6)], 0.6, "thrust");
  const { points } = series[0]!;
  expect([points[0]!.x, points.at(-1)!.x]).toEqual([0, 100]);
  const { y, yInterval } = points[20]!;
  expect(yInterval![0]).toBeLessThan(y);
  expect(yInterval![1]).toBeGreaterThan(y);
  expect(markers![0]).toEqual({ x: 60, label: "60 %" });
});

test("a sweep that the supply cuts short keeps its throttles", () => {
  const driven = drivenAt(0.3);
  const { series } = throttlePicture([{ ...driven, sweep: driven.sweep.slice(0, 11) }], 0.3, "thrust");
  expect(series[0]!.points.at(-1)!.x).toBeCloseTo(25, 12);
});

test("of more than two propellers the answer names the least and the greatest thrust", () => {
  const named = (name: string, throttle: number): Driven => ({
    ...drivenAt(throttle),
    inHand: { ...IN_HAND, name },
  });
  const text = driveAnswer([named("middle", 0.5), named("most", 0.7), named("least", 0.3)], 0.5, 1);
  expect(text).toMatch(/pulls from .* with “least”, .*, to .* with “most”/);
  expect(text).not.toContain("middle");
});

test("each link is drawn where the rotor turns, and the gear only where there is one", () => {
  const { series } = chainPicture(drivenAt(0.5));
  expect(series.map(({ id }) => id)).toEqual(["supply", "controller", "motor", "propeller"]);
  expect(series.every(({ points }) => points.every(({ y }) => y > 0 && y <= 100))).toBe(true);
});

test("a temperature that is not worked out is not shown as one", () => {
  const row = (driven: Driven) =>
    pointRows([driven]).find(({ name }) => name.startsWith("Winding temperature"))!.cells[0];
  expect(row(drivenAt(0.5))).toBe("not worked out");
  expect(row(drivenAt(0.5, { motor: { ...MOTOR, thermalResistance: 1 } }))).toMatch(/^\d+\.\d ± \d+\.\d\u202f°C$/);
});

test("a doubt too small for its digits is told in the unit of the number", () => {
  const { point } = drivenAt(0.3);
  const half = { value: 9.046, standardUncertainty: 0.002, interval95: [9.042, 9.05] } as const;
  const uncertainties = { ...point!.uncertainties!, supplyVoltage: half };
  expect(pointText({ ...point!, supplyVoltage: 9.046, uncertainties }, "supplyVoltage")).toBe(
    "9.05 ± under 0.01\u202fV",
  );
});

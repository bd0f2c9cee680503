import { expect, test } from "vitest";
import type { EnergyAccount } from "../../shared/model/vehicle/account.ts";
import type { EnduranceAnswer } from "../../shared/model/vehicle/enduranceAnswer.ts";
import { CELLS, hold, rest, sixThrusters, swim, twoThrusters, vehicleEndurance } from "../unit/enduranceExample.ts";

const climb = { name: "up", kind: { does: "climb", speed: 0.15, distance: 5 } };
const push = { name: "push", kind: { does: "push", force: 8, duration: 120 } };
const MIXED = [swim(0.6, 300), hold(600), climb, push, rest(200)];
const PACK = { charge: 36_000, cells: CELLS } as const;

function missing({ source, ...parts }: EnergyAccount): number {
  return Math.abs(source - Object.values(parts).reduce((sum, one) => sum + one, 0)) / source;
}

test("the parts of the energy add up to what left the ideal source, leg by leg and in all", () => {
  const mission = vehicleEndurance(sixThrusters(PACK, MIXED)).mission!;
  expect(mission.legs.map(({ state }) => state)).toEqual(["done", "done", "done", "done", "done"]);
  for (const { energy } of [...mission.legs, mission]) expect(missing(energy)).toBeLessThan(1e-12);
});

test("the energy that moves the vehicle is the drag times the way", () => {
  const [leg] = vehicleEndurance(twoThrusters({ charge: 36_000 }, [swim(1, 600)])).mission!.legs;
  // ½ ρ C_D A V² with 998.598 kg/m³ and 0.03 m².
  expect(leg!.energy.useful / (0.5 * 998.5980362819828 * 0.03 * 600)).toBeCloseTo(1, 9);
});

test("where it moves through the water, shaft energy is more than what moves it", () => {
  const [leg] = vehicleEndurance(sixThrusters(PACK, MIXED)).mission!.legs;
  expect(leg!.energy.propellers).toBeGreaterThan(0);
});

test("twice the charge does a mission twice as often, to rounding", () => {
  const [one, two] = [36_000, 72_000].map(
    (charge) => vehicleEndurance(sixThrusters({ ...PACK, charge }, MIXED)).mission!,
  );
  expect(two!.times!.value / one!.times!.value).toBeCloseTo(2, 9);
  expect(two!.neededCharge!.value / one!.neededCharge!.value).toBeCloseTo(1, 9);
});

test.each([{}, { leastVoltage: 14.5 }])("the needed charge does the mission and no more: %j", (limits) => {
  const legs = [swim(1, 300), rest(200), swim(1.4, 200)];
  const { neededCharge } = vehicleEndurance(twoThrusters({ ...PACK, ...limits }, legs)).mission!;
  const just = (part: number) =>
    vehicleEndurance(twoThrusters({ ...PACK, ...limits, charge: part * neededCharge!.value }, legs)).mission!;
  expect(just(1 + 1e-7).fits).toBe(true);
  expect(just(1 - 1e-7).fits).toBe(false);
  expect(just(1).times!.value).toBeCloseTo(1, 7);
});

test("a leg in two halves is the leg", () => {
  const whole = vehicleEndurance(twoThrusters(PACK, [swim(1, 1200)])).mission!;
  const halves = vehicleEndurance(twoThrusters(PACK, [swim(1, 600), swim(1, 600)])).mission!;
  expect(halves.chargeLeft).toBeCloseTo(whole.chargeLeft, 12);
  expect(halves.energy.source / whole.energy.source).toBeCloseTo(1, 11);
});

test("colder, thinner or emptier it lasts less", () => {
  const lasts = (pack: object, mission = {}) =>
    vehicleEndurance(twoThrusters({ ...PACK, ...pack }, [swim(1, 60)], mission)).mission!.lasts!.value;
  const base = lasts({});
  expect(lasts({}, { packTemperature: 275 })).toBeLessThan(base);
  expect(lasts({ resistance: 0.3 })).toBeLessThan(base);
  expect(lasts({}, { startCharge: 0.8 })).toBeLessThan(base);
  expect(lasts({}, { reserve: 0.3 })).toBeLessThan(base);
});

test("a current from ahead is held with the power of swimming at its speed", () => {
  const legs = [swim(0.4, 60), { ...hold(60), current: 0.4 }];
  const [swimming, holding] = vehicleEndurance(twoThrusters({ charge: 36_000 }, legs)).mission!.legs;
  expect(holding!.power!.value / swimming!.power!.value).toBeCloseTo(1, 9);
});

test("on the map of holding a place power rises with the current and a row without current is one number", () => {
  const { cells } = vehicleEndurance(sixThrusters(PACK)).holding!;
  expect(new Set(cells[0]!.map(({ power }) => power)).size).toBe(1);
  for (let column = 0; column < cells[0]!.length; column++) {
    const powers = cells.flatMap((row) => (row[column]!.power === null ? [] : [row[column]!.power!]));
    expect(powers.length).toBeGreaterThan(2);
    expect(powers.every((power, i) => i === 0 || power > powers[i - 1]!)).toBe(true);
  }
});

test("time falls as the speed rises, and the way at the best speed is the greatest of the curve", () => {
  const { points, bestRange } = (vehicleEndurance(sixThrusters(PACK)) as EnduranceAnswer).speeds!;
  expect(points.every(({ time }, i) => i === 0 || time < points[i - 1]!.time)).toBe(true);
  expect(bestRange!.range.value).toBeGreaterThanOrEqual(Math.max(...points.map(({ range }) => range)));
  expect(bestRange!.within[0]).toBeLessThan(bestRange!.speed);
  expect(bestRange!.within[1]).toBeGreaterThan(bestRange!.speed);
});

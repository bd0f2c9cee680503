import { expect, test } from "vitest";
import { PartsBox, ShortlistRequirement } from "../../shared/model/shortlist.ts";
import { Shortlist } from "../../shared/model/shortlistResult.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { shortlistCsv } from "../../shared/shortlist/shortlistCsv.ts";
import { BOX, listed, propeller, REQUIREMENT, shortlist } from "./shortlistBox.ts";

test("the result is a document of its schema, also when nothing meets", () => {
  for (const result of [listed(), listed({ thrustAhead: 500 }), listed({ hotelPower: 2000 })]) {
    expect(Shortlist.safeParse(result).error).toBeUndefined();
    expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test("the numbers of combinations are the products of what there is", () => {
  const { counts } = listed({}, { scaleTo: [0.076, 0.08], withoutController: true });
  // Three propellers, scaled to 76 mm (two of them, one is that size) and to 80 mm (all three).
  expect(counts).toMatchObject({ motors: 2, controllers: 3, supplies: 2, gears: 2, propellers: 8 });
  expect(counts.combinations).toBe(2 * 3 * 2 * 2 * 8);
});

test("packs are combined with each tether, and a tether's resistance counts", () => {
  const conductor = { length: 50, size: { given: "area", area: 2.5e-6 } } as const;
  const tethers = [{ name: "Long", diameter: 0.008, conductor }];
  const { counts, parts } = listed({ thrustAhead: 5 }, { tethers });
  expect(counts.supplies).toBe(2);
  expect(parts.filter(({ kind }) => kind === "supply").map(({ name }) => name)).toEqual([
    "Four through Long",
    "Three through Long",
  ]);
  expect(counts.meeting).toBeLessThan(listed({ thrustAhead: 5 }).counts.meeting);
});

test.each([
  ["motors", { motors: [] }, /holds no motor/],
  ["controllers", { controllers: [] }, /holds no controller/],
  ["packs", { packs: [] }, /holds no pack or supply/],
  ["propellers", { propellers: [] }, /holds no propeller/],
  ["everything", { motors: [], controllers: [], packs: [], propellers: [], gears: [] }, /no motor, no controller/],
] as const)("a box without %s is refused in a sentence", (_, missing, says) => {
  expect(() => listed({}, missing as object)).toThrow(InputProblem);
  expect(() => listed({}, missing as object)).toThrow(says);
});

test("weights of nothing and a voltage range upside down are refused", () => {
  const none = { thrustPerPower: 0, mass: 0, price: 0, thrustMargin: 0, tipSpeed: 0, endurance: 0 };
  expect(() => listed({ weights: none })).toThrow(/All weights are 0/);
  expect(() => listed({ supplyVoltage: { least: 20, greatest: 10 } })).toThrow(/least voltage is 20 V/);
});

test("a requirement that nothing meets says so, why, and what is nearest", () => {
  const { answer, rows, misses } = listed({ thrustAhead: 45 });
  expect(rows).toEqual([]);
  expect(answer).toMatch(/^None of 48 combinations meets the requirement\./);
  expect(answer).toMatch(/fail: /);
  expect(answer).toMatch(/Nearest: .*N short ahead at rest within its limits: \d+ % too little/);
  const shortfalls = misses.map(({ shortfall }) => shortfall);
  expect(shortfalls).toEqual([...shortfalls].sort((a, b) => a - b));
});

test("a supply that can not hold the hotel load is named", () => {
  const { answer, warnings, counts } = listed({ hotelPower: 300 });
  expect(counts.meeting).toBe(0);
  expect(warnings.map(({ where, code }) => [where, code])).toContainEqual(["Three", "shortlist.supply-collapses"]);
  expect(warnings.map(({ where }) => where)).not.toContain("Four");
  expect(answer).toMatch(/^None of/);
});

test("a miss by little says what is short in the unit of the demand", () => {
  const { misses } = listed();
  const sentence = (number: number) => misses.find(({ combination }) => combination.number === number)!.sentence;
  // 24: 21.21 N of 22 N by a controller of 12 A (independent solution), so 12 A sqrt-scaled to 22 N is 12.4 A.
  expect(sentence(24)).toMatch(/0\.79 N short ahead at rest within its limits: 3\.6 % too little/);
  expect(sentence(24)).toMatch(/controller current ahead at rest 0\.4\d A above 12\.0 A/);
  expect(sentence(18)).toMatch(/needs \d\.\d+ V more ahead at rest/);
  expect(sentence(2)).toMatch(/propeller diameter 5\.0 mm above 100 mm \(5\.0 %\)/);
});

test("each part says in how many combinations it is and why it drops out", () => {
  const { parts } = listed();
  const wide = parts.find(({ name }) => name === "Wide")!;
  expect(wide).toMatchObject({
    kind: "propeller",
    combinations: 16,
    meeting: 0,
    mostly: { demand: "diameter", count: 16 },
  });
  expect(wide.sentence).toContain("the propeller is too large (16)");
  const motors = parts.filter(({ kind }) => kind === "motor");
  expect(motors.reduce((sum, { meeting }) => sum + meeting, 0)).toBe(listed().counts.meeting);
});

test("what is easiest to ease comes first, with what it gains", () => {
  const { easing, failures } = listed();
  expect(easing.map(({ gained }) => gained)).toEqual(easing.map(({ gained }) => gained).sort((a, b) => b - a));
  for (const { demand, duty, gained } of easing) {
    const eased = failures.find((one) => one.demand === demand && one.duty === duty)!;
    expect(eased.alone).toBe(gained);
    const gains = eased.easing.map((step) => step.gained);
    expect(gains).toEqual([...gains].sort((a, b) => a - b));
  }
  // The controller of 12 A is missed by 3.6 % in thrust: in current, by about that.
  const { least } = failures.find(({ demand }) => demand === "controller current")!;
  expect(least!.amount).toBeCloseTo(12 * least!.share, 9);
});

test("without a thrust that is asked the greatest within the limits is ranked", () => {
  const { thrustAhead: _, ...open } = REQUIREMENT;
  const requirement = ShortlistRequirement.parse({ ...open, weights: { thrustMargin: 1 } });
  const result = shortlist({ requirement, box: PartsBox.parse(BOX), rows: 25, misses: 12 });
  const thrusts = result.rows.map(({ points }) => points[0]!.greatestThrust!);
  expect(thrusts).toEqual([...thrusts].sort((a, b) => b - a));
  expect(result.rows[0]!.scores.find(({ criterion }) => criterion === "thrustMargin")).toMatchObject({
    unit: "N",
    value: thrusts[0],
    normalised: 1,
  });
});

test("astern and at speed a propeller that is not known there fails as not known, and an estimate makes it known", () => {
  const at = (requirement: object) =>
    listed({ ...requirement, thrustAhead: 10 }).failures.filter(({ demand }) => demand === "not known");
  expect(at({ thrustAstern: 5 })[0]).toMatchObject({ duty: "astern", count: 48 });
  expect(at({ thrustAtSpeed: { thrust: 5, speed: 1 } })[0]).toMatchObject({ duty: "atSpeed", count: 48 });
  const asternEstimate = { thrustShare: 0.7, torqueShare: 0.9, relativeUncertainty: 0.1 };
  expect(at({ thrustAstern: 5, asternEstimate })).toEqual([]);
});

test("a controller that turns one way only gives no thrust astern", () => {
  const command = { fullReverse: null };
  const controllers = [{ ...BOX.controllers![0]!, command }];
  const { failures } = listed(
    { thrustAstern: 5, asternEstimate: { thrustShare: 1, torqueShare: 1, relativeUncertainty: 0 } },
    {
      controllers: controllers as never,
    },
  );
  expect(failures.find(({ demand }) => demand === "no thrust")).toMatchObject({ duty: "astern", count: 24 });
});

test("a mass that is not stated can not be judged, or counts as nothing where that is asked", () => {
  const box = { propellers: [propeller("Plain", 0.09, 0.33, 0.047, { price: 1 })] };
  expect(listed({}, box).counts.meeting).toBe(0);
  expect(listed({}, box).failures[0]).toMatchObject({ duty: "parts", demand: "not known" });
  expect(listed({ notStated: "nothing" }, box).counts.meeting).toBeGreaterThan(0);
  // A mass that is not asked need not be stated.
  expect(listed({ mass: 1000 }, box).counts.meeting).toBe(0);
  const { mass: _, ...notAsked } = REQUIREMENT;
  const [requirement, parts] = [ShortlistRequirement.parse(notAsked), PartsBox.parse({ ...BOX, ...box })];
  expect(shortlist({ requirement, box: parts, rows: 25, misses: 12 }).counts.meeting).toBeGreaterThan(0);
});

test("the table for a spreadsheet can not be run as a formula", () => {
  const text = shortlistCsv(listed({}, { motors: [{ ...BOX.motors![0]!, name: "=cmd()" }] }));
  expect(text).toContain("'=cmd()");
  expect(text.split("\r\n")[0]).toContain("Ahead at rest: greatest thrust within limits (N)");
});

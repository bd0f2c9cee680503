import { describe, expect, test } from "vitest";
import { factorTable } from "../../shared/compare/factors/factorTable.ts";
import { factsOfRun } from "../../shared/compare/factors/factsOfRun.ts";
import { filteredRuns, groupRuns } from "../../shared/compare/factors/groupRuns.ts";
import { FactorTable } from "../../shared/model/factor.ts";
import { Run } from "../../shared/model/run.ts";
import { facts } from "./comparePlateaus.ts";

const PRINTED = { finish: "as printed", pitchRatio: 1, diameter: 0.076, pack: "A", day: "2026-05-12" };
const SANDED = { ...PRINTED, finish: "sanded" };

const tableOf = (a: readonly object[], b: readonly object[]) =>
  factorTable([
    { name: "as printed", runs: a.map((known) => facts(known)) },
    { name: "sanded", runs: b.map((known) => facts(known)) },
  ]);

const roleOf = (table: FactorTable, factor: string) => table.rows.find((row) => row.factor === factor)?.role;

test("what differs between the variants alone is what is compared; the rest is the same or not stated", () => {
  const table = tableOf([PRINTED, PRINTED], [SANDED, SANDED]);
  expect(FactorTable.parse(table)).toEqual(table);
  expect(table.compared).toEqual(["finish"]);
  expect(table.confounded).toEqual([]);
  expect(roleOf(table, "pitchRatio")).toBe("constant");
  expect(table.unknown).toContain("motor");
  expect(table.warnings).toEqual([]);
  expect(table.sentence).toMatch(
    /^The variants differ in finish alone, as far as stated\. The same in all runs: pitch ratio, diameter, pack and day\./,
  );
});

test("a pack that goes with the variant is named with its values and what it can move", () => {
  const table = tableOf(
    [PRINTED, PRINTED],
    [
      { ...SANDED, pack: "B" },
      { ...SANDED, pack: "b" },
    ],
  );
  expect(roleOf(table, "pack")).toBe("separates");
  expect(table.confounded).toEqual(["pack"]);
  expect(table.warnings).toHaveLength(1);
  expect(table.warnings[0]).toMatchObject({ code: "compare.confounded", where: "pack" });
  expect(table.warnings[0]!.message).toContain("as printed: A; sanded: B");
  expect(table.warnings[0]!.message).toContain("equal electrical power");
});

test("an uneven mixture is told from an even one", () => {
  const other = { day: "2026-05-13" };
  const uneven = tableOf([PRINTED, PRINTED], [SANDED, { ...SANDED, ...other }]);
  expect(roleOf(uneven, "day")).toBe("partly");
  expect(uneven.warnings[0]).toMatchObject({ code: "compare.partly-confounded" });
  expect(uneven.warnings[0]!.message).toContain("sanded: 2026-05-12 (1), 2026-05-13 (1)");
  const even = tableOf([PRINTED, { ...PRINTED, ...other }], [SANDED, { ...SANDED, ...other }]);
  expect(roleOf(even, "day")).toBe("mixed");
  expect(even.warnings).toEqual([]);
});

test("two design factors that change together are told, another propeller alone is not", () => {
  const both = tableOf([{ ...PRINTED, propeller: "P1" }], [{ ...SANDED, pitchRatio: 1.2, propeller: "P2" }]);
  expect(both.compared).toEqual(["finish", "pitchRatio"]);
  expect(both.warnings[0]).toMatchObject({ code: "compare.several-factors" });
  const one = tableOf([{ ...PRINTED, propeller: "P1" }], [{ ...SANDED, propeller: "P2" }]);
  expect(one.compared).toEqual(["finish"]);
  expect(one.warnings).toEqual([]);
});

test("factors that cross over several variants are not told as inseparable, those of which one tells the other are", () => {
  const variant = (finish: string, pitchRatio: number) => ({
    name: `${finish} ${pitchRatio}`,
    runs: [facts({ finish, pitchRatio })],
  });
  const crossed = factorTable([variant("a", 0.8), variant("a", 1), variant("b", 0.8), variant("b", 1)]);
  expect(crossed.compared).toEqual(["finish", "pitchRatio"]);
  expect(crossed.warnings).toEqual([]);
  const bound = factorTable([variant("a", 0.8), variant("b", 1), variant("b", 1.2)]);
  expect(bound.warnings).toMatchObject([{ code: "compare.several-factors" }]);
});

test("a factor that some run does not state is unknown, not constant", () => {
  const table = tableOf([PRINTED, PRINTED], [SANDED, { finish: "sanded" }]);
  expect(roleOf(table, "pack")).toBe("unknown");
  expect(table.rows.find(({ factor }) => factor === "pack")!.values[1]!.values).toEqual([
    { text: "A", runs: 1 },
    { text: "not known", runs: 1 },
  ]);
});

describe("levels", () => {
  test.each([
    { factor: "diameter", a: 0.076, b: 0.0762, same: true, why: "within half a per cent" },
    { factor: "diameter", a: 0.076, b: 0.08, same: false, why: "4 mm apart" },
    { factor: "immersion", a: 0.2, b: 0.21, same: true, why: "a centimetre of depth" },
    { factor: "pitchRatio", a: 0.9, b: 1, same: false, why: "another pitch" },
  ])("$factor $a and $b: $why", ({ factor, a, b, same }) => {
    const table = tableOf([{ [factor]: a }], [{ [factor]: b }]);
    expect(roleOf(table, factor)).toBe(same ? "constant" : "separates");
  });

  test("fluids are told by kind, and temperatures two kelvin apart count as one", () => {
    const fresh = (celsius: number) => ({ fluid: { kind: "fresh", temperature: 273.15 + celsius } });
    const table = tableOf([fresh(18)], [fresh(19.5)]);
    expect([roleOf(table, "fluid"), roleOf(table, "temperature")]).toEqual(["constant", "constant"]);
    const cold = tableOf([fresh(18)], [{ fluid: { kind: "sea", temperature: 278.15, salinity: 35 } }]);
    expect(cold.confounded).toEqual(["fluid", "temperature"]);
  });
});

describe("groups", () => {
  const runs = [
    facts({ name: "r1", finish: "sanded", pitchRatio: 1.2, variant: "x", tags: ["tank"] }),
    facts({ name: "r2", finish: "Sanded", pitchRatio: 0.8, variant: "x", tags: ["tank", "cold"] }),
    facts({ name: "r3", finish: "as printed", variant: "y", tags: ["tank"] }),
    facts({ name: "r4", variant: "" }),
  ];
  const named = (by: Parameters<typeof groupRuns>[1]) =>
    groupRuns(runs, by).groups.map(({ name, runs: own }) => [name, own.map((run) => run.name)]);

  test("by variant, by words and by number, numbers ascending", () => {
    expect(named("variant")).toEqual([
      ["x", ["r1", "r2"]],
      ["y", ["r3"]],
    ]);
    expect(named("finish")).toEqual([
      ["sanded", ["r1", "r2"]],
      ["as printed", ["r3"]],
    ]);
    expect(named("pitchRatio").map(([name]) => name)).toEqual(["pitch ratio 0.8", "pitch ratio 1.2"]);
  });

  test("runs that do not state it are named, not dropped in silence", () => {
    expect(groupRuns(runs, "finish").warnings[0]).toMatchObject({ code: "compare.run-left-out", where: "r4" });
  });

  test("filters take tags and values as they are shown", () => {
    const names = (found: typeof runs) => found.map(({ name }) => name);
    expect(names(filteredRuns(runs, { tags: ["cold"], factors: [] }))).toEqual(["r2"]);
    const sanded = { tags: ["tank"], factors: [{ factor: "finish" as const, text: "SANDED" }] };
    expect(names(filteredRuns(runs, sanded))).toEqual(["r1", "r2"]);
    const pitch = { tags: [], factors: [{ factor: "pitchRatio" as const, text: "1.2" }] };
    expect(names(filteredRuns(runs, pitch))).toEqual(["r1"]);
  });
});

test("the facts of a stored run come from its parts, its stand and its calibration", () => {
  const run = Run.parse({
    name: "first",
    variant: "sanded",
    packId: "7d3bd6a6-5a0b-4b57-9e3c-0e3b1a0a7f10",
    day: "2026-05-12",
    tags: ["tank"],
    file: { name: "a.csv", sha256: "0".repeat(64), size: 10 },
    recipe: {
      columns: [],
      fluid: { kind: "fresh", temperature: 291.15 },
      corrections: { thrust: { factor: 2.5 } },
      stand: { shaftImmersion: 0.2 },
    },
  });
  const propeller = {
    name: "P",
    diameter: 0.076,
    diameterUncertainty: 0,
    nozzle: false,
    finish: "sanded",
    pitchRatio: 1,
    note: "",
  };
  const found = factsOfRun("id", run, { propeller, motor: "M", pack: "A", instruments: { current: "clamp" } });
  expect(found).toMatchObject({
    ...{ propeller: "P", finish: "sanded", pitchRatio: 1, nozzle: false, motor: "M", pack: "A", day: "2026-05-12" },
    ...{ immersion: 0.2, tags: ["tank"], instruments: "current clamp and thrust × 2.5000" },
  });
  expect(found).not.toHaveProperty("material");
});

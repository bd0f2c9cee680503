import { describe, expect, test } from "vitest";
import { mountingPlan } from "../../shared/compare/planning/mountingPlan.ts";
import { runSheet } from "../../shared/compare/planning/runSheet.ts";
import { MountingPlan, PlanRequest } from "../../shared/model/mountingPlan.ts";
import { relative } from "../relative.ts";

const plan = (request: object) => mountingPlan(PlanRequest.parse({ runToRun: 0.02, difference: 0.05, ...request }));

/**
 * R 4.2.2 `power.t.test(delta = .05, sd = .02, strict = TRUE)`: 3.76181313 for .8 and 4.57478369 for .9. The difference is
 * taken in logarithms, so 5 % is stated as e^0.05 - 1.
 */
test.each([
  { power: 0.8, exact: 3.76181313, whole: 4 },
  { power: 0.9, exact: 4.57478369, whole: 5 },
])(
  "a difference of 0.05 in logarithms at a spread of 0.02 takes $whole mountings for $power",
  ({ power, exact, whole }) => {
    const found = plan({ difference: Math.expm1(0.05), power });
    expect(MountingPlan.parse(found)).toEqual(found);
    expect(found.mountings).toBe(whole);
    expect(found.exactMountings).toSatisfy(relative(exact, 1e-6));
    expect(found.power!).toBeGreaterThanOrEqual(power);
  },
);

test("the sentence tells what is still to be made, and what a larger spread would ask for", () => {
  // s √(4/χ²_0.1(4)) with χ² 1.063623216792 (scipy 1.17.1 `stats.chi2.ppf(.1, 4)`): 0.0387852.
  const found = plan({ runToRunDegreesOfFreedom: 4, mountingsSoFar: 3 });
  expect(found.more).toBe(1);
  expect(found.largerSpread).toSatisfy(relative(0.02 * Math.sqrt(4 / 1.063623216792), 1e-9));
  expect(found.mountingsIfSpreadIsLarger!).toBeGreaterThan(found.mountings!);
  expect(found.sentence).toContain("1 more than the three there are");
});

test("a spread from two degrees of freedom is warned of, and one out of reach is said plainly", () => {
  expect(plan({ runToRunDegreesOfFreedom: 2 }).warnings[0]).toMatchObject({ code: "compare.spread-uncertain" });
  const hopeless = plan({ runToRun: 1, difference: 0.001 });
  expect(hopeless).toMatchObject({ mountings: null, more: null, power: null, sheet: null });
  expect(hopeless.sentence).toContain("make the mounting repeat better first");
});

test("pairs inside blocks need as many blocks as a paired test on the difference of two runs", () => {
  // Root of the power by the noncentral t of scipy 1.17.1 (`stats.nct.sf(t, n - 1, d) + stats.nct.sf(t, n - 1, -d)`, d = .04 sqrt(n)/(sqrt(2) .02)).
  const found = plan({ design: "paired", difference: Math.expm1(0.04) });
  expect(found.exactMountings).toSatisfy(relative(6.106624876344609, 1e-8));
  expect(found.mountings).toBe(7);
});

describe("run sheet", () => {
  const SHEET = {
    variants: ["as printed", "sanded", "filled"],
    seed: 7,
    blocks: ["Monday", "Tuesday"],
    blockKind: "day" as const,
  };
  const sheetOf = (more: object = {}) => plan({ sheet: { ...SHEET, ...more } }).sheet!;

  test("every block holds every variant equally often, each mounting once", () => {
    const { rows } = sheetOf();
    expect(rows).toHaveLength(3 * 4);
    for (const block of SHEET.blocks) {
      for (const variant of SHEET.variants) {
        expect(rows.filter((row) => row.block === block && row.variant === variant)).toHaveLength(2);
      }
    }
    for (const variant of SHEET.variants) {
      expect(rows.filter((row) => row.variant === variant).map(({ mounting }) => mounting)).toEqual([1, 2, 3, 4]);
    }
    expect(rows.map(({ run }) => run)).toEqual(rows.map((_, i) => i + 1));
  });

  test("the same seed gives the same order, another another, and all orders of a round come up alike", () => {
    const order = (seed: number) => runSheet({ ...SHEET, seed, inAir: false }, 4).rows.map(({ variant }) => variant);
    expect(order(7)).toEqual(order(7));
    expect(order(7)).not.toEqual(order(8));
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 600; seed++) {
      const first = order(seed).slice(0, 3).join();
      counts.set(first, (counts.get(first) ?? 0) + 1);
    }
    // 100 expected of each of six orders; 99.9 % point of chi-square with 5 degrees of freedom 20.515 (scipy 1.17.1).
    const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - 100) ** 2 / 100, 0);
    expect(counts.size).toBe(6);
    expect(chiSquare).toBeLessThan(20.515);
  });

  test("cautions name blades, packs and water; in air nothing is said of water", () => {
    const wet = sheetOf({ diameter: 0.076 });
    expect(wet.cautions.join(" ")).toMatch(/blades.*packs.*water.*Local codes/);
    expect(wet.before.join(" ")).toMatch(/114\smm under the surface \(1\.5 diameters\)/);
    const dry = sheetOf({ inAir: true });
    expect([...dry.cautions, ...dry.before, ...dry.blanks.map(({ title }) => title)].join(" ")).not.toMatch(
      /near water|Water temp|surface/i,
    );
  });

  test("mountings that do not go evenly into the blocks are told", () => {
    const found = plan({ sheet: { ...SHEET, blocks: ["a", "b", "c"] } });
    expect(found.warnings.map(({ code }) => code)).toEqual(["compare.uneven-blocks"]);
    const inBlock = (name: string) => found.sheet!.rows.filter(({ block }) => block === name).length;
    expect(["a", "b", "c"].map(inBlock)).toEqual([6, 3, 3]);
  });
});

import { describe, expect, test } from "vitest";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import { trendOf } from "../../shared/compare/trend/trendOf.ts";
import { anovaOf } from "../../shared/compare/variance/anovaOf.ts";
import { variantRatio } from "../../shared/compare/variantRatio.ts";
import { normalDraw } from "../../shared/numeric/distributions.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { facts, plateau, runOf } from "../unit/comparePlateaus.ts";
import { run } from "../unit/compareRuns.ts";
import { share } from "./coverage.ts";

/** Standard normal numbers from a seed. */
function normals(seed: number): () => number {
  const uniform = uniformsFrom(seed);
  return () => normalDraw(uniform);
}

/** Three standard errors of a share of `count` simulations. */
const margin = (expected: number, count: number) => 3 * Math.sqrt((expected * (1 - expected)) / count);

const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));

const REMOUNTING = 0.02;

describe("false claims where both variants are the same", () => {
  const COUNT = 4000;

  /**
   * Type-I rate of Welch's test at 5 % for equal variances, 400000 draws with numpy 2.4.6 `default_rng(1)` and the t
   * quantile of scipy 1.17.1 at the Welch-Satterthwaite degrees of freedom: cautious for two and two.
   */
  test.each([
    { mountings: 2, welch: 1 - 0.9765 },
    { mountings: 3, welch: 1 - 0.9644 },
    { mountings: 4, welch: 1 - 0.9589 },
    { mountings: 5, welch: 1 - 0.9562 },
  ])("$mountings mountings each: $welch of the cases", ({ mountings, welch }) => {
    const normal = normals(40 + mountings);
    const side = () =>
      times(mountings, () => ({
        ...{ value: 0.2 * Math.exp(REMOUNTING * normal()), independent: 0, degreesOfFreedom: Infinity },
        common: new Map<string, number>(),
      }));
    const claims = times(COUNT, () => variantRatio(side(), side()).pValue < 0.05);
    expect(Math.abs(share(claims) - welch)).toBeLessThan(margin(welch, COUNT));
  });
});

describe("trend over the pitch ratio", () => {
  const COUNT = 1000;
  const PITCH = [0.6, 0.6, 0.8, 0.8, 1, 1, 1.2, 1.2, 1.4, 1.4];
  const OPTIMUM = 1.05;

  const trendWith = (normal: () => number, bend: number, order?: 1 | 2) =>
    trendOf(
      PITCH.map((pitchRatio) => ({
        facts: facts({ pitchRatio }),
        reduction: run({
          thrustCoefficient: 0.2 * Math.exp(-bend * (pitchRatio - OPTIMUM) ** 2 + REMOUNTING * normal()),
        }),
        variant: `${pitchRatio}`,
      })),
      { factor: "pitchRatio", quantity: "thrustCoefficient", scale: "linear", ...(order && { order }) },
    );

  test("Fieller's interval holds the true optimum in 93 to 97 of 100 cases, and the band the true curve", () => {
    const normal = normals(51);
    const found = times(COUNT, () => trendWith(normal, 0.6, 2));
    const holds = found.map(({ optimum }) => {
      const ends = optimum!.fieller95;
      // No bounded interval is one that leaves nothing out.
      return ends === null || (ends[0] <= OPTIMUM && OPTIMUM <= ends[1]);
    });
    expect(share(holds)).toBeGreaterThan(0.93);
    expect(share(holds)).toBeLessThan(0.97);
    const truth = 0.2 * Math.exp(-0.6 * (1 - OPTIMUM) ** 2);
    const middle = found.map(({ band }) => {
      const [low, high] = band[20]!.interval95;
      return low <= truth && truth <= high;
    });
    expect(share(middle)).toBeGreaterThan(0.93);
    expect(share(middle)).toBeLessThan(0.97);
  });

  test("a line of stated order finds a trend where there is none in 4 to 6 of 100 cases", () => {
    const normal = normals(52);
    const claims = times(COUNT * 3, () => trendWith(normal, 0, 1).slopePValue < 0.05);
    expect(share(claims)).toBeGreaterThan(0.04);
    expect(share(claims)).toBeLessThan(0.06);
  });

  test("so does a curve whose order the criterion chose", () => {
    const normal = normals(53);
    const claims = times(COUNT * 3, () => trendWith(normal, 0).slopePValue < 0.05);
    expect(share(claims)).toBeGreaterThan(0.04);
    expect(share(claims)).toBeLessThan(0.06);
  });

  test("where the criterion takes the bend in half of the cases only, the band still holds the true curve", () => {
    const normal = normals(54);
    const truth = 0.2 * Math.exp(-0.2 * (1 - OPTIMUM) ** 2);
    const found = times(COUNT, () => trendWith(normal, 0.2));
    const bent = share(found.map(({ order }) => order === 2));
    expect(bent).toBeGreaterThan(0.3);
    expect(bent).toBeLessThan(0.6);
    const holds = found.map(({ band }) => {
      const [low, high] = band[20]!.interval95;
      return low <= truth && truth <= high;
    });
    expect(share(holds)).toBeGreaterThan(0.93);
  });
});

describe("analysis of variance", () => {
  const COUNT = 2000;

  /** Two finishes by three pitches, three mountings each, or some fewer. */
  const anovaWith = (normal: () => number, counts: readonly number[]) => {
    const cells = ["printed", "sanded"].flatMap((finish) =>
      [0.8, 1, 1.2].map((pitchRatio) => ({ finish, pitchRatio })),
    );
    const runs = cells.flatMap((cell, i) =>
      times(counts[i]!, () => ({
        facts: facts(cell),
        reduction: run({ thrustCoefficient: 0.2 * cell.pitchRatio * Math.exp(REMOUNTING * normal()) }),
        variant: "",
      })),
    );
    return anovaOf(runs, { factors: ["finish", "pitchRatio"], quantity: "thrustCoefficient" });
  };

  test.each([
    { design: "balanced", counts: [3, 3, 3, 3, 3, 3] },
    { design: "unbalanced", counts: [4, 2, 3, 1, 3, 2] },
  ])(
    "$design: an effect and an interaction that are not there are claimed in 4 to 6 of 100 cases",
    ({ design, counts }) => {
      const normal = normals(61);
      const found = times(COUNT, () => anovaWith(normal, counts));
      expect(found[0]!.design).toBe(design);
      for (const row of [0, 2]) {
        const claims = share(found.map(({ rows }) => rows[row]!.pValue! < 0.05));
        expect(claims).toBeGreaterThan(0.04);
        expect(claims).toBeLessThan(0.06);
      }
      expect(found.every(({ rows }) => rows[1]!.pValue! < 0.001)).toBe(true);
    },
  );
});

describe("thrust at equal electrical power", () => {
  const COUNT = 500;

  /** Plateaus scatter by 1 %, mountings by 2 %; T = c P^0.65. */
  const side = (normal: () => number, name: string, factor: number, mountings: number) => ({
    name,
    reductions: times(mountings, () => {
      const mounting = factor * Math.exp(REMOUNTING * normal());
      const power = [10, 18, 30, 48, 70, 95];
      return runOf(
        power.map((P) => plateau({ thrust: mounting * P ** 0.65 * Math.exp(0.01 * normal()), electricalPower: P })),
      );
    }),
  });

  test.each([2, 3, 5])(
    "%i mountings each: the interval holds the true ratio at least as often as it says",
    (mountings) => {
      const normal = normals(70 + mountings);
      const holds = times(COUNT, () => {
        const sides = { baseline: side(normal, "a", 1, mountings), variant: side(normal, "b", 1.3, mountings) };
        const { ratio } = compareVariants(sides).answers.find(
          (one) => one.quantity === "thrustAtEqualElectricalPower",
        )!;
        return ratio!.interval95[0] <= 1.3 && 1.3 <= ratio!.interval95[1];
      });
      expect(share(holds)).toBeGreaterThan(0.93);
      expect(share(holds)).toBeLessThan(mountings === 2 ? 0.99 : 0.98);
    },
  );

  test("single runs that differ by the scatter of their plateaus alone: 93 to 97 of 100", () => {
    const normal = normals(80);
    const single = (name: string, factor: number) => {
      const plateaus = [10, 18, 30, 48, 70, 95].map((P) =>
        plateau({ thrust: factor * P ** 0.65 * Math.exp(0.01 * normal()), electricalPower: P, doubt: 0.01 }),
      );
      return { name, reductions: [runOf(plateaus)] };
    };
    const holds = times(COUNT * 3, () => {
      const sides = { baseline: single("a", 1), variant: single("b", 1.3) };
      const { ratio } = compareVariants(sides).answers.find((one) => one.quantity === "thrustAtEqualElectricalPower")!;
      return ratio!.interval95[0] <= 1.3 && 1.3 <= ratio!.interval95[1];
    });
    expect(share(holds)).toBeGreaterThan(0.93);
    expect(share(holds)).toBeLessThan(0.97);
  });
});

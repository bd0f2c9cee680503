import { describe, expect, test } from "vitest";
import { runLaw } from "../../shared/compare/runLaw.ts";
import { optimumOf } from "../../shared/compare/trend/optimum.ts";
import { type TrendFit, type TrendRun, trendFit } from "../../shared/compare/trend/trendFit.ts";
import { variantRatio } from "../../shared/compare/variantRatio.ts";
import { analysisOfVariance } from "../../shared/numeric/analysisOfVariance.ts";
import { normalDraw } from "../../shared/numeric/distributions.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { plateau, runOf } from "../unit/comparePlateaus.ts";
import { covers, share } from "./coverage.ts";

/** Standard normal numbers from a seed. */
function normals(seed: number): () => number {
  const uniform = uniformsFrom(seed);
  return () => normalDraw(uniform);
}

const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));

const REMOUNTING = 0.02;

/** Runs as the fit of a trend sees them: what trendOf makes of reductions is held to references and unit tests. */
describe("trend over the pitch ratio", () => {
  const PITCH = [0.6, 0.6, 0.8, 0.8, 1, 1, 1.2, 1.2, 1.4, 1.4];
  const OPTIMUM = 1.05;
  const curve = (pitchRatio: number, bend: number) => Math.log(0.2) - bend * (pitchRatio - OPTIMUM) ** 2;

  const trendWith = (normal: () => number, bend: number, order?: 1 | 2) => {
    const runs = PITCH.map((pitchRatio, i): TrendRun => {
      const y = curve(pitchRatio, bend) + REMOUNTING * normal();
      return { x: pitchRatio - 1, y, own: 0, level: Math.floor(i / 2) };
    });
    return trendFit(runs, order);
  };

  /** Whether the band, the outermost of the curves that may be true, holds the true curve. */
  const bandHolds = ({ fit, candidates }: TrendFit, at: number, bend: number) => {
    const truth = curve(at, bend);
    const ends = (sign: 1 | -1) => candidates.map((one) => one.fit.at(at - 1) + sign * one.half(at - 1));
    expect(candidates[0]!.fit).toBe(fit);
    return covers([Math.min(...ends(-1)), Math.max(...ends(1))], truth);
  };

  test("Fieller's interval holds the true optimum in 93 to 97 of 100 cases, and the band the true curve", () => {
    const normal = normals(51);
    const found = times(1000, () => trendWith(normal, 0.6, 2));
    const scale = { toFactor: (x: number) => x + 1, factorPer: () => 1, range: [0.6, 1.4] as const };
    const holds = found.map((one) => {
      const ends = optimumOf({ found: one, ...scale })!.fieller95;
      // No bounded interval is one that leaves nothing out.
      return ends === null || covers(ends, OPTIMUM);
    });
    for (const part of [share(holds), share(found.map((one) => bandHolds(one, 1, 0.6)))]) {
      expect(part).toBeGreaterThan(0.93);
      expect(part).toBeLessThan(0.97);
    }
  });

  test.each([
    { what: "a line of stated order", seed: 52, order: 1 as const },
    { what: "a curve whose order the criterion chose", seed: 53, order: undefined },
  ])("$what finds a trend where there is none in 4 to 6 of 100 cases", ({ seed, order }) => {
    const normal = normals(seed);
    const claims = times(3000, () => trendWith(normal, 0, order).slopePValue < 0.05);
    expect(share(claims)).toBeGreaterThan(0.04);
    expect(share(claims)).toBeLessThan(0.06);
  });

  test("where the criterion takes the bend in half of the cases only, the band still holds the true curve", () => {
    const normal = normals(54);
    const found = times(1000, () => trendWith(normal, 0.2));
    const bent = share(found.map(({ order }) => order === 2));
    expect(bent).toBeGreaterThan(0.3);
    expect(bent).toBeLessThan(0.6);
    expect(share(found.map((one) => bandHolds(one, 1, 0.2)))).toBeGreaterThan(0.93);
  });
});

/** Two finishes by three pitches, three mountings each, or some fewer. */
test.each([
  { design: "balanced", counts: [3, 3, 3, 3, 3, 3] },
  { design: "unbalanced", counts: [4, 2, 3, 1, 3, 2] },
])(
  "analysis of variance, $design: an effect and an interaction that are not there are claimed in 4 to 6 of 100 cases",
  ({ counts }) => {
    const normal = normals(61);
    const cells = counts.flatMap((count, cell) => times(count, () => cell));
    const factors = [cells.map((cell) => Math.floor(cell / 3)), cells.map((cell) => cell % 3)];
    const found = times(2000, () => {
      const logs = factors[1]!.map((pitch) => Math.log(0.8 + 0.2 * pitch) + REMOUNTING * normal());
      return analysisOfVariance(logs, factors);
    });
    for (const rows of [found.map((one) => one.factors[0]!), found.map((one) => one.interaction!)]) {
      const claims = share(rows.map(({ pValue }) => pValue < 0.05));
      expect(claims).toBeGreaterThan(0.04);
      expect(claims).toBeLessThan(0.06);
    }
    expect(found.every((one) => one.factors[1]!.pValue < 0.001)).toBe(true);
  },
);

describe("thrust at equal electrical power", () => {
  const POWER = [10, 18, 30, 48, 70, 95];
  const TRUE_RATIO = 1.3;

  /** What runs with T = P^0.65 tell at 31 W by their own curves, whose plateaus scatter by 1 %. */
  const normal = normals(70);
  const READ = times(600, () => {
    const plateaus = POWER.map((P) =>
      plateau({ thrust: P ** 0.65 * Math.exp(0.01 * normal()), electricalPower: P, doubt: 0.01 }),
    );
    const law = runLaw(runOf(plateaus), "thrustByElectricalPower");
    if ("why" in law) throw new Error(law.why);
    return law.at(31)!;
  });

  test.each([
    { mountings: 2, remounting: REMOUNTING },
    { mountings: 3, remounting: REMOUNTING },
    { mountings: 5, remounting: REMOUNTING },
    { mountings: 1, remounting: 0 },
  ])(
    "$mountings mountings each, $remounting from one to the next: the interval holds the truth in 93 to 97 of 100",
    ({ mountings, remounting }) => {
      const uniform = uniformsFrom(mountings);
      // A mounting moves the whole curve of a run, so a curve read once may be mounted again.
      const side = (factor: number) =>
        times(mountings, () => {
          const read = READ[Math.floor(uniform() * READ.length)]!;
          return { ...read, value: read.value * factor * Math.exp(remounting * normalDraw(uniform)) };
        });
      const holds = times(3000, () => covers(variantRatio(side(1), side(TRUE_RATIO)).interval95, TRUE_RATIO));
      expect(share(holds)).toBeGreaterThan(0.93);
      expect(share(holds)).toBeLessThan(0.97);
    },
  );
});

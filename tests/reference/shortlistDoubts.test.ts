import { expect, test } from "vitest";
import { asYardstick } from "../../shared/drive/seriesDoubt.ts";
import { ShortlistRequest } from "../../shared/model/shortlist.ts";
import { shortlistCsv } from "../../shared/shortlist/shortlistCsv.ts";
import { BOX, propeller, shortlist } from "../unit/shortlistBox.ts";

const WATER = { kind: "fresh", temperature: 291.15 } as const;

function searched(box: object) {
  const requirement = { thrusters: 1, thrustAhead: 12, water: WATER };
  return shortlist(ShortlistRequest.parse({ requirement, box: { ...BOX, gears: [], ...box } }));
}

test("at a given thrust the tip speed is half as doubtful as the thrust coefficient", () => {
  // T = ρ n² D⁴ K_T, so n ~ K_T^(−1/2); JCGM 100:2008, 5.1.6: u(n)/n = ½ u(K_T)/K_T.
  const doubtful = { ...propeller("Fine", 0.076, 0.21, 0.0195) };
  doubtful.ahead = { ...doubtful.ahead, thrustCoefficient: { value: 0.21, standardUncertainty: 0.0063 } };
  for (const { points } of searched({ propellers: [doubtful] }).rows) {
    const { tipSpeed, standardUncertainties } = points[0]!;
    expect(standardUncertainties!.tipSpeed! / tipSpeed).toBeCloseTo(0.015, 4);
  }
});

test("parts without a doubt give numbers without one", () => {
  expect(searched({}).rows[0]!.points[0]).not.toHaveProperty("standardUncertainties");
});

test("the doubt of a yardstick is that of an error to one side which is not corrected", () => {
  // JCGM 100:2008, F.2.4.5. numpy 2.4.6: a = (1 - exp(-.076*log(10)))/sqrt(3), b = (exp(.103*log(10)) - 1)/sqrt(3);
  // hypot(.01, a), hypot(.01, b), -a*b/(hypot(.01, a)*hypot(.01, b)).
  const one = { value: 0.4, standardUncertainty: 0.004 };
  const { thrustCoefficient, torqueCoefficient, correlation } = asYardstick({
    thrustCoefficient: one,
    torqueCoefficient: { value: 0.05, standardUncertainty: 0.0005 },
    correlation: 0,
  });
  expect(thrustCoefficient.value).toBe(0.4);
  expect(thrustCoefficient.standardUncertainty / 0.4).toBeCloseTo(0.0932257, 6);
  expect(torqueCoefficient.standardUncertainty / 0.05).toBeCloseTo(0.1548521, 6);
  expect(correlation).toBeCloseTo(-0.99215502, 6);
});

test("a propeller of a series is told as a yardstick in its name, its row and the headline", () => {
  const series = [
    {
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.42 },
      ...{ pitchRatios: [0.8], diameters: [0.1] },
    },
  ];
  const found = searched({ propellers: [propeller("Fine", 0.076, 0.21, 0.0195)], series });
  const first = found.rows.find(({ train }) => train.propeller.source === "series")!;
  expect(first.combination.propeller).toMatch(/^B series, 3 blades, area ratio 0.420, .*\(yardstick, not a part\)$/);
  expect(first.warnings.map(({ code }) => code)).toEqual(["shortlist.yardstick"]);
  expect(found.answer).toContain(`By its numbers alone number ${first.rank} would score more`);
  expect(shortlistCsv(found)).toContain("standard uncertainty of greatest thrust (N)");
  // Whatever it scores, it stands behind what is kept.
  const sources = found.rows.map(({ train }) => train.propeller.source);
  expect(sources.lastIndexOf("typed")).toBeLessThan(sources.indexOf("series"));
  expect(found.rows[0]!.warnings).toEqual([]);
  const alone = searched({ propellers: [], series });
  expect(alone.answer).toMatch(/up to [\d.]+ ± [\d.]+\u202fN ahead at rest.*none that you keep meets/);
});

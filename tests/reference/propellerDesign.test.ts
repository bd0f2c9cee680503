import { describe, expect, test } from "vitest";
import { type PropellerDesign, PropellerDesignRequest, PropellerDesigns } from "../../shared/model/shortlistDesign.ts";
import { designPropellersInSteps } from "../../shared/shortlist/design/designPropellers.ts";

const BOX = {
  motors: [{ name: "Fifty", speedConstant: 50, resistance: 0.12, noLoadCurrent: 0.4, noLoadCurrentSlope: 0.001 }],
  controllers: [{ name: "Plain", resistance: 0.01 }],
  packs: [{ name: "Big", openCircuitVoltage: 24, resistance: 0.02 }],
};
const SERIES = [{ family: "wageningen-b", blades: 3, areaRatio: 0.5 }];
const WATER = { kind: "fresh", temperature: 291.15 };

function designed(requirement: object, more: object = {}): PropellerDesigns {
  const request = PropellerDesignRequest.parse({
    ...{ box: BOX, series: SERIES, leastDiameter: 0.03 },
    requirement: { thrusters: 2, diameter: 0.12, water: WATER, ...requirement },
    ...more,
  });
  const work = designPropellersInSteps(request);
  for (;;) {
    const step = work.next();
    if (step.done) return PropellerDesigns.parse(step.value);
  }
}

const only = (designs: PropellerDesigns): PropellerDesign => designs.designs[0]!;

/**
 * Optima solved outside the project: propellerDesignSolved.py, scipy 1.17.1 `optimize.minimize(method="Nelder-Mead",
 * options=dict(xatol=1e-10, fatol=1e-14))` over diameter and pitch ratio, `optimize.brentq` for the rate.
 */
describe("the best propeller of a series for a motor", () => {
  test("at speed lies where an independent optimiser finds it", () => {
    const best = only(designed({ thrustAtSpeed: { thrust: 10, speed: 1.5 } }));
    expect(best).toMatchObject({ state: "meets", converged: true, diameterAtEdge: false, pitchAtEdge: false });
    // The worth is flat at its top: the place is known to its root only.
    expect(best.points[0]!.thrustPerPower / 0.30264442809341224).toBeCloseTo(1, 6);
    expect(best.diameter!).toBeCloseTo(0.09519327956757015, 3);
    expect(best.pitchRatio!).toBeCloseTo(0.7372445348926376, 2);
  });

  test("at rest is the largest of the least pitch, and says that it lies at the edges", () => {
    const best = only(designed({ thrustAhead: 20 }));
    expect(best).toMatchObject({
      state: "meets",
      diameter: 0.12,
      pitchRatio: 0.5,
      diameterAtEdge: true,
      pitchAtEdge: true,
    });
    expect(best.points[0]!.thrustPerPower / 0.4228445246781052).toBeCloseTo(1, 9);
  });
});

test("no other diameter and pitch of a fine grid does better", () => {
  const at = (leastDiameter: number, diameter: number) =>
    only(designed({ thrustAtSpeed: { thrust: 10, speed: 1.5 }, diameter }, { leastDiameter })).points[0]!
      .thrustPerPower;
  const best = at(0.03, 0.12);
  for (const D of [0.06, 0.08, 0.09, 0.1, 0.11]) expect(at(D - 1e-4, D)).toBeLessThan(best);
});

test("the greatest thrust within the limits is no less than that of the most efficient propeller", () => {
  const [most, efficient] = (["greatestThrust", "thrustPerPower"] as const).map((aim) =>
    only(designed({ thrustAhead: 20, supplyCurrent: 40 }, { aim })),
  );
  expect(most!.points[0]!.greatestThrust!).toBeGreaterThanOrEqual(efficient!.points[0]!.greatestThrust! * (1 - 1e-9));
  expect(efficient!.points[0]!.thrustPerPower).toBeGreaterThanOrEqual(most!.points[0]!.thrustPerPower * (1 - 1e-9));
});

test("a demand that no size meets is told with the nearest", () => {
  const designs = designed({ thrustAhead: 400, supplyCurrent: 10 });
  expect(only(designs).state).not.toBe("meets");
  expect(designs.answer).toMatch(/^0 of 1 combination/);
});

test("a nozzle series is designed too, and every series says that it is a yardstick", () => {
  const { designs } = designed({ thrustAhead: 20 }, { series: [...SERIES, { family: "ka-4-70-19a" }] });
  expect(designs.map(({ series }) => series.family).sort()).toEqual(["ka-4-70-19a", "wageningen-b"]);
  // At rest a nozzle carries part of the thrust: more of it for the power, as every propeller text has it.
  expect(designs[0]!.series.family).toBe("ka-4-70-19a");
  for (const { warnings, reynolds } of designs) {
    expect(reynolds).toBeGreaterThan(1e4);
    expect(warnings.map(({ code }) => code)).toContain("propeller.series-yardstick");
  }
});

test("a thrust astern is left out of the design and that is said; without a diameter it is refused", () => {
  expect(designed({ thrustAhead: 5, thrustAstern: 5 }).warnings.map(({ code }) => code)).toEqual([
    "shortlist.series-astern",
  ]);
  expect(() => designed({ thrustAhead: 5, diameter: undefined })).toThrow();
});

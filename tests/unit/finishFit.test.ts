import { describe, expect, test } from "vitest";
import { modelEvidence } from "../../shared/propeller/blade/modelEvidence.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { relative } from "../relative.ts";
import { finishRequest, measuredPoint, responseAt } from "./finishCase.ts";

const atRest = (liftFactor: number, dragFactor: number, doubt?: Parameters<typeof measuredPoint>[1]) => {
  const { thrustCoefficient, torqueCoefficient } = responseAt([0])({ roughness: 0, liftFactor, dragFactor })!
    .points[0]!;
  return measuredPoint({ advanceRatio: 0, thrust: thrustCoefficient, torque: torqueCoefficient }, doubt);
};
const oneFinish = (thrust: number, torque: number) =>
  finishFit(finishRequest([{ name: "sanded", measured: [measuredPoint({ advanceRatio: 0, thrust, torque })] }]));
const clean = responseAt([0])({ roughness: 0, liftFactor: 1, dragFactor: 1 })!.points[0]!;
const TWO = [
  { name: "as printed", measured: [atRest(0.85, 3)] },
  { name: "sanded", measured: [atRest(0.95, 1.5)] },
];

describe("a measurement that no surface makes", () => {
  const { thrustCoefficient: T, torqueCoefficient: Q } = clean;
  test.each([
    { thrust: 1.5 * T, torque: 1.1 * Q, bound: "liftTooHigh", suspect: "thrust calibration" },
    { thrust: 0.1 * T, torque: 0.3 * Q, bound: "liftTooLow", suspect: "air drawn down" },
    { thrust: T, torque: 0.7 * Q, bound: "dragTooLow", suspect: "motor constants" },
    { thrust: 0.6 * T, torque: 4 * Q, bound: "dragTooHigh", suspect: "friction of seal and bearing" },
  ])("$bound: K_T $thrust, K_Q $torque", ({ thrust, torque, bound, suspect }) => {
    const { finishes, change, sentence } = oneFinish(thrust, torque);
    expect(finishes[0]).toMatchObject({ state: "outOfReach", bound });
    expect(change).toBeNull();
    expect(sentence).toContain(suspect);
  });

  test("one just beyond a bound, within its doubt, is fitted at the bound and told so", () => {
    const { finishes, warnings } = oneFinish(1.01 * T, 0.9 * Q);
    expect(finishes[0]?.state).toBe("fitted");
    expect(warnings.map(({ code }) => code)).toContain("propeller.finish-at-bound");
  });
});

describe("a claimed gain", () => {
  const verdictOf = (thrust: number, claimedFactor: number) => {
    const point = measuredPoint({ advanceRatio: 0, thrust, torque: clean.torqueCoefficient });
    return finishFit(finishRequest([{ name: "as printed", measured: [point] }], { claimedFactor })).claim!;
  };

  test("a doubling over a blade that is nearly clean is refuted, with what to check", () => {
    const claim = verdictOf(0.85 * clean.thrustCoefficient, 2);
    expect(claim.verdict).toBe("refuted");
    expect(claim.sentence).toContain("no change of surface explains that");
    expect(claim.sentence).toContain("tare");
  });

  test("what lies within the doubts of measurement and prediction stays open", () => {
    const claim = verdictOf(clean.thrustCoefficient, 1.12);
    expect(claim.verdict).toBe("open");
    expect(claim.liftFactorNeeded).toBeGreaterThan(1.3);
  });

  test("a tenth more over a blade that lacks a quarter is possible, and takes less lift than a clean section has", () => {
    const claim = verdictOf(0.75 * clean.thrustCoefficient, 1.1);
    expect(claim.verdict).toBe("possible");
    expect(claim.liftFactorNeeded).toBeLessThan(1);
  });
});

describe("two finishes", () => {
  test("drag and lift ratios are those the measurement was made with", () => {
    const { change } = finishFit(finishRequest(TWO));
    expect(change!.liftRatio.value).toBeCloseTo(0.95 / 0.85, 5);
    expect(change!.dragRatio.interval95[1]).toBeLessThan(1);
  });

  test("what both measurements share makes the change more certain, not less", () => {
    const ratioWith = (common: number) => {
      const doubt = { whole: 0.02, common, correlation: 0 };
      const finishes = [
        { name: "as printed", measured: [atRest(0.85, 3, doubt)] },
        { name: "sanded", measured: [atRest(0.95, 1.5, doubt)] },
      ];
      const modelUncertainty = { thrust: 0, torque: 0 };
      return finishFit(finishRequest(finishes, { modelUncertainty })).change!.liftRatio.standardUncertainty;
    };
    expect(ratioWith(0.019)).toBeLessThan(0.7 * ratioWith(0));
  });

  test("drawing the measurements agrees with the straight-line uncertainty within a fifth", () => {
    const { change } = finishFit(finishRequest(TWO, { draws: 150 }));
    const { monteCarlo, dragRatio, liftRatio } = change!;
    expect(monteCarlo!.failed).toBeLessThan(5);
    expect(monteCarlo!.dragRatio.standardUncertainty).toSatisfy(relative(dragRatio.standardUncertainty, 0.2));
    expect(monteCarlo!.liftRatio.standardUncertainty).toSatisfy(relative(liftRatio.standardUncertainty, 0.2));
  });

  test("the same measurement twice claims no change", () => {
    const same = TWO.map(({ name }) => ({ name, measured: [atRest(0.9, 2)] }));
    const { change } = finishFit(finishRequest(same));
    expect(change!.dragRatio.value).toBeCloseTo(1, 9);
    expect(change!.sentence).toContain("made no difference to the section drag at 0.7 R that can be claimed");
    expect(change!.sentence).toContain("no change of lift can be claimed");
  });

  test("the sentence says what sanding did and what smoothing could still bring", () => {
    expect(finishFit(finishRequest(TWO, { claimedFactor: 2 })).sentence).toMatchInlineSnapshot(
      `"Going from as printed to sanded cut the section drag at 0.7 R from 0.067 ± 0.033 to 0.033 ± 0.033, a difference of −0.034 ± 0.014; it raised the lift by 12 % (95 %: 3 to 20 %). No further gain from smoothing sanded can be promised: a hydraulically smooth surface (roughness below 13 µm here) would change the thrust by 4 % (95 %: −8 to 16 %) at equal rotation rate, and 5 % (95 %: −10 to 21 %) at equal shaft power. 2 times the thrust of as printed at equal rotation rate would need more lift than any factor on these sections gives: no change of surface explains that. If a log shows it, check the tare, the calibration of the thrust, the rotation rate (pole pairs) and whether both are the same propeller. Where the blade shape was filled in from an outline rather than measured, a wrong outline or pitch explains the same deficit as a surface."`,
    );
  });
});

describe("blades known by their outline only", () => {
  const outline = { diameter: 0.076, bladeCount: 3, pitchRatio: 0.9, chordAt07: 0.021 };
  const request = finishRequest(TWO, { blade: { given: "outline", outline } });

  test("are flagged and widen the doubt of each finish, hardly that of the change", () => {
    const assumed = finishFit(request);
    const known = finishFit(finishRequest(TWO));
    expect(assumed.warnings.map(({ code }) => code)).toContain("propeller.generic-blade");
    const [wide, narrow] = [assumed, known].map(({ finishes: [first] }) =>
      first?.state === "fitted" ? first.sectionDrag.standardUncertainty / first.sectionDrag.value : Number.NaN,
    ) as [number, number];
    expect(wide).toBeGreaterThan(1.3 * narrow);
    expect(assumed.change!.liftRatio.standardUncertainty).toBeLessThan(
      1.5 * known.change!.liftRatio.standardUncertainty,
    );
  });
});

describe("uncertainties that can not be", () => {
  test("a common part above the whole is refused", () => {
    const doubt = { whole: 0.01, common: 0.02, correlation: 0 };
    expect(() => finishFit(finishRequest([{ name: "sanded", measured: [atRest(0.9, 2, doubt)] }]))).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "propeller.common-above-total" }) }),
    );
  });

  test("points that share all of their error are refused", () => {
    const doubt = { whole: 0.01, common: 0.01, correlation: 0 };
    const measured = [atRest(0.9, 2, doubt), atRest(0.9, 2, doubt)];
    expect(() => finishFit(finishRequest([{ name: "sanded", measured }]))).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "propeller.correlated-beyond" }) }),
    );
  });

  test("a curve that no surface follows widens the doubt and is told", () => {
    const rest = atRest(0.9, 2, { whole: 0.01, common: 0, correlation: 0 });
    const measured = [rest, { ...rest, advanceRatio: 0.3 }, { ...rest, advanceRatio: 0.6 }];
    const { warnings } = finishFit(finishRequest([{ name: "sanded", measured }]));
    expect(warnings.map(({ code }) => code)).toContain("propeller.finish-misfit");
  });
});

test("the doubt of blade elements that is taken if none is given is what they missed on the propeller held back", () => {
  const { heldBack } = modelEvidence();
  const missed = (of: "thrustCoefficient" | "torqueCoefficient") =>
    Math.sqrt(
      heldBack.reduce((sum, { computed, measured }) => sum + (computed[of] / measured[of] - 1) ** 2, 0) /
        heldBack.length,
    );
  const { thrust, torque } = finishRequest(TWO).modelUncertainty;
  expect(Math.abs(missed("thrustCoefficient") - thrust)).toBeLessThan(0.01);
  expect(Math.abs(missed("torqueCoefficient") - torque)).toBeLessThan(0.01);
});

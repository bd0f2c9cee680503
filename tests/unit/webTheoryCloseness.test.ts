import { describe, expect, it } from "vitest";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../shared/propeller/coefficients.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { besidePrediction, bestOf, closenessRows } from "../../web/views/theory/closeness/closenessModel.ts";
import type { ShownPrediction } from "../../web/views/theory/predictions/shownPrediction.ts";
import type { MeasuredVariant } from "../../web/views/theory/theoryModel.ts";
import { DIAMETER, reductionOf } from "./webBenchReduction.fixture.ts";
import { INPUTS } from "./webTheoryInputs.fixture.ts";

const variant = (name: string, merit: number | null): MeasuredVariant => ({
  name,
  style: 0,
  reductions: [reductionOf()],
  staticMerit: merit === null ? null : uncertain(merit, 0.01),
});

/** A prediction of K_T 0.3 and C_P 2 π 0.035: static merit 0.596175 (worked by hand, K_T^1.5/(C_P √(π/2))). */
const YARDSTICK: ShownPrediction = {
  prediction: {
    name: "B 3-50",
    source: {
      kind: "series",
      diameter: DIAMETER,
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 1 },
    },
  },
  style: 3,
  problem: "",
  predictor: {
    diameter: DIAMETER,
    warnings: [],
    at: () => ({
      state: "known",
      warnings: [],
      thrustCoefficient: 0.3,
      torqueCoefficient: 2 * Math.PI * 0.035 * TORQUE_OVER_POWER_COEFFICIENT,
    }),
  },
};

describe("how close each variant comes", () => {
  it("names the best of those whose shaft power is known", () => {
    expect(bestOf([variant("a", 0.5), variant("b", 0.6), variant("c", null)])?.name).toBe("b");
    expect(bestOf([variant("c", null)])).toBe(null);
  });

  it("puts the thrust over the prediction at (FM/FM_p)^(2/3), with its doubt, and says where power is not known", () => {
    // Momentum theory, T = FM^(2/3) (2 ρ A P²)^(1/3): (0.5/0.596175)^(2/3) = 0.8893; half-width 1.96 × 2/3 × 0.02 of it = 0.0232.
    const [known, unknown] = closenessRows([variant("a", 0.5), variant("c", null)], YARDSTICK, INPUTS);
    expect(known!.cells[0]).toBe("50.0 ± 2.0\u202f%");
    expect(known!.cells[2]).toBe("88.9 ± 2.3\u202f%");
    expect(unknown!.cells[0]).toBe("shaft power not known");
  });

  it("holds an open propeller against an open disc also where another is in a nozzle", () => {
    // σ 1 lifts the ideal merit by √2: Carlton, Marine Propellers and Propulsion, ch. 8.
    const ducted = { ...INPUTS, nozzleAreaRatio: 1 };
    const rows = closenessRows([{ ...variant("open", 0.5), nozzle: false }, variant("ducted", 0.5)], null, ducted);
    expect(rows.map(({ cells }) => cells[0])).toEqual(["50.0 ± 2.0\u202f%", "35.4 ± 1.4\u202f%"]);
  });

  it("makes one more sentence of the best one beside the prediction, and none without a prediction", () => {
    expect(besidePrediction(bestOf([variant("a", 0.5)]), YARDSTICK, INPUTS)).toMatch(
      /^B 3-50, laid over it at equal diameter, would push .* with that power: a makes 88\.9 ± 2\.3\u202f% of it\.$/,
    );
    expect(besidePrediction(bestOf([variant("a", 0.5)]), null, INPUTS)).toBe("");
    expect(besidePrediction(null, YARDSTICK, INPUTS)).toBe("");
  });
});

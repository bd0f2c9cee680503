import { expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { idealMerit, limitThrust } from "../../shared/propeller/bollardEstimate.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import type { ChartSpec } from "../../web/charts/chartSpec.ts";
import { thrustPowerChart } from "../../web/views/theory/pictures/powerPicture.ts";
import { thrustRateChart } from "../../web/views/theory/pictures/ratePicture.ts";
import type { ShownPrediction } from "../../web/views/theory/predictions/shownPrediction.ts";
import { benchDisc, estimate, type MeasuredVariant, theoryAnswer } from "../../web/views/theory/theoryModel.ts";
import { DENSITY, DIAMETER, reductionOf } from "./webBenchReduction.fixture.ts";
import { INPUTS } from "./webTheoryInputs.fixture.ts";

const REDUCTION = reductionOf();
const SANDED: MeasuredVariant = {
  name: "sanded",
  style: 1,
  reductions: [REDUCTION],
  staticMerit: REDUCTION.staticMerit,
};

const GREEDY: ShownPrediction = {
  prediction: {
    name: "greedy",
    source: {
      kind: "series",
      diameter: DIAMETER,
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 1.4 },
    },
  },
  style: 3,
  problem: "",
  predictor: {
    diameter: DIAMETER,
    warnings: [],
    at: () => ({ state: "known", thrustCoefficient: 0.5, torqueCoefficient: 0.08, warnings: [] }),
  },
};

test("a nozzle of area ratio 1 lifts the ideal thrust by the cube root of 2 and the ideal merit to the root of 2", () => {
  // Momentum theory: T = (4 σ ρ A P²)^⅓ against (2 ρ A P²)^⅓; Carlton, Marine Propellers and Propulsion, ch. 8.
  const nozzle = { ...INPUTS, nozzleAreaRatio: 1 };
  expect(limitThrust(100, nozzle) / limitThrust(100, INPUTS)).toBeCloseTo(Math.cbrt(2), 12);
  expect(idealMerit(INPUTS)).toBeCloseTo(1, 12);
  expect(idealMerit(nozzle)).toBeCloseTo(Math.SQRT2, 12);
});

test("power and current follow from a wanted thrust, and the thrust follows back from that power", () => {
  const told = estimate(INPUTS);
  // P = T^1.5 / (FM √(2 ρ A)), 20 N on a 100 mm disc: 89.44 / (0.6 × 3.963) = 37.61 W at the shaft, 50.15 W, 4.179 A.
  expect(told.sentence).toContain("takes 50.2\u202fW and 4.18\u202fA at 12.0\u202fV");
  const back = estimate({ ...INPUTS, duty: { given: "electricalPower", electricalPower: 50.15 } });
  expect(back.rows[0]!.value).toMatch(/^20\.0\u202fN/);
});

test("a disc that is nobody's propeller is called an example in answer, sentence and picture, and another is not", () => {
  const wordsOf = (inputs: typeof INPUTS) => [
    theoryAnswer([], inputs),
    estimate(inputs).sentence,
    thrustPowerChart([], inputs, { kind: "shaftPower" }).series[0]!.name,
  ];
  for (const words of wordsOf({ ...INPUTS, isExample: true })) expect(words).toMatch(/example (disc of )?100\s?mm/);
  for (const words of wordsOf(INPUTS)) expect(words).not.toContain("example");
});

test("a merit above the ideal is called impossible, and possible again in a nozzle", () => {
  expect(estimate({ ...INPUTS, staticMerit: 1.1 }).caution).toContain("more than momentum theory allows");
  expect(estimate({ ...INPUTS, staticMerit: 1.1, nozzleAreaRatio: 1 }).caution).toBe("");
});

test("the answer tells the share of the ideal and both thrusts at one power", () => {
  const text = theoryAnswer([{ ...SANDED, reductions: [REDUCTION, REDUCTION] }], INPUTS);
  expect(text).toMatch(
    /^Sanded makes 71\.4 ± 2\.0\u202f% of the ideal power efficiency: 100\u202fW at the shaft push /,
  );
  expect(text).toMatch(/where the ideal pushes 54\.0\u202fN\.$/);
});

test.each([
  { variants: [], says: "No run has been reduced yet" },
  { variants: [{ ...SANDED, reductions: [], staticMerit: null }], says: "No run has been reduced yet" },
  { variants: [{ ...SANDED, staticMerit: null }], says: "no shaft power" },
  { variants: [SANDED], says: "One mounting only" },
])("the answer says what it rests on: $says", ({ variants, says }) => {
  expect(theoryAnswer(variants, INPUTS)).toContain(says);
});

test("measured points lie where they were measured and the prediction below the limit", () => {
  const { series } = thrustPowerChart([SANDED], INPUTS, { kind: "shaftPower" });
  const of = (kind: string) => series.find((one) => one.kind === kind)!.points;
  expect(of("measured")[2]!.x).toBeCloseTo(27, 9);
  expect(of("measured")[2]!.y).toBeCloseTo(18, 9);
  for (const [at, point] of of("prediction").entries()) {
    if (at > 0) expect(point.y / of("limit")[at]!.y).toBeCloseTo(0.6 ** (2 / 3), 12);
  }
});

test("against electrical power the prediction loses what the drive loses", () => {
  const atShaft = thrustPowerChart([], INPUTS, { kind: "shaftPower" }).series[1]!.points.at(-1)!;
  const electrical = thrustPowerChart([], INPUTS, { kind: "electricalPower" }).series[1]!.points.at(-1)!;
  expect(electrical.x).toBeCloseTo(atShaft.x / 0.75, 9);
  expect(electrical.y).toBeCloseTo(atShaft.y, 9);
});

test("against rotation rate the stated merit of the run itself gives its own fit line back", () => {
  const { series } = thrustRateChart([SANDED], { ...INPUTS, staticMerit: REDUCTION.staticMerit!.value });
  const [prediction, fit] = ["prediction", "fit"].map(
    (kind) => series.find((one) => one.kind === kind)!.points.at(-1)!,
  );
  expect(prediction!.y).toBeCloseTo(fit!.y, 9);
  expect(prediction!.yInterval![0]).toBeLessThan(prediction!.y);
});

test("against rotation rate the ruled-out region is that of whatever takes the most power, so that no prediction lies in it", () => {
  const { series } = thrustRateChart([SANDED], INPUTS, [GREEDY]);
  const limit = series.find(({ kind }) => kind === "limit")!;
  expect(limit.name).toBe("Momentum limit at the shaft power of greedy");
  const drawn = series.find(({ id }) => id === "prediction-greedy")!.points.at(-1)!;
  // K_T 0.5 with K_Q 0.08: FM = 0.5^1.5/(2 π 0.08 √(π/2)) = 0.5612, T/T_limit = FM^(2/3) = 0.6804 (momentum theory).
  expect(drawn.y / limit.points.at(-1)!.y).toBeCloseTo(0.6804, 3);
});

test("plateaus of a run at speed do not stand among bollard thrusts", () => {
  const moving = { plateau: 2, isAtRest: false, advanceRatio: uncertain(0.3, 0.01) };
  const points = [{ plateau: 1, isAtRest: true, advanceRatio: uncertain(0, 0.01) }, moving];
  const towed = { ...REDUCTION, advance: { points } as unknown as Reduction["advance"] };
  const variant = { ...SANDED, reductions: [towed] };
  const count = (spec: ChartSpec) => spec.series.find(({ kind }) => kind === "measured")!.points.length;
  expect(count(thrustRateChart([variant], INPUTS))).toBe(1);
  expect(count(thrustPowerChart([variant], INPUTS, { kind: "shaftPower" }))).toBe(1);
});

test("without shaft power there is no prediction against rotation rate, and no limit", () => {
  const blind: MeasuredVariant = {
    ...SANDED,
    staticMerit: null,
    reductions: [reductionOf({ powerCoefficient: null })],
  };
  expect(thrustRateChart([blind], INPUTS).series.map((one) => one.kind)).toEqual(["fit", "measured"]);
});

test("the limit beside measured points is that of their own disc and water, of several the highest", () => {
  expect(benchDisc([])).toEqual({});
  const larger = { ...REDUCTION, diameter: { ...REDUCTION.diameter, value: 0.12 } };
  const disc = benchDisc([SANDED, { ...SANDED, reductions: [larger] }]);
  expect(disc).toEqual({ diameter: 0.12, density: DENSITY });
});

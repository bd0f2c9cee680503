import { describe, expect, it } from "vitest";
import type { Prediction } from "../../shared/model/prediction.ts";
import { bladesPredictor } from "../../shared/propeller/prediction/bladesPredictor.ts";
import { seriesPredictor } from "../../shared/propeller/prediction/seriesPredictor.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import type { ChartSpec } from "../../web/charts/chartSpec.ts";
import { openWaterPicture } from "../../web/views/theory/pictures/openWaterPictures.ts";
import { thrustPowerChart } from "../../web/views/theory/pictures/powerPicture.ts";
import { thrustRateChart } from "../../web/views/theory/pictures/ratePicture.ts";
import { residualPicture } from "../../web/views/theory/pictures/residualPictures.ts";
import {
  type SpeedInputs,
  speedPicture,
  speedReasons,
  speedWarnings,
  variantsAtSpeed,
} from "../../web/views/theory/pictures/speedPicture.ts";
import { predictionNotes } from "../../web/views/theory/predictions/predictionNotes.ts";
import type { ShownPrediction } from "../../web/views/theory/predictions/shownPrediction.ts";
import type { MeasuredVariant } from "../../web/views/theory/theoryModel.ts";
import { DENSITY, DIAMETER, reductionOf } from "./webBenchReduction.fixture.ts";
import { INPUTS } from "./webTheoryInputs.fixture.ts";

const REDUCTION = reductionOf();
const SANDED: MeasuredVariant = {
  name: "sanded",
  style: 1,
  reductions: [REDUCTION],
  staticMerit: REDUCTION.staticMerit,
};

// B4-70 at P/D 1.0: Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975), tables 5 and 6.
const SERIES = { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 } as const;
const SOURCE: Prediction["source"] = { kind: "series", diameter: DIAMETER, series: SERIES };
const SHOWN: ShownPrediction = {
  prediction: { name: "B 4-70", source: SOURCE },
  style: 3,
  predictor: seriesPredictor(SERIES, DIAMETER),
  problem: "",
};
const K_T = 0.454739;
const TEN_K_Q = 0.6754;

const pointsOf = ({ series }: ChartSpec, id: string) => series.find((one) => one.id === id)!.points;

describe("predictions in the pictures at bollard", () => {
  it("draws the thrust of a series as K_T ρ n² D⁴ against rotation rate", () => {
    const points = pointsOf(thrustRateChart([SANDED], INPUTS, [SHOWN]), "prediction-B 4-70");
    const { x, y } = points.at(-1)!;
    expect(y / (K_T * DENSITY * (x / 60) ** 2 * DIAMETER ** 4)).toBeCloseTo(1, 5);
  });

  it("draws it against the power that the series takes, and below the momentum limit", () => {
    const spec = thrustPowerChart([SANDED], INPUTS, { kind: "shaftPower", predictions: [SHOWN] });
    const { x, y } = pointsOf(spec, "prediction-B 4-70").at(-1)!;
    const n = Math.sqrt(y / (K_T * DENSITY * DIAMETER ** 4));
    expect((x / (2 * Math.PI * (TEN_K_Q / 10) * DENSITY * n ** 3 * DIAMETER ** 5)).toFixed(3)).toBe("1.000");
    expect(y).toBeLessThan(Math.cbrt(2 * DENSITY * (Math.PI / 4) * DIAMETER ** 2 * x ** 2));
  });

  it("draws a stated merit against power alone, since it tells no rotation rate", () => {
    const merit: ShownPrediction = {
      prediction: {
        name: "FM",
        source: { kind: "staticMerit", diameter: DIAMETER, staticMerit: 0.5, nozzleAreaRatio: null },
      },
      style: 4,
      predictor: null,
      problem: "",
    };
    const { x, y } = pointsOf(
      thrustPowerChart([], INPUTS, { kind: "shaftPower", predictions: [merit] }),
      "prediction-FM",
    ).at(-1)!;
    // FM = T^1.5 / (P √(2 ρ A)).
    expect(y ** 1.5 / (x * Math.sqrt(2 * DENSITY * (Math.PI / 4) * DIAMETER ** 2))).toBeCloseTo(0.5, 9);
    expect(thrustRateChart([SANDED], INPUTS, [merit]).series.some(({ id }) => id === "prediction-FM")).toBe(false);
  });
});

describe("what momentum theory rules out", () => {
  const ducted = { family: "ka-4-70-19a", pitchRatio: 1 } as const;
  const NOZZLE: ShownPrediction = {
    prediction: { name: "Ka", source: { kind: "series", diameter: DIAMETER, series: ducted } },
    style: 5,
    predictor: seriesPredictor(ducted, DIAMETER),
    problem: "",
  };
  const kinds = ({ series }: ChartSpec) =>
    series.filter(({ id }) => id.endsWith("limit")).map(({ id, kind, name }) => [id, kind, name.includes("without")]);

  it("is that of the measured disc while nothing on show can pass it", () => {
    const spec = thrustPowerChart([SANDED], INPUTS, { kind: "shaftPower", predictions: [SHOWN] });
    expect(kinds(spec)).toEqual([["limit", "limit", true]]);
  });

  it("lies 2^(1/3) higher with a nozzle on show, whose curve stays below, and the open disc keeps a line", () => {
    const spec = thrustPowerChart([SANDED], INPUTS, { kind: "shaftPower", predictions: [SHOWN, NOZZLE] });
    expect(kinds(spec)).toEqual([
      ["limit", "limit", false],
      ["measured-limit", "fit", true],
    ]);
    const [nozzle, open, ka] = ["limit", "measured-limit", "prediction-Ka"].map((id) => pointsOf(spec, id).at(-1)!);
    // Kuchemann & Weber, Aerodynamics of Propulsion (1953): (4 ρ A P²)^(1/3) in a nozzle as wide as the disc, (2 ρ A P²)^(1/3) open.
    expect(nozzle!.y / open!.y).toBeCloseTo(2 ** (1 / 3), 9);
    expect(ka!.y).toBeGreaterThan(open!.y);
    expect(ka!.y).toBeLessThan(nozzle!.y);
  });
});

describe("a prediction outside the tests of its series", () => {
  it("says so in its name wherever it is drawn, and a note of ten of a series is said once", () => {
    const steep = { ...SERIES, pitchRatio: 1.6 };
    const beyond: ShownPrediction = {
      ...SHOWN,
      prediction: { name: "steep", source: { kind: "series", diameter: DIAMETER, series: steep } },
      predictor: seriesPredictor(steep, DIAMETER),
    };
    const inputs = { variants: [], predictions: [SHOWN, beyond], rotationRate: 50 };
    expect(openWaterPicture(inputs, "thrustCoefficient").series.map(({ name }) => name)).toEqual([
      "B 4-70",
      "steep (outside the tests)",
    ]);
    const { own, shared } = predictionNotes([SHOWN, beyond], 50);
    expect([...own.keys()]).toEqual(["steep"]);
    expect(shared).toEqual([expect.stringMatching(/^Published series: These numbers are those of a smooth/)]);
  });
});

it("blade elements below the Reynolds numbers of their section model say so beside the prediction", () => {
  const geometry = seriesGeometry({ series: SERIES, diameter: 0.02, outsideRange: false });
  const fluid = { density: 999, dynamicViscosity: 1.1e-3, kinematicViscosity: 1.1e-6, vapourPressure: 1700 };
  const surface = { roughness: 0, liftFactor: 1, dragFactor: 1 };
  const small: ShownPrediction = {
    prediction: { name: "small", source: { kind: "blades", propellerId: "p", surface } },
    style: 3,
    predictor: bladesPredictor({ geometry, surface, fluid }),
    problem: "",
  };
  // c 7.5 mm at 0.7 R, 0.7 π n D = 0.044 m/s at 1 rev/s: Re about 300; at 100 rev/s 3e4.
  const told = (rate: number) => predictionNotes([small], rate).own.get("small")!.join(" ");
  expect(told(1)).toContain("Reynolds number");
  expect(told(100)).not.toContain("Reynolds number of the blade at 0.7");
});

describe("the open-water pictures", () => {
  const inputs = { variants: [SANDED], predictions: [SHOWN], rotationRate: 50 };

  it("draws each series from its bollard point to the advance ratio where its thrust ends", () => {
    const points = pointsOf(openWaterPicture(inputs, "thrustCoefficient"), "prediction-B 4-70");
    expect(points[0]!.y).toBeCloseTo(K_T, 5);
    // J at K_T = 0 of B4-70, P/D 1.0: 1.0618.
    expect(points.at(-1)!.x).toBeCloseTo(1.0618, 4);
    expect(points.at(-1)!.y).toBeCloseTo(0, 6);
    expect(pointsOf(openWaterPicture(inputs, "torqueCoefficient"), "prediction-B 4-70")[0]!.y).toBeCloseTo(TEN_K_Q, 4);
  });

  it("draws a variant that was measured only at rest as one point at J = 0 with its interval", () => {
    const points = pointsOf(openWaterPicture(inputs, "thrustCoefficient"), "measured-sanded");
    expect(points).toHaveLength(1);
    expect(points[0]).toMatchObject({ x: 0, y: 0.2 });
    expect(points[0]!.yInterval![0]).toBeLessThan(0.2);
    expect(openWaterPicture(inputs, "efficiency").series.some(({ id }) => id === "measured-sanded")).toBe(false);
  });
});

describe("measured over predicted", () => {
  // The made run has K_T 0.2 and C_P 0.1 at every plateau.
  it.each([
    { of: "thrust", ratio: 0.2 / K_T },
    { of: "shaftPower", ratio: 0.1 / ((2 * Math.PI * TEN_K_Q) / 10) },
  ] as const)("divides every plateau by the prediction at its rotation rate: $of", ({ of, ratio }) => {
    const points = pointsOf(residualPicture([SANDED], SHOWN, of), "measured-sanded");
    expect(points).toHaveLength(3);
    for (const { y, yInterval } of points) {
      expect(y / ratio).toBeCloseTo(1, 4);
      expect(yInterval![0]).toBeLessThan(y);
      expect(yInterval![1]).toBeGreaterThan(y);
    }
  });

  it("stands at the advance ratio where that is asked for: at 0 for a run at rest", () => {
    const spec = residualPicture([SANDED], SHOWN, "thrust", "advanceRatio");
    expect(spec.x.label).toBe("Advance ratio J");
    expect(pointsOf(spec, "measured-sanded").map(({ x }) => x)).toEqual([0, 0, 0]);
  });

  it("holds a propeller of another size against its equal in form", () => {
    const larger = { ...SHOWN, predictor: seriesPredictor(SERIES, 3 * DIAMETER) };
    const [own, other] = [SHOWN, larger].map((shown) =>
      pointsOf(residualPicture([SANDED], shown, "thrust"), "measured-sanded"),
    );
    expect(other!.map(({ y }) => y)).toEqual(own!.map(({ y }) => expect.closeTo(y, 9)));
  });
});

describe("thrust against speed", () => {
  const plain = reductionOf({ powerCoefficient: 0.15 });
  const speed: SpeedInputs = {
    variants: [{ ...SANDED, reductions: [plain], staticMerit: plain.staticMerit }],
    predictions: [SHOWN],
    inputs: INPUTS,
    held: { given: "shaftPower", shaftPower: 100 },
    shape: SHOWN,
    topSpeed: 3,
  };

  it("begins at the bollard thrust of the power held, falls, and stays below the momentum limit", () => {
    const spec = speedPicture(speed, variantsAtSpeed(speed));
    const own = pointsOf(spec, "speed-sanded");
    const merit = 0.2 ** 1.5 / (0.15 * Math.sqrt(Math.PI / 2));
    const ideal = Math.cbrt(2 * DENSITY * (Math.PI / 4) * DIAMETER ** 2 * 100 ** 2);
    expect(own[0]!.y / (ideal * merit ** (2 / 3))).toBeCloseTo(1, 6);
    const limit = pointsOf(spec, "limit");
    for (const [at, { y }] of own.entries()) {
      expect(y).toBeLessThan(limit[at]!.y);
      if (at > 0) expect(y).toBeLessThan(own[at - 1]!.y);
    }
  });

  it("says once what holds for several variants, with their names, and without names what holds for all", () => {
    const alike = { ...speed.variants[0]!, name: "sanded again" };
    const known = variantsAtSpeed({ ...speed, variants: [...speed.variants, alike] });
    expect(speedReasons(known)).toEqual([expect.stringMatching(/^Sanded and sanded again: \w/)]);
    const note = (name: string, words: string) => ({ code: `x.${name}`, message: `${name}: ${words}`, where: name });
    const [one, other] = known.map(({ variant, result }) => ({ variant, result }));
    const warned = [
      { ...one!, result: { ...one!.result, warnings: [note("shared", "far there")] } },
      { ...other!, result: { ...other!.result, warnings: [note("shared", "far there"), note("own", "far here")] } },
    ];
    const told = speedWarnings(warned, []);
    expect(told.map(({ message }) => message)).toEqual(["Far there", "Sanded again: Far here"]);
    const yardstick = { ...SHOWN, predictor: { ...SHOWN.predictor!, warnings: [note("shared", "far there")] } };
    expect(speedWarnings(warned, [yardstick]).map(({ message }) => message)).toEqual(["Sanded again: Far here"]);
  });

  it("has a band that widens with speed for what was measured, and none for a yardstick", () => {
    const spec = speedPicture(speed, variantsAtSpeed(speed));
    const width = ({ yInterval }: { yInterval?: readonly [number, number] }) => yInterval![1] - yInterval![0];
    const own = pointsOf(spec, "speed-sanded");
    expect(width(own.at(-1)!)).toBeGreaterThan(2 * width(own[0]!));
    expect(pointsOf(spec, "prediction-B 4-70").every(({ yInterval }) => yInterval === undefined)).toBe(true);
  });

  it("takes blade elements at the Reynolds number of the rate that takes the power, not of a typical one", () => {
    const diameter = 0.03;
    const geometry = seriesGeometry({ series: SERIES, diameter, outsideRange: false });
    const fluid = { density: DENSITY, dynamicViscosity: 1.1e-3, kinematicViscosity: 1.1e-6, vapourPressure: 1700 };
    const surface = { roughness: 0, liftFactor: 1, dragFactor: 1 };
    const predictor = bladesPredictor({ geometry, surface, fluid });
    const source = { kind: "blades", propellerId: "p", surface } as const;
    const small: ShownPrediction = { prediction: { name: "small", source }, style: 3, predictor, problem: "" };
    const asked = { ...speed, variants: [], predictions: [small], shape: null };
    const [atRest] = pointsOf(speedPicture(asked, []), "prediction-small");
    // T = K_T ρ n² D⁴ at the n of P = 2π K_Q ρ n³ D⁵, K_Q taken again and again at that n.
    let n = 50;
    let thrust = 0;
    for (let step = 0; step < 20; step++) {
      const found = predictor.at({ rotationRate: n, advanceSpeed: 0 });
      if (found.state === "unknown") throw new Error(found.reason);
      n = Math.cbrt(100 / (2 * Math.PI * found.torqueCoefficient * DENSITY * diameter ** 5));
      thrust = found.thrustCoefficient * DENSITY * n ** 2 * diameter ** 4;
    }
    expect(n).toBeGreaterThan(150);
    expect(Math.abs(atRest!.y / thrust - 1)).toBeLessThan(0.03);
  });

  it("draws no limit at a fixed rotation rate, and nothing for a variant without power", () => {
    const held = { given: "rotationRate", rotationRate: 50 } as const;
    const thrustOnly = reductionOf({ powerCoefficient: null });
    const variants = [{ ...SANDED, reductions: [thrustOnly], staticMerit: null }];
    const asked = { ...speed, held, variants };
    expect(variantsAtSpeed(asked)).toEqual([]);
    expect(speedReasons([])).toEqual([]);
    expect(speedPicture(asked, []).series.map(({ kind }) => kind)).toEqual(["prediction"]);
  });
});

import { expect, test } from "vitest";
import { qualitySentence } from "../../shared/bench/quality/qualitySentence.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { type Effects, logOf, qualityOf } from "../property/benchQualityRuns.ts";
import { quietStand, type Stand } from "../property/benchSimulatedRun.ts";
import { recipeOf, reduce, tableOf } from "./benchTable.ts";

const UP_AND_DOWN = [15, 22, 30, 37, 45, 37, 30, 22, 15];
const stand = (more: Partial<Stand> = {}) => quietStand({ steps: UP_AND_DOWN, dwell: 8, ...more });
const checked = (code: string, effects: Effects, more: Partial<Stand> = {}) =>
  qualityOf(stand(more), effects).get(`bench.${code}`)!;

/** 76 mm propeller, so that 1.5 D is 114 mm; its disc is 45.4 cm², by π D²/4. */
const MADE: readonly { code: string; effects: Effects; more?: Partial<Stand>; verdict: string; says: RegExp }[] = [
  { code: "immersion", effects: {}, verdict: "unknown", says: /not stated/ },
  { code: "immersion", effects: { stand: { shaftImmersion: 0.113 } }, verdict: "flag", says: /113 mm.*1\.5 diam/ },
  { code: "immersion", effects: { stand: { shaftImmersion: 0.115 } }, verdict: "pass", says: /115 mm/ },
  { code: "tank-size", effects: {}, verdict: "unknown", says: /not stated/ },
  {
    code: "tank-size",
    effects: { stand: { tankWidth: 0.4, tankDepth: 0.4, tankLength: 2 } },
    verdict: "flag",
    says: /35 disc areas/,
  },
  {
    code: "tank-size",
    effects: { stand: { tankWidth: 1, tankDepth: 0.6, tankLength: 1.2 } },
    verdict: "flag",
    says: /16 diameters long/,
  },
  {
    code: "tank-size",
    effects: { stand: { tankWidth: 1, tankDepth: 0.6, tankLength: 3 } },
    verdict: "pass",
    says: /132|130/,
  },
  { code: "return-flow", effects: {}, verdict: "pass", says: /holds/ },
  { code: "return-flow", effects: { returnFlow: 0.018 }, verdict: "flag", says: /falls by 1\.\d % over a plateau/ },
  { code: "return-flow", effects: { returnFlow: -0.018 }, verdict: "flag", says: /rises by 1\.\d %/ },
  { code: "ventilation", effects: {}, verdict: "pass", says: /neither/ },
  {
    code: "ventilation",
    effects: { ventilation: { loss: 0.1, flutter: 0.05, from: "start" } },
    verdict: "flag",
    says: /less than the slower plateaus promise, and flutters/,
  },
  {
    code: "ventilation",
    effects: { ventilation: { loss: 0.1, flutter: 0.05, from: "middle" } },
    verdict: "flag",
    says: /flutters/,
  },
  {
    code: "ventilation",
    effects: { ventilation: { loss: 0, flutter: 0.05, from: "start" } },
    verdict: "pass",
    says: /neither/,
  },
  { code: "pack-sag", effects: {}, verdict: "pass", says: /holds/ },
  { code: "pack-sag", effects: { sag: 0.05 }, verdict: "flag", says: /over the run/ },
  { code: "pack-sag", effects: { electrical: false }, verdict: "unknown", says: /no voltage/ },
  { code: "heating", effects: {}, verdict: "pass", says: /same power/ },
  { code: "heating", effects: { heatWithin: 0.04 }, verdict: "flag", says: /[34](\.\d)? % more power over a plateau/ },
  { code: "heating", effects: { heatOverRun: 0.15 }, verdict: "flag", says: /last visit of a speed/ },
  { code: "heating", effects: { electrical: false }, verdict: "unknown", says: /no electrical power/ },
  { code: "temperature-drift", effects: {}, verdict: "pass", says: /holds within/ },
  { code: "temperature-drift", effects: { temperatureRise: 9 }, verdict: "flag", says: /warmer at the end/ },
  { code: "temperature-drift", effects: { electrical: false }, verdict: "unknown", says: /no temperature/ },
  { code: "thrust-calibration", effects: {}, verdict: "unknown", says: /not stated, so no interval here contains/ },
  { code: "thrust-calibration", effects: { calibration: 0.01 }, verdict: "pass", says: /calibrated to 1\.0 %/ },
  { code: "thrust-calibration", effects: { calibration: 0.06 }, verdict: "flag", says: /calibrated only to 6\.0 %/ },
  { code: "load-cell-saturation", effects: {}, verdict: "pass", says: /do not pile up/ },
  { code: "load-cell-saturation", effects: { clip: 0.8 }, verdict: "flag", says: /stop at/ },
  {
    code: "load-cell-saturation",
    effects: { stand: { loadCellCapacity: 10 } },
    verdict: "flag",
    says: /beyond the stated capacity of 10/,
  },
  { code: "load-cell-saturation", effects: { stand: { loadCellCapacity: 20 } }, verdict: "pass", says: /pile/ },
  { code: "tachometer-aliasing", effects: {}, verdict: "pass", says: /rises with the load/ },
  {
    code: "tachometer-aliasing",
    effects: { sampling: 70 },
    verdict: "flag",
    says: /falls from .* while the command grows/,
  },
  { code: "tachometer-aliasing", effects: {}, more: { rateStep: 1 }, verdict: "flag", says: /steps so coarse/ },
  {
    code: "tachometer-aliasing",
    effects: { stand: { tachometerMarkers: 2, tachometerSampling: 120 } },
    verdict: "flag",
    says: /2 marks pass 90\.\d times a second and are looked at 120 times/,
  },
  {
    code: "tachometer-aliasing",
    effects: { stand: { tachometerMarkers: 1, tachometerSampling: 120 } },
    verdict: "pass",
    says: /rises/,
  },
  { code: "tare-size", effects: {}, verdict: "pass", says: /zero 5\.9 %/ },
  { code: "tare-size", effects: {}, more: { zero: 60 }, verdict: "flag", says: /zero 4\d\d %/ },
  { code: "tare-size", effects: {}, more: { drift: 1.2 }, verdict: "flag", says: /moved 8\.\d %/ },
  { code: "plateau-range", effects: {}, verdict: "pass", says: /9 plateaus/ },
  { code: "plateau-range", effects: {}, more: { steps: [15, 25, 35, 45] }, verdict: "flag", says: /4 plateaus/ },
  {
    code: "plateau-range",
    effects: {},
    more: { steps: [30, 34, 38, 42, 46] },
    verdict: "flag",
    says: /factor of 2\.4/,
  },
  // ITTC 7.5-02-03-02.1 (from memory): 2e5. Re = 0.7 π n D c/ν; 15 rev/s, 20 mm, fresh water of 18 °C, ν 1.053e-6 m²/s: 47.6e3.
  { code: "reynolds-range", effects: { chord: 0.02 }, verdict: "flag", says: /48 thousand/ },
  {
    code: "reynolds-range",
    effects: { chord: 0.02 },
    more: { steps: [70, 80, 100, 120, 145] },
    verdict: "pass",
    says: /usual/,
  },
  { code: "reynolds-range", effects: {}, verdict: "flag", says: /estimated for a broad blade/ },
  { code: "reynolds-range", effects: {}, more: { steps: [60, 80, 100, 110, 122] }, verdict: "unknown", says: /chord/ },
];

test.each(MADE)("$code of a made log: $verdict ($effects $more)", ({ code, effects, more, verdict, says }) => {
  const check = checked(code, effects, more);
  expect(`${check.verdict}: ${check.sentence}`.replaceAll("\u202f", " ")).toMatch(says);
  expect(check.verdict).toBe(verdict);
});

test("what is flagged or not known says what to do, and what passed asks for nothing", () => {
  const cards = [{}, { sag: 0.05 }, { clip: 0.8 }, { electrical: false }].map((effects) => qualityOf(stand(), effects));
  for (const check of cards.flatMap((card) => [...card.values()])) {
    expect(check.mend === "", `${check.code} ${check.verdict}`).toBe(check.verdict === "pass");
    expect(check.sentence, check.code).not.toMatch(/NaN|undefined|unknown/);
    expect(check.limit, check.code).not.toBe("");
  }
});

/**
 * 4 % more power from the winding alone: ΔP = I_m² ΔR, so ΔR/R = 0.04 P/(I_m² R_m), and by IEC 60028 0.00393 of it a
 * kelvin. With R_m 0.15 Ω, K_v 52.36 rad/(V·s) and 45 rev/s: E = 5.40 V, P = I_m (E + I_m R).
 */
test("with the motor's constants the growth of power is told as warmer winding, as an estimate", () => {
  const motor = Motor.parse({ name: "stand motor", speedConstant: 52.36, resistance: 0.15, noLoadCurrent: 0.5 });
  const check = checked("heating", { heatWithin: 0.04, motor });
  expect(check.verdict).toBe("flag");
  const kelvin = Number(/about (\d+)\s*K warmer \(estimate\)/.exec(check.sentence)?.[1]);
  const power = (2 * Math.PI * 0.03 * 998.6 * 45 ** 3 * 0.076 ** 5) / 0.7;
  const back = (2 * Math.PI * 45) / 52.36;
  const current = (-back + Math.sqrt(back ** 2 + 4 * 0.15 * power)) / (2 * 0.15);
  const expected = (0.04 * power) / (current ** 2 * 0.15) / 0.00393;
  expect(kelvin).toBeGreaterThan(0.85 * expected);
  expect(kelvin).toBeLessThan(1.15 * expected);
});

test("a run in air has no surface, tank or ventilation to judge", () => {
  const { table } = logOf(stand(), {}, 3);
  const air = { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 };
  const recipe = recipeOf(
    [
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "rev/s"],
    ],
    { fluid: air },
  );
  const { quality } = reduce({ table, recipe });
  const inAir = quality.filter(({ code }) => /immersion|tank-size|ventilation/.test(code));
  expect(inAir.map(({ verdict }) => verdict)).toEqual(["pass", "pass", "pass"]);
  for (const { sentence } of inAir) expect(sentence).toMatch(/in air/);
});

test("a hand-written table is judged by what it holds: readings without spread leave flutter and drift unknown", () => {
  const rates = [0, 15, 20, 25, 30, 35, 0];
  const thrust = rates.map((n) => 0.4 + 0.2 * 998.6 * n ** 2 * 0.076 ** 4);
  const { quality } = reduce({
    table: tableOf({ rate: rates, thrust }, { resolutions: [0.01, 0.001] }),
    recipe: recipeOf([
      ["rotationRate", "rev/s"],
      ["thrust", "N"],
    ]),
  });
  const verdict = (code: string) => quality.find((check) => check.code === `bench.${code}`)!.verdict;
  for (const code of ["return-flow", "ventilation", "pack-sag", "heating", "immersion", "load-cell-saturation"]) {
    expect(verdict(code), code).toBe("unknown");
  }
  for (const code of ["plateau-range", "tare-size", "tachometer-aliasing"]) expect(verdict(code), code).toBe("pass");
});

test("the empty card says so", () => {
  expect(qualitySentence([])).toBe("No check was made.");
});

test("the card in one sentence names what to look at and what is not known", () => {
  const check = (name: string, verdict: "pass" | "flag" | "unknown") => ({
    ...{ code: "bench.made", name, verdict, measured: null, limit: "", sentence: "", mend: "" },
  });
  expect(
    qualitySentence([check("Ventilation", "pass"), check("Pack sag", "flag"), check("Immersion", "unknown")]),
  ).toBe("1 of 3 checks passed; look at: pack sag. Not known: immersion.");
  expect(qualitySentence([check("Ventilation", "pass")])).toBe("1 of 1 checks passed.");
});

import { expect, test } from "vitest";
import { readingChoices } from "../../shared/bench/readingChoices.ts";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { propellerOf } from "./benchTable.ts";

/** A 76 mm propeller with K_T 0.2 at steps up to 2400 rpm and 37.5 W, as the stand writes it. */
function logOf(header: string, thrust: (newton: number) => number, rate: (rpm: number) => number): string {
  const rows = Array.from({ length: 600 }, (_, i) => {
    const rpm = [0, 1200, 1500, 1800, 2100, 2400, 0][Math.floor(i / 90)]!;
    const T = 0.2 * 998.6 * (rpm / 60) ** 2 * 0.076 ** 4;
    const current = 0.3 + 2.2 * (rpm / 2400) ** 3;
    return [(i / 10).toFixed(1), thrust(T).toFixed(3), rate(rpm).toFixed(0), "15.00", current.toFixed(2)].join(",");
  });
  return `${header}\n${rows.join("\n")}\n`;
}

function choicesOf(text: string, more: object = {}, polePairs?: number) {
  const table = readLog(new TextEncoder().encode(text), "stand.csv");
  const recipe = recipeFromGuesses({
    guesses: guessRoles(table),
    fluid: { kind: "fresh", temperature: 291.15 },
    polePairs,
  });
  return readingChoices({ table, recipe, propeller: propellerOf(), ...more });
}
const same = (value: number) => value;
const verdicts = (choice: ReturnType<typeof choicesOf>[number] | undefined) =>
  Object.fromEntries((choice?.options ?? []).map(({ unit, verdict }) => [unit, verdict]));
const NAMED = "time (s),thrust (N),rpm,voltage (V),current (A)";

test("a written unit that agrees with physics is not asked about", () => {
  expect(choicesOf(logOf(NAMED, same, same))).toEqual([]);
});

test("gram-force under a header of newton: impossible as written, possible in gram-force, and nothing is changed", () => {
  const [thrust, ...more] = choicesOf(logOf(NAMED, (newton) => newton / 0.00980665, same));
  expect(more).toEqual([]);
  expect(verdicts(thrust)).toEqual({ N: "impossible", g: "possible", kg: "impossible" });
  expect(thrust).toMatchObject({ recommended: "g", header: "thrust (N)" });
  expect(thrust!.options.find(({ chosen }) => chosen)!.unit).toBe("N");
  // Momentum theory by hand: A = π/4 · 0.076² = 0.00453646 m², (2 · 998.6 · 0.00453646 · 37.5²)^(1/3) = 23.356 N.
  expect(thrust!.momentumLimit).toBeCloseTo(23.356, 2);
  expect(thrust!.electricalPower).toBeCloseTo(37.5, 6);
  expect(thrust!.sentence).toMatch(/In newton .*1087 N from 37\.5 W.*above the momentum limit of 23\.4 N: impossible/);
  expect(thrust!.sentence).toMatch(/In gram-force .*10\.7 N from 37\.5 W.*possible\. Only g is possible/);
});

test("kilogram-force under a header of newton is told by its thrust coefficient and by its share of the limit", () => {
  const [thrust] = choicesOf(logOf(NAMED, (newton) => newton / 9.80665, same));
  expect(thrust?.recommended).toBe("kg");
  expect(verdicts(thrust)).toMatchObject({ N: "unlikely", kg: "possible" });
});

test("unlabelled columns: thrust is judged with every open reading of the rotation rate, and the other way round", () => {
  const [thrust, rate] = choicesOf(logOf("time (s),load,speed,voltage (V),current (A)", same, (rpm) => 7 * rpm));
  expect(thrust?.recommended).toBe("N");
  expect(rate?.recommended).toBe("erpm");
  expect(rate!.sentence).toContain("with 7 pole pairs (not stated, taken as usual)");
});

test("a motor that can not turn so fast without load rules a reading out", () => {
  const text = logOf("time (s),thrust (N),speed,voltage (V),current (A)", same, (rpm) => 2 * rpm);
  const slow = {
    speedConstant: (2 * Math.PI * 2500) / 60 / 15,
    resistance: 0.1,
    noLoadCurrent: 0.3,
    noLoadCurrentSlope: 0,
  };
  const [rate] = choicesOf(text, { motor: slow }, 2);
  expect(rate?.options[0]).toMatchObject({ unit: "rpm", verdict: "impossible" });
  expect(rate?.options[0]?.sentence).toContain("faster than the motor turns without load, 2500 rpm");
});

test("what a person has decided is asked about again only where it can not be", () => {
  const decided = new Set(["thrust", "rotationRate"] as const);
  expect(choicesOf(logOf("time (s),load,speed,voltage (V),current (A)", same, same), { decided })).toEqual([]);
  expect(
    choicesOf(
      logOf(NAMED, (newton) => newton / 0.00980665, same),
      { decided },
    ),
  ).toHaveLength(1);
});

/** The same stand with a torque cell: K_Q 0.02, so that 2400 rpm take 0.08 N·m and 20 W of the 37.5 W. */
function withTorque(header: string, torque: (newtonMetre: number) => number, supply = true): string {
  const rows = Array.from({ length: 600 }, (_, i) => {
    const rpm = [0, 1200, 1500, 1800, 2100, 2400, 0][Math.floor(i / 90)]!;
    const [T, Q] = [0.2, 0.02].map((K, power) => K * 998.6 * (rpm / 60) ** 2 * 0.076 ** (4 + power));
    const current = 0.3 + 2.2 * (rpm / 2400) ** 3;
    const electrical = supply ? ["15.00", current.toFixed(2)] : [];
    return [(i / 10).toFixed(1), T!.toFixed(3), rpm.toFixed(0), torque(Q!).toFixed(4), ...electrical].join(",");
  });
  return `${header}${supply ? ",voltage (V),current (A)" : ""}\n${rows.join("\n")}\n`;
}

/** Units of torque by their definitions: the kilogram-force is 9.80665 N (CGPM 1901), the inch 25.4 mm, the pound 0.45359237 kg. */
const IN_NEWTON_METRE = { mN·m: 1e-3, kgf·cm: 0.0980665, lbf·in: 0.45359237 * 9.80665 * 0.0254 };

test.each(Object.entries(IN_NEWTON_METRE))(
  "a torque column without a unit can be %s by the power it would mean",
  (unit, factor) => {
    const choices = choicesOf(withTorque("time (s),thrust (N),rpm,torque", (Q) => Q / factor));
    expect(choices.map(({ role }) => role)).toEqual(["torque"]);
    expect(verdicts(choices[0])[unit]).toBe("possible");
    // By hand: 2π · 40 rev/s · 0.02 · 998.6 · 40² · 0.076⁵ = 20.36 W.
    expect(choices[0]!.options.find((option) => option.unit === unit)!.shaftPower).toBeCloseTo(20.36, 1);
  },
);

test("a torque in millinewton metre under a header of newton metre takes more than the motor draws", () => {
  const [choice] = choicesOf(withTorque("time (s),thrust (N),rpm,torque (Nm)", (Q) => Q * 1000));
  expect(verdicts(choice)).toMatchObject({ N·m: "impossible", mN·m: "possible" });
  expect(choice!.sentence).toContain("more than the 37.5 W that the motor draws");
});

test("without electrical readings a torque is weighed by the thrust that its power can make", () => {
  const [choice] = choicesOf(withTorque("time (s),thrust (N),rpm,torque (mNm)", same, false));
  expect(verdicts(choice)).toMatchObject({ mN·m: "impossible", N·m: "possible" });
});

test("pounds and ounces are weighed where the header gives no unit of thrust", () => {
  const pound = 0.45359237 * 9.80665;
  const [thrust] = choicesOf(logOf("time (s),thrust,rpm,voltage (V),current (A)", (newton) => newton / pound, same));
  expect(verdicts(thrust)).toMatchObject({ lbf: "possible", ozf: "unlikely" });
});

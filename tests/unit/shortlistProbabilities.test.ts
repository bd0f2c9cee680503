import { describe, expect, test } from "vitest";
import { probabilityInWords } from "../../shared/shortlist/words.ts";
import { listed, propeller } from "./shortlistBox.ts";

const DOUBTFUL = {
  ...propeller("Fine", 0.1, 0.21, 0.0195, { mass: 0.02, price: 4 }),
  diameter: { value: 0.1, standardUncertainty: 0.0005 },
};

test.each([
  { probability: 0.995, words: "99.5 %" },
  { probability: 0.9996, words: "over 99.9 %" },
  { probability: 1, words: "100 %" },
  { probability: 0.64, words: "64 %" },
])("a probability of $probability is told as $words, never rounded up to certainty", ({ probability, words }) => {
  expect(probabilityInWords(probability)).toBe(words);
});

test("a propeller of just the greatest diameter is not drawn out of the shortlist by the doubt of its diameter", () => {
  const monteCarlo = { rows: 50, draws: 1000, seed: 1 };
  const { rows } = listed({ diameter: 0.1 }, { propellers: [DOUBTFUL] }, { monteCarlo });
  expect(rows.length).toBeGreaterThan(0);
  for (const { drawn } of rows) {
    expect(drawn!.demands.find(({ demand }) => demand === "diameter")!.probability).toBe(1);
  }
});

describe("sentences about certainty", () => {
  const tight = { confidence: 0.995 };

  test("the answer tells the confidence that was asked for", () => {
    expect(listed(tight).answer).toContain("with a probability of 99.5 % for each demand");
  });

  test("what easing would gain is told as a best estimate where a confidence is asked for", () => {
    expect(listed(tight).easing[0]!.sentence).toContain("would be gained, by the best estimate, if");
    expect(listed().easing[0]!.sentence).toContain("would be gained if");
  });

  test("a miss says of a demand that only certainty is lacking for", () => {
    const { misses } = listed({ confidence: 0.999, tipSpeed: 14 }, { propellers: [doubtfulAtTip()] });
    const sentences = misses.map(({ sentence }) => sentence).filter((text) => text.includes("tip speed"));
    expect(sentences.length).toBeGreaterThan(0);
    for (const text of sentences) expect(text).toMatch(/tip speed .* below .*, kept with a probability of \d+.* only/);
  });
});

/** Turns at a tip speed just below 14 m/s at the demanded 22 N, known to 2 % in its thrust coefficient. */
function doubtfulAtTip() {
  const fine = propeller("Fine", 0.076, 0.195, 0.0195, { mass: 0.02, price: 4 });
  const thrustCoefficient = { value: 0.195, standardUncertainty: 0.004 };
  return { ...fine, ahead: { ...fine.ahead, thrustCoefficient } };
}

test("a supply that the hotel load alone brings down has no endurance, in words", () => {
  const { misses } = listed({ hotelPower: 2500 });
  expect(misses[0]!.sentence).toContain("no endurance: the supply does not give the mean thrust");
});

describe("a propeller that is not physical is refused, told from the part", () => {
  test.each([
    { what: "a torque that drives the motor", change: propeller("Odd", 0.08, 0.2, -0.01), where: "torqueCoefficient" },
    { what: "no thrust", change: propeller("Odd", 0.08, 0, 0.02), where: "thrustCoefficient" },
    { what: "no diameter", change: propeller("Odd", 0, 0.2, 0.02), where: "diameter" },
  ])("$what", ({ change, where }) => {
    expect(() => listed({}, { propellers: [propeller("Fine", 0.076, 0.21, 0.0195), change] })).toThrow(
      new RegExp(`Odd.*${where}|${where}.*Odd`),
    );
  });
});

test("a miss tells the thrust that is missing also where the supply can not hold the demanded one", () => {
  const { misses } = listed({ thrustAhead: 200 });
  const sentence = misses[0]!.sentence;
  const point = listed({ thrustAhead: 200, thrusters: 2 }).misses[0]!.points.find(({ duty }) => duty === "ahead");
  expect(point).toBeUndefined();
  expect(sentence).toMatch(/\d N short ahead at rest within its limits: \d+ % too little/);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { LossCause } from "../../shared/model/lossReport.ts";
import { longReport } from "../../shared/propeller/losses/lossInWords.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";

const number = fc
  .tuple(fc.double({ min: 0.02, max: 0.95, noNaN: true }), fc.double({ min: 0.003, max: 0.2, noNaN: true }))
  .map(([value, relative]) => uncertain(value, relative * value));
const report = fc.record({
  staticMerit: number,
  thrustOverIdeal: number,
  series: fc.record({
    name: fc.constant("a smooth screw"),
    staticMerit: fc.constant(0.6),
    thrustRatio: number,
    powerRatio: number,
    thrustAtEqualPower: number,
  }),
  shares: fc
    .tuple(...LossCause.options.map(() => number))
    .map((shares) => shares.map((share, i) => ({ cause: LossCause.options[i]!, share }))),
  sharesFrom: fc.constant("fitted" as const),
});

/** "0.460 ± 0.029" or "46.0 ± 2.9 %" anywhere in a text, as value and half-width, with half a unit of the last digit. */
function* statedNumbers(text: string) {
  for (const [, value, half, percent] of text.matchAll(/(\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?)(?:\s?(%))?/g)) {
    const scale = percent === "%" ? 0.01 : 1;
    const decimals = half!.split(".")[1]?.length ?? 0;
    yield { value: Number(value) * scale, half: Number(half) * scale, rounding: 0.5 * scale * 10 ** -decimals };
  }
}

test("the numbers of the report are the numbers given, in their order and to the digits shown", () => {
  fc.assert(
    fc.property(report, (numbers) => {
      const given = [
        numbers.staticMerit,
        numbers.thrustOverIdeal,
        numbers.series.thrustAtEqualPower,
        numbers.series.thrustRatio,
        numbers.series.powerRatio,
        numbers.staticMerit,
        ...numbers.shares.map(({ share }) => share),
      ];
      const stated = [...statedNumbers(longReport("Sanded", numbers))];
      expect(stated).toHaveLength(given.length);
      stated.forEach(({ value, half, rounding }, i) => {
        const { value: expected, interval95 } = given[i]!;
        expect(Math.abs(value - expected)).toBeLessThanOrEqual(rounding * 1.000001);
        expect(Math.abs(half - (interval95[1] - expected))).toBeLessThanOrEqual(rounding * 1.000001);
      });
    }),
  );
});

import { expect, test } from "vitest";
import { claimInWords, claimVerdict, judgedThrustClaim } from "../../shared/compare/claimVerdict.ts";
import type { Comparison } from "../../shared/model/comparison.ts";

test.each([
  { value: 2.4, interval95: [2.1, 2.7], claimed: 2, verdict: "supported" },
  { value: 1.62, interval95: [1.55, 1.7], claimed: 2, verdict: "refuted" },
  { value: 1.9, interval95: [1.7, 2.1], claimed: 2, verdict: "open" },
  { value: 2.2, interval95: [2, 2.4], claimed: 2, verdict: "open" },
] as const)(
  "$value ($interval95) leaves 'more than $claimed times' $verdict",
  ({ value, interval95, claimed, verdict }) => {
    expect(claimVerdict({ value, interval95 }, claimed).verdict).toBe(verdict);
  },
);

test("the verdict is told with the ratio and its interval", () => {
  expect(claimVerdict({ value: 1.62, interval95: [1.55, 1.7] }, 2).sentence).toBe(
    'These runs speak against "more than 2 times": the ratio is 1.62 (95 %: 1.55 to 1.70).',
  );
});

test("a stated claim is judged for each comparison, named where there are several, with who makes it", () => {
  const stated = { factor: 2, source: "a leaflet" };
  const sides = { baseline: { name: "as printed" }, variant: { name: "sanded" } };
  const one = { ...sides, thrustCoefficientRatio: { value: 2.4, interval95: [2.1, 2.7] } } as unknown as Comparison;
  expect(judgedThrustClaim([one], stated)).toMatchObject({ ...stated, verdicts: [{ verdict: "supported" }] });
  expect(judgedThrustClaim([one, one], stated).verdicts[1]!.sentence).toMatch(/^sanded over as printed: These runs/);
  expect(claimInWords(stated)).toContain(
    "more than 2 times the thrust of the baseline at equal rotation rate (a leaflet)",
  );
  expect(claimInWords({ ...stated, source: "" })).toContain("its source is not stated");
});

test("a factor of 0 is refused", () => {
  expect(() => claimVerdict({ value: 1, interval95: [1, 1] }, 0)).toThrow(/claimed factor is 0/);
});

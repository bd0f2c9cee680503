import fc from "fast-check";
import { expect, test } from "vitest";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { between, expectClose, expectFinite, openScrew, speed } from "./propellerCases.ts";

const duty = fc.oneof(
  fc.record({ given: fc.constant("thrust" as const), thrust: between(0.001, 1e4) }),
  fc.record({ given: fc.constant("shaftPower" as const), shaftPower: between(0.001, 1e5) }),
);

const fixed = fc.oneof(
  fc.record({ given: fc.constant("diameter" as const), diameter: between(0.02, 1) }),
  fc.record({ given: fc.constant("rotationRate" as const), rotationRate: between(0.5, 500) }),
  fc.record({ given: fc.constant("both" as const), diameter: between(0.02, 1), rotationRate: between(0.5, 500) }),
);

const family = fc.oneof(
  fc.record({
    family: fc.constant("wageningen-b" as const),
    blades: fc.integer({ min: 2, max: 7 }),
    areaRatio: between(0.3, 1.05),
  }),
  fc.record({ family: fc.constantFrom("ka-4-70-19a" as const, "ka-5-75-19a" as const) }),
);

test("the best pitch does its duty within rounding, no candidate does it better, or the reason is given", () => {
  fc.assert(
    fc.property(family, duty, fixed, speed, (propeller, asked, known, advanceSpeed) => {
      const request = { series: propeller, duty: asked, fixed: known, advanceSpeed, density: 1000 };
      const result = bestPitch(BestPitchRequest.parse(request));
      expectFinite(result);
      if (result.state === "failed") {
        expect(result.reason).toMatch(/\.$/);
        return;
      }
      const { best, kind } = result;
      expectClose(asked.given === "thrust" ? best.thrust : best.shaftPower, Object.values(asked)[1] as number, 2e-6);
      if (kind !== "optimum") return;
      const near = result.candidates.filter(({ pitchRatio }) => Math.abs(pitchRatio - best.pitchRatio) < 0.03);
      for (const candidate of near) {
        if (asked.given === "thrust") expect(best.shaftPower).toBeLessThanOrEqual(candidate.shaftPower * (1 + 1e-9));
        else expect(best.thrust).toBeGreaterThanOrEqual(candidate.thrust * (1 - 1e-9));
      }
    }),
    { numRuns: 150 },
  );
});

test("twice the size for four times the thrust is the same propeller at the same speed", () => {
  fc.assert(
    fc.property(
      openScrew,
      between(1, 50),
      between(0.03, 0.2),
      between(0, 2),
      (screw, thrust, diameter, advanceSpeed) => {
        const { pitchRatio: _, ...open } = screw;
        const ask = (T: number, D: number) =>
          bestPitch(
            BestPitchRequest.parse({
              ...{ series: open, advanceSpeed, density: 1000 },
              duty: { given: "thrust", thrust: T },
              fixed: { given: "diameter", diameter: D },
            }),
          );
        const [small, large] = [ask(thrust, diameter), ask(4 * thrust, 2 * diameter)];
        if (small.state === "failed" || large.state === "failed") {
          expect(large.state).toBe(small.state);
          return;
        }
        expectClose(large.best.pitchRatio, small.best.pitchRatio, 1e-5);
        expectClose(large.best.shaftPower, 4 * small.best.shaftPower, 1e-7);
        expectClose(large.best.rotationRate, small.best.rotationRate / 2, 1e-5);
      },
    ),
    { numRuns: 40 },
  );
});

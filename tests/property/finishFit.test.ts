import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalDraw } from "../../shared/numeric/distributions.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { ofOneFit, ratioOf, sectionDragOf } from "../../shared/propeller/finish/derived.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { finishSides, isFitted } from "../../shared/propeller/finish/finishSide.ts";
import { jointDoubt } from "../../shared/propeller/finish/jointDoubt.ts";
import { BLADES, FRESH, finishRequest, measuredPoint, ROTATION_RATE, responseAt } from "../unit/finishCase.ts";
import { covers, share } from "./coverage.ts";

const surface = fc.record({
  liftFactor: fc.double({ min: 0.5, max: 1.2, noNaN: true }),
  dragFactor: fc.double({ min: 0.7, max: 5, noNaN: true }),
});

describe("the fit undoes the blade elements", () => {
  test.each([[[0]], [[0, 0.2, 0.4]]])("at advance ratios %s", (advanceRatios) => {
    const response = responseAt(advanceRatios);
    fc.assert(
      fc.property(surface, ({ liftFactor, dragFactor }) => {
        const { points } = response({ roughness: 0, liftFactor, dragFactor })!;
        const measured = points.map(({ thrustCoefficient, torqueCoefficient }, i) =>
          measuredPoint({ advanceRatio: advanceRatios[i]!, thrust: thrustCoefficient, torque: torqueCoefficient }),
        );
        const { sides } = finishSides(finishRequest([{ name: "made", measured }]), BLADES);
        const { fit } = sides[0]!;
        expect(fit).toMatchObject({ state: "fitted", converged: true });
        if (fit.state !== "fitted") return;
        expect(fit.liftFactor).toBeCloseTo(liftFactor, 5);
        expect(fit.dragFactor).toBeCloseTo(dragFactor, 4);
      }),
      { numRuns: 12 },
    );
  });
});

/**
 * Two finishes of known lift and drag, "measured" with an error of their own, one that both share, correlated between
 * thrust and torque, and blade elements that are off by one part for both: how many of the 95 % intervals hold the truth.
 */
test("95 % intervals of lift, drag and their ratios hold the truth in 93 to 97 % of simulated measurements", () => {
  const uniform = uniformsFrom(20_261_125);
  const normal = () => normalDraw(uniform);
  const model = { thrust: 0.02, torque: 0.03 };
  const doubt = { whole: 0.015, common: 0.01, correlation: 0.3 };
  const response = responseAt([0]);
  const hits: boolean[] = [];
  for (let i = 0; i < 220; i++) {
    const truths = [
      { roughness: 0, liftFactor: 0.65 + 0.25 * uniform(), dragFactor: 2.5 + 1.5 * uniform() },
      { roughness: 0, liftFactor: 0.85 + 0.2 * uniform(), dragFactor: 1.6 + 0.8 * uniform() },
    ] as const;
    const off = [1 + model.thrust * normal(), 1 + model.torque * normal()] as const;
    const shared = correlatedPair(normal, doubt.common, doubt.correlation);
    const finishes = truths.map((truth, f) => {
      const { thrustCoefficient, torqueCoefficient } = response(truth)!.points[0]!;
      const own = correlatedPair(normal, Math.sqrt(doubt.whole ** 2 - doubt.common ** 2), doubt.correlation);
      const thrust = thrustCoefficient * off[0] * (1 + shared[0] + own[0]);
      const torque = torqueCoefficient * off[1] * (1 + shared[1] + own[1]);
      return { name: `finish ${f}`, measured: [measuredPoint({ advanceRatio: 0, thrust, torque }, doubt)] };
    });
    const { sides, covariance } = finishSides(finishRequest(finishes), BLADES);
    const [before, after] = sides.filter(isFitted);
    if (before === undefined || after === undefined) throw new Error("a simulated measurement could not be fitted");
    const all = [before.fit, after.fit];
    const doubtOf = jointDoubt({ sides: [before, after], covariance, model });
    const lift = all.map((fit) => ofOneFit(fit.liftFactor, { fit, all }, [1, 0]));
    const drag = all.map((fit) => sectionDragOf(fit, all, response));
    const trueDrag = truths.map((truth) => response(truth)!.sectionDrag);
    hits.push(
      covers(doubtOf(lift[0]!).interval95, truths[0].liftFactor),
      covers(doubtOf(drag[1]!).interval95, trueDrag[1]!),
      covers(doubtOf(ratioOf(lift[1]!, lift[0]!)).interval95, truths[1].liftFactor / truths[0].liftFactor),
      covers(doubtOf(ratioOf(drag[1]!, drag[0]!)).interval95, trueDrag[1]! / trueDrag[0]!),
    );
  }
  expect(share(hits)).toBeGreaterThanOrEqual(0.93);
  expect(share(hits)).toBeLessThanOrEqual(0.97);
});

/** Relative errors of thrust and torque. */
function correlatedPair(normal: () => number, size: number, correlation: number): [number, number] {
  const [a, b] = [normal(), normal()];
  return [size * a, size * (correlation * a + Math.sqrt(1 - correlation ** 2) * b)];
}

/** Every number anywhere in a result. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (typeof value === "object" && value !== null)
    for (const inner of Object.values(value)) yield* numbersIn(inner);
}

test("whatever is measured, no number of the result is not finite and no sentence says so", () => {
  const coefficient = fc.double({ min: 1e-4, max: 3, noNaN: true });
  fc.assert(
    fc.property(coefficient, coefficient, coefficient, coefficient, (thrust, torque, thrust2, torque2) => {
      const points = [
        measuredPoint({ advanceRatio: 0, thrust, torque: torque / 5 }),
        measuredPoint({ advanceRatio: 0, thrust: thrust2, torque: torque2 / 5 }),
      ] as const;
      const result = finishFit(finishRequest(points.map((point, i) => ({ name: `finish ${i}`, measured: [point] }))));
      expect([...numbersIn(result)].filter((number) => !Number.isFinite(number))).toEqual([]);
      expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity|undefined|unknown/);
    }),
    { numRuns: 25 },
  );
});

test("the doubt of the measurement and that of the blade elements add in squares", () => {
  const response = responseAt([0]);
  const { thrustCoefficient, torqueCoefficient } = response({ roughness: 0, liftFactor: 0.9, dragFactor: 2 })!
    .points[0]!;
  const doubtAt = (whole: number) => {
    const point = measuredPoint(
      { advanceRatio: 0, thrust: thrustCoefficient, torque: torqueCoefficient },
      { whole, common: 0, correlation: 0 },
    );
    const request = finishRequest([{ name: "made", measured: [point] }], {
      modelUncertainty: { thrust: 0, torque: 0 },
    });
    const [finish] = finishFit(request).finishes;
    return finish?.state === "fitted" ? finish.sectionDrag.standardUncertainty : Number.NaN;
  };
  const squares = [0.01, 0.02, 0.04].map((whole) => doubtAt(whole) ** 2) as [number, number, number];
  expect((squares[2] - squares[1]) / (squares[1] - squares[0])).toBeCloseTo(4, 3);
});

test("a slower propeller has a smaller Reynolds number and a higher floor", () => {
  const point = measuredPoint({ advanceRatio: 0, thrust: 0.36, torque: 0.044 });
  const at = (rotationRate: number) =>
    finishFit({ ...finishRequest([{ name: "made", measured: [point] }]), fluid: FRESH, rotationRate }).picture!;
  const [slow, fast] = [at(ROTATION_RATE / 4), at(ROTATION_RATE)];
  expect(slow.reynolds / fast.reynolds).toBeCloseTo(0.25, 9);
  expect(slow.laminarFloor / fast.laminarFloor).toBeCloseTo(2, 9);
  expect(slow.smoothDrag).toBeGreaterThan(fast.smoothDrag);
});

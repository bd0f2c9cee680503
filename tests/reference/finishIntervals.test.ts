import { expect, test } from "vitest";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { relative } from "../relative.ts";
import { finishRequest, measuredPoint, responseAt } from "../unit/finishCase.ts";

/** A blade at rest with a lift factor and a drag factor, measured with the relative standard uncertainty `whole`. */
function fitted(liftFactor: number, dragFactor: number, whole: number, modelUncertainty = { thrust: 0, torque: 0 }) {
  const { thrustCoefficient, torqueCoefficient } = responseAt([0])({ roughness: 0, liftFactor, dragFactor })!
    .points[0]!;
  const point = { advanceRatio: 0, thrust: thrustCoefficient, torque: torqueCoefficient };
  const measured = [measuredPoint(point, { whole, common: 0, correlation: 0 })];
  const result = finishFit(finishRequest([{ name: "made", measured }], { modelUncertainty }));
  const [finish] = result.finishes;
  if (finish?.state !== "fitted") throw new Error("not fitted");
  return { ...finish, sentence: result.sentence };
}

/**
 * The same propagation and inversion outside this code: sensitivities by central differences of the blade elements' K_T, K_Q
 * and C_D, S = J⁻¹, U = S V Sᵀ (numpy.linalg), acceptance intervals by brute force on a grid (scipy.stats.norm), roughness by
 * scipy.interpolate.PchipInterpolator over 241 heights and scipy.optimize.brentq; numpy 2.4.6, scipy 1.17.1. The grids leave
 * 0.003 of a standard uncertainty.
 */
test.each([
  {
    ...{ whole: 0.005, model: { thrust: 0, torque: 0 } },
    drag: { u: 0.011109, low: 0.013506, high: 0.054342 },
    factor: { u: 0.50211, low: 0.63291, high: 2.48368 },
    roughness: [0, 524.55e-6],
  },
  {
    ...{ whole: 0.02, model: { thrust: 0.04, torque: 0.05 } },
    // The plain interval of the factor would begin at 0.005, that of the drag below nought: both end at two laminar sides.
    drag: { u: 0.016866, low: 0.005707, high: 0.065616 },
    factor: { u: 0.762945, low: 0.265364, high: 2.995182 },
    roughness: [0, null],
  },
])(
  "intervals of drag, drag factor and roughness for a doubt of $whole",
  ({ whole, model, drag, factor, roughness }) => {
    const found = fitted(0.95, 1.5, whole, model);
    for (const [one, wanted] of [
      [found.sectionDrag, drag],
      [found.dragFactor, factor],
    ] as const) {
      expect(one.standardUncertainty).toSatisfy(relative(wanted.u, 1e-3));
      expect(Math.abs(one.interval95[0] - wanted.low)).toBeLessThan(0.005 * wanted.u);
      expect(Math.abs(one.interval95[1] - wanted.high)).toBeLessThan(0.005 * wanted.u);
    }
    expect(found.roughness! * 1e6).toBeCloseTo(80.157, 1);
    const [low, high] = found.roughnessInterval95!;
    expect(low).toBe(roughness[0]);
    if (roughness[1] === null) expect(high).toBeNull();
    else expect(high!).toSatisfy(relative(roughness[1]!, 0.005));
  },
);

test.each([
  { lift: 1, drag: 0.5, says: /no more than a smooth section has \(roughness, 95 %: smooth to \d+/ },
  { lift: 0.9, drag: 8, says: /more than any roughness up to 1 mm gives/ },
  { lift: 0.85, drag: 3, says: /more than a roughness of 1 mm gives \(95 %: \d+\sµm to beyond 1 mm\)/ },
  { lift: 0.95, drag: 1.5, says: /the drag of a roughness of 80\sµm \(95 %: smooth to/ },
])("what is known of the roughness is said at a drag factor of $drag", ({ lift, drag, says }) => {
  expect(fitted(lift, drag, 0.01).sentence).toMatch(says);
});

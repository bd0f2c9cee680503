import { expect, test } from "vitest";
import type { EvidencePoint } from "../../shared/model/bladeElements.ts";
import { modelEvidence } from "../../shared/propeller/blade/modelEvidence.ts";

/**
 * Measured: Deters, Ananda & Selig, Reynolds number effects on the performance of small-scale propellers, AIAA 2014-2151
 * (2014), and the open University of Illinois propeller data set, vol. 2; the digits stand in `researchPropellers.data.ts`.
 * Neighbouring points of the source differ by up to 3 % on a laboratory rig. The numbers of the section model were chosen on
 * the large propeller; the small one was held back.
 */
const { chosenOn, heldBack } = modelEvidence();
const off = ({ measured, computed }: EvidencePoint, field: "thrustCoefficient" | "torqueCoefficient") =>
  computed[field] / measured[field] - 1;
const goal = (point: EvidencePoint) => point.reynolds >= 1.9e4 && point.reynolds <= 7.4e4;
const atRest = chosenOn.filter(({ advanceRatio }) => advanceRatio === 0);
const efficiency = (J: number, { thrustCoefficient, torqueCoefficient }: EvidencePoint["measured"]) =>
  (J * thrustCoefficient) / (2 * Math.PI * torqueCoefficient);

test("every measured point has its computed one", () => {
  expect(chosenOn).toHaveLength(31);
  expect(heldBack).toHaveLength(7);
});

test.each([...atRest, ...heldBack.filter(goal)].map((point) => ({ point, D: point.diameter, Re: point.reynolds })))(
  "at rest, D $D m and Re $Re, thrust is within 8 % and power within 12 % of the measured",
  ({ point }) => {
    expect(Math.abs(off(point, "thrustCoefficient"))).toBeLessThan(0.08);
    expect(Math.abs(off(point, "torqueCoefficient"))).toBeLessThan(0.12);
  },
);

test("the propeller that was held back agrees down to a Reynolds number of 5 thousand, power to 12 %", () => {
  for (const point of heldBack) {
    expect(Math.abs(off(point, "thrustCoefficient"))).toBeLessThan(0.08);
    expect(Math.abs(off(point, "torqueCoefficient"))).toBeLessThan(0.12);
  }
});

test("thrust grows and power falls with the Reynolds number, by half to twice what was measured", () => {
  const [slow, fast] = [atRest[0]!, atRest.at(-1)!];
  for (const field of ["thrustCoefficient", "torqueCoefficient"] as const) {
    const measured = fast.measured[field] - slow.measured[field];
    const computed = fast.computed[field] - slow.computed[field];
    expect(computed / measured).toBeGreaterThan(0.5);
    expect(computed / measured).toBeLessThan(2);
  }
});

test("advancing, the efficiency is within 0.06 wherever the thrust is more than a tenth of that at rest", () => {
  const loaded = chosenOn.filter(
    ({ advanceRatio, measured }) => advanceRatio > 0 && measured.thrustCoefficient > 0.0135,
  );
  expect(loaded).toHaveLength(18);
  for (const { advanceRatio, measured, computed } of loaded) {
    expect(Math.abs(efficiency(advanceRatio, computed) - efficiency(advanceRatio, measured))).toBeLessThan(0.06);
  }
});

test("where the thrust is nearly gone it is missed by less than a twentieth of the thrust at rest", () => {
  const unloaded = chosenOn.filter(
    ({ advanceRatio, measured }) => advanceRatio > 0 && measured.thrustCoefficient <= 0.0135,
  );
  expect(unloaded).toHaveLength(3);
  for (const { measured, computed } of unloaded) {
    expect(Math.abs(computed.thrustCoefficient - measured.thrustCoefficient)).toBeLessThan(0.0068);
  }
});

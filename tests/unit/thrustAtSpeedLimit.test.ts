import { expect, test } from "vitest";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";

const CODE = "propeller.above-limit-at-speed";

function resultOf(torqueCoefficient: number, fixed: object = { given: "shaftPower", shaftPower: 100 }) {
  return thrustAtSpeed(
    ThrustAtSpeedRequest.parse({
      bollard: { thrustCoefficient: { value: 0.2 }, torqueCoefficient: { value: torqueCoefficient } },
      diameter: 0.1,
      density: 1000,
      series: { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 },
      fixed,
      speeds: [0, 1, 2, 3],
    }),
  );
}

test("a curve that promises more at speed than the momentum limit of its power says from which speed on", () => {
  const { points, warnings } = resultOf(0.1 / (2 * Math.PI));
  const above = points.filter((point) => point.state === "solved" && point.thrust.value > point.idealThrust);
  expect(above.length).toBeGreaterThan(0);
  for (const point of above) {
    if (point.state === "failed") continue;
    // Momentum theory: P_i = T (V + v), T = 2 ρ A (V + v) v; Carlton, Marine Propellers and Propulsion, ch. 8.
    const { thrust, advanceSpeed: V } = point;
    const A = (Math.PI * 0.1 ** 2) / 4;
    const v = -V / 2 + Math.sqrt(V ** 2 / 4 + thrust.value / (2 * 1000 * A));
    expect(thrust.value * (V + v)).toBeGreaterThan(100);
  }
  const told = warnings.find(({ code }) => code === CODE);
  const first = above[0]!;
  expect(told?.message).toContain(`From ${first.advanceSpeed.toFixed(2)} m/s on`);
});

test("a curve below the limit at every speed says nothing of it", () => {
  const { points, warnings } = resultOf(0.15 / (2 * Math.PI));
  expect(points.every((point) => point.state === "solved" && point.thrust.value < point.idealThrust)).toBe(true);
  expect(warnings.some(({ code }) => code === CODE)).toBe(false);
});

test("an interval that reaches beyond the momentum limit at fixed power says from which speed on; at a fixed rate the power is open", () => {
  const { points, warnings } = resultOf(0.15 / (2 * Math.PI));
  const first = points.find((point) => point.state === "solved" && point.thrust.interval95[1] > point.idealThrust);
  const told = warnings.find(({ code }) => code === "propeller.band-above-limit");
  expect(told?.message).toContain(`From ${first?.advanceSpeed.toFixed(2)} m/s on`);
  const turning = resultOf(0.15 / (2 * Math.PI), { given: "rotationRate", rotationRate: 40 });
  expect(turning.warnings.some(({ code }) => code === "propeller.band-above-limit")).toBe(false);
});

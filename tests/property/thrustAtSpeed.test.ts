import fc from "fast-check";
import { expect, test } from "vitest";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { between, expectClose, expectFinite, nozzleScrew, openScrew, speed, testedScrew } from "./propellerCases.ts";

const series = fc.oneof(openScrew, nozzleScrew);

const bollard = fc.record({
  thrustCoefficient: fc.record({ value: between(0.05, 0.6), standardUncertainty: between(0, 0.02) }),
  torqueCoefficient: fc.record({ value: between(0.01, 0.1), standardUncertainty: between(0, 0.002) }),
});

const running = fc.oneof(
  fc.record({ given: fc.constant("rotationRate" as const), rotationRate: between(1, 300) }),
  fc.record({ given: fc.constant("shaftPower" as const), shaftPower: between(0.1, 5e3) }),
);

test("at rest every curve gives the measured coefficients with their doubt, and the band only widens from there", () => {
  fc.assert(
    fc.property(
      bollard,
      running,
      fc.option(series, { nil: undefined }),
      fc.array(speed, { minLength: 1, maxLength: 5 }),
      (rest, at, propeller, speeds) => {
        const result = thrustAtSpeed(
          ThrustAtSpeedRequest.parse({
            ...{ bollard: rest, fixed: at, speeds, diameter: 0.1, density: 1000 },
            ...(propeller === undefined ? {} : { series: propeller }),
          }),
        );
        expectFinite(result);
        const [first, ...others] = result.curve;
        expectClose(first!.thrustCoefficient.value, rest.thrustCoefficient.value);
        expectClose(first!.thrustCoefficient.standardUncertainty, rest.thrustCoefficient.standardUncertainty);
        expectClose(first!.torqueCoefficient.value, rest.torqueCoefficient.value);
        let before = 0;
        for (const { thrustParts } of others) {
          expect(thrustParts.shape).toBeGreaterThanOrEqual(before);
          before = thrustParts.shape;
        }
      },
    ),
  );
});

test("momentum theory alone has a band that holds every B screw of its own point at rest, up to J = 0.6", () => {
  const screw = testedScrew.filter(({ pitchRatio }) => pitchRatio >= 0.6);
  fc.assert(
    fc.property(screw, between(0, 0.6), (propeller, J) => {
      const at = (advanceRatio: number) => openWaterOfSeries({ series: propeller, advanceRatio, outsideRange: true });
      const { thrustCoefficient, torqueCoefficient } = at(0);
      const result = thrustAtSpeed(
        ThrustAtSpeedRequest.parse({
          bollard: { thrustCoefficient: { value: thrustCoefficient }, torqueCoefficient: { value: torqueCoefficient } },
          ...{ diameter: 1, density: 1, fixed: { given: "rotationRate", rotationRate: 1 }, speeds: [J] },
        }),
      );
      const [point] = result.points;
      if (point?.state !== "solved") throw new Error(point?.reason);
      const [low, high] = point.thrust.interval95;
      expect(at(J).thrustCoefficient).toBeGreaterThanOrEqual(low - 1e-12);
      expect(at(J).thrustCoefficient).toBeLessThanOrEqual(high + 1e-12);
    }),
  );
});

test("at fixed power too the band of momentum theory alone holds every B screw of its own point at rest, up to J = 0.6", () => {
  const screw = testedScrew.filter(({ pitchRatio }) => pitchRatio >= 0.6);
  fc.assert(
    fc.property(screw, between(0.05, 0.6), (propeller, J) => {
      const at = (advanceRatio: number) => openWaterOfSeries({ series: propeller, advanceRatio, outsideRange: true });
      const { thrustCoefficient, torqueCoefficient } = at(0);
      const truth = at(J);
      const result = thrustAtSpeed(
        ThrustAtSpeedRequest.parse({
          bollard: { thrustCoefficient: { value: thrustCoefficient }, torqueCoefficient: { value: torqueCoefficient } },
          ...{ diameter: 1, density: 1, speeds: [J] },
          fixed: { given: "shaftPower", shaftPower: 2 * Math.PI * truth.torqueCoefficient },
        }),
      );
      const [point] = result.points;
      if (point?.state !== "solved") throw new Error(point?.reason);
      const [low, high] = point.thrust.interval95;
      expect(truth.thrustCoefficient).toBeGreaterThanOrEqual(low - 1e-12);
      expect(truth.thrustCoefficient).toBeLessThanOrEqual(high + 1e-12);
    }),
  );
});

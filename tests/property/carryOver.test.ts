import fc from "fast-check";
import { expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { between, expectClose, expectFinite } from "./propellerCases.ts";

const fluid = fc.oneof(
  fc.record({ kind: fc.constant("fresh" as const), temperature: between(274, 330) }),
  fc.record({ kind: fc.constant("sea" as const), temperature: between(275, 303), salinity: between(5, 40) }),
  fc.record({
    kind: fc.constant("air" as const),
    temperature: between(275, 305),
    pressure: between(9e4, 1.05e5),
    humidity: between(0, 1),
  }),
);

const side = fc.record({ fluid, rotationRate: between(20, 400), diameter: between(0.05, 1), nozzle: fc.boolean() });

const blade = fc.record({
  bladeCount: fc.integer({ min: 2, max: 6 }),
  chordRatio: between(0.05, 0.3),
  pitchRatio: between(0.4, 1.5),
  roughness: between(0, 5e-4),
});

test("carried over, thrust is that of the stand times every factor, and doubt never shrinks; or the way is too far", () => {
  fc.assert(
    fc.property(side, side, fc.option(blade, { nil: undefined }), (from, to, shape) => {
      const request = CarryOverRequest.parse({
        measured: {
          ...from,
          thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 },
          torqueCoefficient: { value: 0.03, standardUncertainty: 0.0005 },
        },
        target: to,
        ...(shape === undefined ? {} : { blade: shape }),
      });
      const result = carriedOrTooFar(request);
      if (result === null) return;
      expectFinite(result);
      const before = thrustOf(0.25, from);
      expectClose(
        result.thrust.value,
        result.factors.reduce((product, { thrust }) => product * thrust, before),
      );
      const { thrustCoefficient: K_T } = result;
      expect(K_T.standardUncertainty / K_T.value).toBeGreaterThanOrEqual(0.003 / 0.25 - 1e-12);
      expect(result.shaftPower.value).toBeGreaterThan(0);
    }),
  );
});

/** The result, or null where it is refused for the one reason there may be. */
function carriedOrTooFar(request: CarryOverRequest) {
  try {
    return carryOver(request);
  } catch (error) {
    expect(error).toMatchObject({ problem: { code: "propeller.carry-over-too-far" } });
    return null;
  }
}

function thrustOf(K_T: number, at: CarryOverRequest["target"]): number {
  return K_T * fluidProperties(at.fluid).density * at.rotationRate ** 2 * at.diameter ** 4;
}

import { z } from "zod";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { si } from "../../shared/model/fields.ts";
import { FluidState } from "../../shared/model/fluid.ts";
import { discArea } from "../../shared/propeller/coefficients.ts";
import { idealBollardPower, idealBollardThrust } from "../../shared/propeller/momentum.ts";
import { thrustFromMerit } from "../../shared/propeller/staticMerit.ts";

const disc = {
  diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Propeller diameter" }),
  fluid: FluidState,
  staticMerit: si(z.number().positive().max(1), {
    symbol: "FM",
    unit: "1",
    text: "Static merit, for what to expect",
  }).exactOptional(),
};

const FromPower = z.strictObject({
  ...disc,
  shaftPower: si(z.number().positive(), { symbol: "P", unit: "W", text: "Shaft power" }),
});
const FromThrust = z.strictObject({
  ...disc,
  thrust: si(z.number().positive(), { symbol: "T", unit: "N", text: "Thrust" }),
});

/** Either the power is known and the thrust is asked, or the other way round. */
export const MomentumLimitRequest = z.union([FromPower, FromThrust]).meta({ id: "MomentumLimitRequest" });

export const MomentumLimit = z
  .strictObject({
    density: si(z.number(), { symbol: "rho", unit: "kg/m³", text: "Density of the fluid" }),
    discArea: si(z.number(), { symbol: "A", unit: "m²", text: "Area swept by the blades" }),
    shaftPower: si(z.number(), {
      symbol: "P",
      unit: "W",
      text: "Shaft power; the least for the thrust that was given",
    }),
    thrust: si(z.number(), { symbol: "T", unit: "N", text: "Thrust; the greatest for the shaft power that was given" }),
    expectedShaftPower: si(z.number().nullable(), {
      symbol: "P",
      unit: "W",
      text: "Shaft power at the static merit that was given",
    }),
    expectedThrust: si(z.number().nullable(), {
      symbol: "T",
      unit: "N",
      text: "Thrust at the static merit that was given",
    }),
  })
  .meta({ id: "MomentumLimit" });

/** Limit of an open disc at rest, by power or by thrust. Throws OutOfDomain outside the range of the fluid. */
export function momentumLimit(request: z.infer<typeof MomentumLimitRequest>): z.infer<typeof MomentumLimit> {
  const { density } = fluidProperties(request.fluid);
  const area = discArea(request.diameter);
  const merit = request.staticMerit;
  const known = { density, discArea: area };
  if ("shaftPower" in request) {
    const { shaftPower } = request;
    const thrust = idealBollardThrust({ shaftPower, ...known });
    const expectedThrust = merit === undefined ? null : thrustFromMerit({ shaftPower, ...known, staticMerit: merit });
    return {
      ...known,
      shaftPower,
      thrust,
      expectedShaftPower: merit === undefined ? null : shaftPower,
      expectedThrust,
    };
  }
  const { thrust } = request;
  const shaftPower = idealBollardPower({ thrust, ...known });
  const expectedShaftPower = merit === undefined ? null : shaftPower / merit;
  return { ...known, shaftPower, thrust, expectedShaftPower, expectedThrust: merit === undefined ? null : thrust };
}

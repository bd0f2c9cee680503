import { z } from "zod";
import { Name, si } from "../fields.ts";

const share = (symbol: string, text: string) => si(z.number().min(0).max(2), { symbol, unit: "1", text });

/** Relative standard uncertainties of what makes the load on a tether. */
export const TetherUncertainties = z
  .strictObject({
    diameter: share("u_r(d)", "Relative standard uncertainty of the diameter").default(0.02),
    normalDragCoefficient: share("u_r(C_n)", "Relative standard uncertainty of the normal drag coefficient").default(
      0.15,
    ),
    tangentialDragCoefficient: share(
      "u_r(C_t)",
      "Relative standard uncertainty of the tangential drag coefficient",
    ).default(0.5),
    netWeightPerLength: share("u_r(w)", "Relative standard uncertainty of the net weight").default(0),
  })
  .meta({ id: "TetherUncertainties" });
export type TetherUncertainties = z.infer<typeof TetherUncertainties>;

/**
 * The cable between a vehicle and the surface.
 *
 * Normal drag coefficient 1.2: smooth circular cylinder square to the flow, Reynolds number 1e3 to 2e5 (Hoerner,
 * Fluid-Dynamic Drag (1965), ch. 3). A tether that strums has more, 1.5 to 2.5 (Skop, Griffin & Ramberg, OTC 2884 (1977);
 * Vandiver, OTC 4490 (1983); both from memory). Tangential drag coefficient 0.01, on the wetted surface π d: the range
 * 0.01 to 0.02 of cable practice (Casarella & Parsons, Mar. Technol. Soc. J. 4 (1970) 27; from memory).
 */
export const Tether = z
  .strictObject({
    name: Name.exactOptional(),
    diameter: si(z.number().positive().max(0.5), { symbol: "d", unit: "m", text: "Outer diameter" }),
    length: si(z.number().positive().max(20_000), { symbol: "L", unit: "m", text: "Length paid out" }),
    netWeightPerLength: si(z.number().min(-1000).max(1000), {
      symbol: "w",
      unit: "N/m",
      text: "Weight less buoyancy per length in the water; positive sinks, negative floats",
    }).default(0),
    normalDragCoefficient: si(z.number().positive().max(10), {
      symbol: "C_n",
      unit: "1",
      text: "Normal drag coefficient on the diameter; 1.2 for a round tether at rest in itself, 1.5 to 2.5 if it strums",
    }).default(1.2),
    tangentialDragCoefficient: si(z.number().min(0).max(1), {
      symbol: "C_t",
      unit: "1",
      text: "Tangential drag coefficient on the wetted surface",
    }).default(0.01),
    strength: si(z.number().positive(), {
      symbol: "T_max",
      unit: "N",
      text: "Greatest tension the tether may carry",
    }).exactOptional(),
    relativeUncertainties: TetherUncertainties.prefault({}),
  })
  .meta({ id: "Tether" });
export type Tether = z.infer<typeof Tether>;

const angle = si(z.number().min(-10).max(10), {
  symbol: "psi",
  unit: "rad",
  text: "Where the water flows to, from the vehicle's bow: 0 ahead, pi/2 to starboard, pi against the vehicle",
});
const speed = si(z.number().min(-20).max(20), { symbol: "U", unit: "m/s", text: "Speed of the water over the ground" });
const depth = si(z.number().min(0).max(12_000), { symbol: "z", unit: "m", text: "Depth below the surface" });

/** Current over the ground, one direction at all depths. */
export const TetherCurrent = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("uniform"), speed, direction: angle }),
    z.strictObject({
      kind: z.literal("sheared"),
      direction: angle,
      profile: z
        .array(z.strictObject({ depth, speed }))
        .min(2)
        .max(200)
        .describe("Speed over depth, from the top down; straight between, held at the ends"),
    }),
  ])
  .meta({ id: "TetherCurrent" });
export type TetherCurrent = z.infer<typeof TetherCurrent>;

/** The water that a tether hangs in. */
export const TetherSurroundings = z
  .strictObject({
    density: si(z.number().positive().max(2000), { symbol: "rho", unit: "kg/m³", text: "Density of the water" }),
    current: TetherCurrent,
    currentRelativeUncertainty: share("u_r(U)", "Relative standard uncertainty of the current").default(0),
    seabedDepth: si(z.number().positive(), { symbol: "z_b", unit: "m", text: "Depth of the bottom" }).exactOptional(),
  })
  .meta({ id: "TetherSurroundings" });
export type TetherSurroundings = z.infer<typeof TetherSurroundings>;

/**
 * Which ends move with the vehicle: both (a boat that keeps pace, or the vehicle at rest), or the lower end alone. In the
 * second case the tether is taken to follow by a share that falls in a straight line from all at the vehicle to nothing
 * at the upper end, which is exact for a straight tether that turns about its upper end.
 */
export const TetherMotion = z.enum(["bothEnds", "upperEndFixed"]).meta({ id: "TetherMotion" });
export type TetherMotion = z.infer<typeof TetherMotion>;

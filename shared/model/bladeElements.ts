import { z } from "zod";
import { si } from "./fields.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** One piece of the blade, from the hub to the tip; forces of ONE blade. */
export const BladeElement = z
  .strictObject({
    radius: number("r", "m", "Middle of the piece"),
    width: number("dr", "m", "Its length along the blade"),
    inflowAngle: number("φ", "rad", "Angle of the flow at the blade to the plane of rotation"),
    angleOfAttack: number("α", "rad", "Angle of attack"),
    liftCoefficient: number("C_L", "1", "Lift coefficient of the section"),
    dragCoefficient: number("C_D", "1", "Drag coefficient of the section"),
    reynolds: number("Re", "1", "Reynolds number of the section"),
    thrustPerLength: number("dT/dr", "N/m", "Thrust of one blade per length"),
    tangentialForcePerLength: number("dF/dr", "N/m", "Force of one blade against the turning per length"),
    axialInduced: number("u", "m/s", "Velocity induced along the shaft, positive backwards"),
    tangentialInduced: number("v", "m/s", "Velocity induced in the direction of turning"),
  })
  .meta({ id: "BladeElement" });
export type BladeElement = z.infer<typeof BladeElement>;

/** Where the shaft power goes, W: useful and ideal and the losses add up to it. */
export const BladePower = z
  .strictObject({
    shaft: number("P", "W", "Power taken from the shaft; negative where the flow drives it"),
    useful: number("T V", "W", "Thrust times advance speed"),
    ideal: number("T v", "W", "Least that any open disc of this size needs to make this thrust; 0 where it brakes"),
    induced: number("P_i", "W", "Stream along the shaft beyond that: load spread unevenly, hub"),
    swirl: number("P_s", "W", "Rotation left in the stream"),
    tip: number("P_t", "W", "Flow round the blade tips, because the blades are few"),
    hub: number("P_h", "W", "Flow round the inner ends of the blades"),
    profile: number("P_D", "W", "Drag of the sections"),
  })
  .meta({ id: "BladePower" });
export type BladePower = z.infer<typeof BladePower>;

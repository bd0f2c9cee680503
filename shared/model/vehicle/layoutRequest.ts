import { z } from "zod";
import { Name, si } from "../fields.ts";

/** The six motions of a vehicle, in the order of the rows of its wrench matrix: X, Y, Z, K, M, N. */
export const Axis = z.enum(["surge", "sway", "heave", "roll", "pitch", "yaw"]);
export type Axis = z.infer<typeof Axis>;

const length = (symbol: string, text: string) => si(z.number().min(-100).max(100), { symbol, unit: "m", text });

/** A point of the vehicle, in its own axes. */
export const BodyPoint = z
  .strictObject({
    x: length("x", "Forward"),
    y: length("y", "To starboard"),
    z: length("z", "Down"),
  })
  .meta({ id: "BodyPoint" });
export type BodyPoint = z.infer<typeof BodyPoint>;

const part = z.number().min(-1e6).max(1e6);

/** A direction in the axes of the vehicle; only the ratio of the three counts. */
export const BodyDirection = z
  .strictObject({
    x: part.describe("Forward part"),
    y: part.describe("Part to starboard"),
    z: part.describe("Part down"),
  })
  .meta({ id: "BodyDirection" });
export type BodyDirection = z.infer<typeof BodyDirection>;

const force = (symbol: string, text: string) => si(z.number().min(0).max(1e5), { symbol, unit: "N", text });

/** The greatest thrust one way, as a drive gives it. */
export const ThrustLimit = z
  .strictObject({
    value: force("T", "Greatest thrust, not negative"),
    standardUncertainty: force("u(T)", "Standard uncertainty of it").default(0),
  })
  .meta({ id: "ThrustLimit" });
export type ThrustLimit = z.infer<typeof ThrustLimit>;

export const CurrentPoint = z
  .strictObject({
    thrust: si(z.number().positive().max(1e5), { symbol: "T", unit: "N", text: "Thrust, without sign" }),
    current: si(z.number().min(0).max(1e4), { symbol: "I", unit: "A", text: "Current from the bus" }),
  })
  .meta({ id: "CurrentPoint" });

const currentPoints = z
  .array(CurrentPoint)
  .min(1)
  .max(60)
  .describe("One point: current grows with thrust to the power 1.5. More: straight lines between them, from rest");

/** Current that one thruster draws from the bus against its thrust. */
export const ThrusterCurrent = z
  .strictObject({ forward: currentPoints, reverse: currentPoints })
  .meta({ id: "ThrusterCurrent" });
export type ThrusterCurrent = z.infer<typeof ThrusterCurrent>;

const perThrust = (text: string) => si(z.number().min(0).max(10), { symbol: "Q/T", unit: "N·m/N", text });

const relativeDoubt = (text: string) => si(z.number().min(0).max(2), { symbol: "u_r(I)", unit: "1", text });

/** One thruster where it sits on the vehicle. */
export const ThrusterPlacement = z
  .strictObject({
    name: Name.describe("Unlike the others of the layout"),
    position: BodyPoint.describe("Centre of its propeller"),
    direction: BodyDirection.describe("Which way its forward thrust pushes the vehicle"),
    spin: z
      .enum(["clockwise", "anticlockwise"])
      .default("clockwise")
      .describe("Sense of rotation at forward thrust, seen from behind, looking along the thrust"),
    drive: Name.describe("The drive that its limits come from; thrusters of one drive share its error").exactOptional(),
    limits: z.strictObject({
      forward: ThrustLimit,
      reverse: ThrustLimit,
    }),
    torquePerThrust: z
      .strictObject({
        forward: perThrust("Propeller torque over thrust ahead, K_Q D / K_T"),
        reverse: perThrust("Propeller torque over thrust astern, K_Q D / K_T"),
      })
      .describe("For the reaction torque on the vehicle")
      .exactOptional(),
    current: ThrusterCurrent.exactOptional(),
    currentUncertainty: z
      .strictObject({
        forward: relativeDoubt("Relative standard uncertainty of the current for a thrust ahead"),
        reverse: relativeDoubt("Relative standard uncertainty of the current for a thrust astern"),
      })
      .describe("Thrusters of one drive share it; absent: none")
      .exactOptional(),
  })
  .meta({ id: "ThrusterPlacement" });
export type ThrusterPlacement = z.infer<typeof ThrusterPlacement>;

/** The thrusters of a vehicle and what is asked of them. */
export const LayoutRequest = z
  .strictObject({
    thrusters: z.array(ThrusterPlacement).min(1).max(16),
    axes: z
      .array(Axis)
      .min(1)
      .max(6)
      .describe("Motions that are commanded; while one is used the others are held at zero. Absent: all that can be")
      .exactOptional(),
    busCurrentLimit: si(z.number().positive().max(1e4), {
      symbol: "I_max",
      unit: "A",
      text: "Greatest current of the bus",
    }).exactOptional(),
    hotelCurrent: si(z.number().min(0).max(1e4), {
      symbol: "I_h",
      unit: "A",
      text: "Current from the bus for everything but thrust",
    }).default(0),
    countReactionTorque: z
      .boolean()
      .default(false)
      .describe("The torque of the propellers on the vehicle is held too; else it is told beside the result"),
    centreOfMass: BodyPoint.describe("Moments are taken about it; absent: about the origin").exactOptional(),
    righting: z
      .strictObject({
        weight: si(z.number().positive().max(1e6), { symbol: "W", unit: "N", text: "Weight of the vehicle in air" }),
        centreOfBuoyancy: BodyPoint,
      })
      .describe("For the angle that an unheld moment tilts the vehicle to")
      .exactOptional(),
  })
  .meta({ id: "LayoutRequest" });
export type LayoutRequest = z.infer<typeof LayoutRequest>;
/** The request as a person or a program may write it, before defaults are filled in. */
export type LayoutInput = z.input<typeof LayoutRequest>;

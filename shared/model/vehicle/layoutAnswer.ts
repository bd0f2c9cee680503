import { z } from "zod";
import { si } from "../fields.ts";
import { ResultWarning, uncertainSi } from "../uncertain.ts";
import { type AxisLoss, SpinBalance, ThrusterLoss } from "./layoutLoss.ts";
import { Axis } from "./layoutRequest.ts";

const amount = (text: string) => si(z.number(), { symbol: "", unit: "N or N·m", text });
const forces = z.array(si(z.number(), { symbol: "f", unit: "N", text: "Thrust, forward positive" }));
const current = si(z.number(), { symbol: "I", unit: "A", text: "Current from the bus, hotel included" }).nullable();
const matrix = z.array(z.array(z.number()));

/** Whether the thrusters can make a motion alone, only with others, or not at all. */
export const AxisMotion = z
  .strictObject({
    axis: Axis,
    possible: z
      .enum(["alone", "together", "none"])
      .describe("alone: the five others can be zero at the same time; together: others come with it"),
    held: z.boolean().describe("Commanded here, and at zero while another is used"),
    comesWith: z
      .array(z.strictObject({ axis: Axis, each: z.number().describe("Of this axis for 1 N or 1 N·m of the other") }))
      .describe("Held axes that bring this one along"),
    sentence: z.string(),
  })
  .meta({ id: "AxisMotion" });
export type AxisMotion = z.infer<typeof AxisMotion>;

/** What the vehicle does when one demand is made as great as the limits allow. */
export const Demand = z
  .strictObject({
    value: uncertainSi({ symbol: "", unit: "N or N·m", text: "Greatest force or moment, with its sign" }),
    forces: forces.describe("Thrusts that make it, in the order of the thrusters, with the least current"),
    wrench: z.array(z.number()).describe("X, Y, Z in N and K, M, N in N·m, without the reaction of the propellers"),
    reaction: z.array(z.number()).nullable().describe("Reaction of the propellers on the vehicle, K, M, N in N·m"),
    current: uncertainSi({
      symbol: "I",
      unit: "A",
      text: "Current from the bus for these thrusts, hotel included",
    }).nullable(),
    withinBusLimit: z.boolean().nullable().describe("null: no limit or no current is known"),
    governedBy: z
      .array(
        z.strictObject({
          thruster: z.int().min(0).describe("Its place in the order"),
          limit: z.enum(["forward", "reverse"]),
          gain: z.number().describe("Growth of the greatest value for 1 N more of this limit"),
        }),
      )
      .describe("Limits that raise the greatest value when they are raised"),
  })
  .meta({ id: "LayoutDemand" });
export type Demand = z.infer<typeof Demand>;

/** One commanded axis, both ways. */
export const AxisReach = z
  .strictObject({
    axis: Axis,
    unit: z.enum(["N", "N·m"]),
    ways: z.array(
      z.strictObject({
        way: z.enum(["positive", "negative"]),
        word: z.string().describe("The way in words: ahead, astern, to starboard ..."),
        greatest: Demand,
        withBusLimit: Demand.nullable().describe("The same within the current of the bus; null: no limit given"),
        tilt: z
          .strictObject({
            roll: si(z.number(), { symbol: "φ", unit: "rad", text: "Heel" }).nullable(),
            pitch: si(z.number(), { symbol: "θ", unit: "rad", text: "Trim" }).nullable(),
          })
          .nullable()
          .describe("Where righting is known: angle that the unheld moments lead to; null: it would turn over"),
      }),
    ),
  })
  .meta({ id: "AxisReach" });
export type AxisReach = z.infer<typeof AxisReach>;

/** The forces that can be made in one plane while all other commanded axes are at zero: a convex outline. */
export const ForceOutline = z
  .strictObject({
    plane: z.enum(["horizontal", "lengthwise", "crosswise"]),
    axes: z.tuple([Axis, Axis]),
    corners: z.array(z.tuple([z.number(), z.number()])).describe("N, N; in turn; two: a line; one: nothing but zero"),
    cornersWithBusLimit: z.array(z.tuple([z.number(), z.number()])).nullable(),
    converged: z.boolean(),
  })
  .meta({ id: "ForceOutline" });
export type ForceOutline = z.infer<typeof ForceOutline>;

/** What a layout of thrusters can do. */
export const LayoutAnswer = z
  .strictObject({
    thrusters: z.array(z.string()).describe("Order of the thrusters in every list of this answer"),
    held: z.array(Axis).describe("Axes that are commanded"),
    matrix: matrix.describe("Rows X, Y, Z (N) and K, M, N (N·m) for 1 N of each thruster"),
    matrixWithReaction: z
      .strictObject({ forward: matrix, reverse: matrix })
      .nullable()
      .describe("The same with the torque of the propeller, for thrust ahead and astern; null: not known"),
    momentLength: si(z.number().positive(), {
      symbol: "L",
      unit: "m",
      text: "Length that moments are divided by to compare them with forces",
    }),
    singularValues: z.array(z.number()).describe("Of the matrix with moments over that length, greatest first"),
    rank: z.int().min(0).max(6).describe("Independent motions"),
    motions: z.array(AxisMotion),
    reach: z.array(AxisReach),
    outlines: z.array(ForceOutline),
    losses: z.array(ThrusterLoss),
    spinBalance: SpinBalance.nullable().describe("null: no torque is known, or surge can not be commanded"),
    pseudoInverse: matrix.describe("Thrusts in N for 1 N or 1 N·m of each held axis: a row a thruster"),
    programmes: z.int().min(0).describe("Linear programmes solved"),
    pivots: z.int().min(0).describe("Steps of all of them"),
    converged: z.boolean(),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "LayoutAnswer" });
export type LayoutAnswer = z.infer<typeof LayoutAnswer>;

/** Shares of the thrusters in a demand that a pilot or a control system makes. */
export const Allocation = z
  .strictObject({
    forces,
    wanted: z.array(amount("Wanted, in the order of the held axes")),
    achieved: z.array(amount("Made, in the order of the held axes")),
    scale: z.number().min(0).max(1).describe("Part of the demand that is made; its direction is kept"),
    scaleToEdge: z
      .number()
      .min(0)
      .nullable()
      .describe("Times the demand that the limits allow; null: nothing is wanted"),
    method: z
      .enum(["pseudoInverse", "linearProgramme", "none"])
      .describe(
        "pseudoInverse: within the limits as it is; linearProgramme: shared anew within them; none: can not be made",
      ),
    current,
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Allocation" });
export type Allocation = z.infer<typeof Allocation>;

export type { AxisLoss, SpinBalance, ThrusterLoss };

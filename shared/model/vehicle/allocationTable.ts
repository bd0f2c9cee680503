import { z } from "zod";
import { si } from "../fields.ts";
import { Axis } from "./layoutRequest.ts";

const forces = z.array(si(z.number(), { symbol: "f", unit: "N", text: "Thrust, forward positive" }));

/** One demand and how the thrusters share it. */
export const AllocationRow = z
  .strictObject({
    kind: z
      .enum(["greatest", "greatest within bus", "combination", "share of 1 unit"])
      .describe("share of 1 unit: a column of the pseudo-inverse, before any limit"),
    axis: z.string().describe("Axis, or the axes of a combination with their numbers"),
    way: z.string(),
    demand: z.number().nullable().describe("N or N·m; null: a combination, whose numbers stand in the axis"),
    unit: z.enum(["N", "N·m", ""]),
    interval95: z.tuple([z.number(), z.number()]).nullable(),
    current: si(z.number(), { symbol: "I", unit: "A", text: "Current from the bus, hotel included" }).nullable(),
    forces,
  })
  .meta({ id: "AllocationRow" });
export type AllocationRow = z.infer<typeof AllocationRow>;

/** What a control system needs of a layout: order, limits, shares. */
export const AllocationTable = z
  .strictObject({
    thrusters: z.array(z.string()).describe("Order of the thrusters in every list"),
    limits: z.strictObject({ forward: forces, reverse: forces.describe("Greatest thrust astern, negative, N") }),
    axes: z.array(Axis).describe("Commanded axes: order of the columns of the pseudo-inverse"),
    pseudoInverse: z.array(z.array(z.number())).describe("N for 1 N or 1 N·m of each axis; a row a thruster"),
    wrenchMatrix: z.array(z.array(z.number())).describe("X, Y, Z, K, M, N for 1 N of each thruster, columns"),
    rows: z.array(AllocationRow),
    cautions: z.array(z.string()),
  })
  .meta({ id: "AllocationTable" });
export type AllocationTable = z.infer<typeof AllocationTable>;

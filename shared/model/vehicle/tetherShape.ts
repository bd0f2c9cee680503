import { z } from "zod";
import { si } from "../fields.ts";
import { ResultWarning, uncertainSi } from "../uncertain.ts";
import { Tether, TetherMotion, TetherSurroundings } from "./tether.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const least0 = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });
const speedOf = (symbol: string, text: string) => si(z.number().min(-20).max(20), { symbol, unit: "m/s", text });

const TetherForce = z
  .strictObject({
    forward: number("F_x", "N", "Force ahead"),
    starboard: number("F_y", "N", "Force to starboard"),
    down: number("F_z", "N", "Force down"),
  })
  .meta({ id: "TetherForce" });
export type TetherForce = z.infer<typeof TetherForce>;

/** Where the upper end is held; the vehicle is at 0 ahead, 0 to starboard. */
export const TetherUpperPlace = z
  .strictObject({
    forward: number("x", "m", "How far ahead of the vehicle"),
    starboard: number("y", "m", "How far to starboard of the vehicle"),
    depth: least0("z", "m", "Depth of the upper end; 0 at the surface").default(0),
  })
  .meta({ id: "TetherUpperPlace" });
export type TetherUpperPlace = z.infer<typeof TetherUpperPlace>;

export const TetherRequest = z
  .strictObject({
    tether: Tether,
    surroundings: TetherSurroundings,
    vehicle: z.strictObject({
      depth: si(z.number().min(0).max(12_000), { symbol: "z", unit: "m", text: "Depth of the vehicle" }),
      velocity: z
        .strictObject({
          forward: speedOf("V_x", "Speed ahead over the ground").default(0),
          starboard: speedOf("V_y", "Speed to starboard over the ground").default(0),
          down: speedOf("V_z", "Speed down").default(0),
        })
        .prefault({}),
    }),
    motion: TetherMotion.default("bothEnds").describe("Which ends move with the vehicle"),
    given: z
      .discriminatedUnion("what", [
        z.strictObject({ what: z.literal("upperEnd"), upperEnd: TetherUpperPlace }),
        z.strictObject({ what: z.literal("forceOnVehicle"), forceOnVehicle: TetherForce }),
      ])
      .describe("The upper end's place, or the force of the tether on the vehicle: then its upper end is found"),
  })
  .meta({ id: "TetherRequest" });
export type TetherRequest = z.infer<typeof TetherRequest>;

const TetherPoint = z
  .strictObject({
    along: least0("s", "m", "Length of tether from the vehicle"),
    forward: number("x", "m", "Ahead of the vehicle"),
    starboard: number("y", "m", "To starboard of the vehicle"),
    depth: number("z", "m", "Depth; negative above the surface"),
    tension: least0("T", "N", "Tension"),
  })
  .meta({ id: "TetherPoint" });
export type TetherPoint = z.infer<typeof TetherPoint>;

const UncertainForce = z
  .strictObject({
    forward: uncertainSi({ symbol: "F_x", unit: "N", text: "Force ahead" }),
    starboard: uncertainSi({ symbol: "F_y", unit: "N", text: "Force to starboard" }),
    down: uncertainSi({ symbol: "F_z", unit: "N", text: "Force down" }),
  })
  .meta({ id: "UncertainTetherForce" });
export type UncertainTetherForce = z.infer<typeof UncertainForce>;

export const TetherConvergence = z
  .strictObject({
    converged: z.boolean().describe("The upper end landed where it is held"),
    steps: z.int().min(0).describe("Steps of the search for the force"),
    miss: least0("e", "m", "Distance left between the upper end and its place"),
  })
  .meta({ id: "TetherConvergence" });
export type TetherConvergence = z.infer<typeof TetherConvergence>;

const common = {
  assumption: z.string().describe("How the tether is taken to move through the water"),
  dragBound: least0("R L", "N", "Drag of the same length straight and square to the fastest flow on it"),
  convergence: TetherConvergence,
  warnings: z.array(ResultWarning),
};

const SolvedTether = z.strictObject({
  state: z.literal("solved"),
  points: z.array(TetherPoint).describe("Shape from the vehicle to the upper end, at even lengths"),
  forceOnVehicle: UncertainForce.describe("Force of the tether on the vehicle"),
  forceOnUpperEnd: UncertainForce.describe("Force of the tether on what holds its upper end"),
  drag: TetherForce.describe("Drag of the water on the whole tether"),
  belly: z
    .strictObject({
      distance: uncertainSi({
        symbol: "b",
        unit: "m",
        text: "Greatest distance of the tether from the straight line between its ends",
      }),
      along: least0("s", "m", "Where, as a length from the vehicle"),
    })
    .describe("How far the tether bows out"),
  greatestTension: z.strictObject({
    tension: uncertainSi({ symbol: "T", unit: "N", text: "Greatest tension" }),
    along: least0("s", "m", "Where, as a length from the vehicle"),
  }),
  greatestNormalSpeed: least0("U_n", "m/s", "Greatest speed of the water square to the tether"),
  check: z
    .strictObject({
      arcLength: least0("L", "m", "Length of the curve through the points"),
      forceBalance: least0("e", "N", "What is left of end forces, drag and weight summed over the points"),
    })
    .describe("Two sums over the points, made apart from the integration; a bend sharper than a piece shows in them"),
  ...common,
});
export type SolvedTether = z.infer<typeof SolvedTether>;

export const TetherSolution = z
  .discriminatedUnion("state", [
    SolvedTether,
    z.strictObject({
      state: z.literal("slack").describe("No current and no net weight: no force, and no certain shape"),
      ...common,
    }),
    z.strictObject({
      state: z.literal("failed"),
      reason: z.string().describe("Why there is no force to give"),
      ...common,
    }),
  ])
  .meta({ id: "TetherSolution" });
export type TetherSolution = z.infer<typeof TetherSolution>;

import { z } from "zod";
import { BladeGeometry } from "./bladeGeometry.ts";
import { Name, si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const relative = (text: string) => si(z.number().min(0).max(0.5), { symbol: "u_r", unit: "1", text });

const MeasuredCoefficient = z.strictObject({
  value: number("K", "1", "Coefficient as measured"),
  standardUncertainty: si(z.number().positive(), { symbol: "u(K)", unit: "1", text: "Its standard uncertainty" }),
  commonUncertainty: si(z.number().min(0), {
    symbol: "u_c(K)",
    unit: "1",
    text: "Part of it that is the same for all points given here, such as calibration, density and diameter",
  }).default(0),
});

/** Thrust and torque coefficient of one propeller at one advance ratio. */
export const MeasuredPoint = z
  .strictObject({
    advanceRatio: si(z.number().min(0).max(3), { symbol: "J", unit: "1", text: "Advance ratio; 0 at bollard" }).default(
      0,
    ),
    thrustCoefficient: MeasuredCoefficient,
    torqueCoefficient: MeasuredCoefficient,
    correlation: si(z.number().min(-0.99).max(0.99), {
      symbol: "r",
      unit: "1",
      text: "Correlation of the two errors",
    }).default(0),
  })
  .meta({ id: "MeasuredPoint" });
export type MeasuredPoint = z.infer<typeof MeasuredPoint>;

/** What stands for the blades where no section was measured: a series outline of this pitch, count and chord. */
export const GenericBlade = z
  .strictObject({
    diameter: si(z.number().positive().max(1), { symbol: "D", unit: "m", text: "Diameter over the blade tips" }),
    bladeCount: z.int().min(2).max(7).describe("Number of blades"),
    pitchRatio: si(z.number().min(0.2).max(2), { symbol: "P/D", unit: "1", text: "Pitch ratio at 0.7 R" }),
    chordAt07: si(z.number().positive().max(1), {
      symbol: "c_0.7",
      unit: "m",
      text: "Blade chord at 0.7 of the tip radius",
    }),
  })
  .meta({ id: "GenericBlade" });
export type GenericBlade = z.infer<typeof GenericBlade>;

/** Blades whose sections are known, or an outline to take a series blade for. */
export const DescribedBlade = z
  .discriminatedUnion("given", [
    z.strictObject({ given: z.literal("geometry"), geometry: BladeGeometry }),
    z.strictObject({ given: z.literal("outline"), outline: GenericBlade }),
  ])
  .meta({ id: "DescribedBlade" });
export type DescribedBlade = z.infer<typeof DescribedBlade>;

/** Doubt of blade elements for a given surface. */
export const ModelUncertainty = z
  .strictObject({
    thrust: relative("Relative standard uncertainty of the predicted thrust coefficient"),
    torque: relative("Relative standard uncertainty of the predicted torque coefficient"),
  })
  .default({ thrust: 0.04, torque: 0.047 })
  .describe(
    "Doubt of blade elements for a given surface, common to all finishes; if absent what they missed on the measured research propeller that was held back (root mean square). An outline in place of sections adds to it",
  );
export type ModelUncertainty = z.infer<typeof ModelUncertainty>;

export const FinishFitRequest = z
  .strictObject({
    blade: DescribedBlade,
    fluid: FluidState,
    rotationRate: si(z.number().positive().max(2000), {
      symbol: "n",
      unit: "rev/s",
      text: "Rotation rate of the measurements, for the Reynolds number",
    }),
    finishes: z
      .array(z.strictObject({ name: Name, measured: z.array(MeasuredPoint).min(1).max(20) }))
      .min(1)
      .max(2)
      .describe("One or two finishes of the same blade, the rougher first"),
    modelUncertainty: ModelUncertainty,
    claimedFactor: si(z.number().min(0.1).max(100), {
      symbol: "x",
      unit: "1",
      text: "Thrust ratio at equal rotation rate that someone claims a finish can bring",
    }).exactOptional(),
    draws: z.int().min(0).max(500).default(0).describe("Monte Carlo draws to check the straight-line uncertainties by"),
  })
  .meta({ id: "FinishFitRequest" });
export type FinishFitRequest = z.infer<typeof FinishFitRequest>;

const FittedFinish = z.strictObject({
  state: z.literal("fitted"),
  name: z.string(),
  liftFactor: uncertainSi({ symbol: "k_L", unit: "1", text: "Lift over that of a clean section" }),
  dragFactor: uncertainSi({ symbol: "k_D", unit: "1", text: "Profile drag over that of the smooth section model" }),
  sectionDrag: uncertainSi({ symbol: "C_D", unit: "1", text: "Section drag coefficient at 0.7 of the radius" }),
  roughness: si(z.number().nullable(), {
    symbol: "k_p",
    unit: "m",
    text: "Roughness height that would give this drag; null where a smooth section has as much or no roughness does",
  }),
  roughnessInterval95: z
    .tuple([z.number(), z.number().nullable()])
    .readonly()
    .nullable()
    .describe(
      "95 % interval of that roughness, m, from the doubts of measurement and blade elements; how roughness makes drag adds its own, which is not known. First end 0: a smooth section is inside; second null: beyond the 1 mm that is computed; null altogether: all of it lies beyond",
    ),
  chiSquared: z.number().min(0).describe("Weighted residual sum of squares"),
  degreesOfFreedom: z.int().min(0).describe("Measured numbers beyond the two unknowns"),
  converged: z.boolean(),
  steps: z.int().min(0).describe("Steps of the solver"),
});

const FinishOutOfReach = z.strictObject({
  state: z.literal("outOfReach"),
  name: z.string(),
  bound: z
    .enum(["liftTooLow", "liftTooHigh", "dragTooLow", "dragTooHigh"])
    .describe("Physical bound that would have to be broken"),
  liftFactor: number("k_L", "1", "Lift factor that comes nearest"),
  dragFactor: number("k_D", "1", "Drag factor that comes nearest"),
  thrustCoefficient: number("K_T", "1", "Thrust coefficient of the first point that it makes"),
  torqueCoefficient: number("K_Q", "1", "Torque coefficient of the first point that it makes"),
  chiSquared: z.number().min(0).describe("Weighted residual sum of squares there"),
  sentence: z.string().describe("What is most likely wrong, in words"),
});

const FinishNotSolved = z.strictObject({
  state: z.literal("failed"),
  name: z.string(),
  reason: z.string().describe("Why there is no answer, in words"),
});

export const FinishResult = z
  .discriminatedUnion("state", [FittedFinish, FinishOutOfReach, FinishNotSolved])
  .meta({ id: "FinishResult" });
export type FinishResult = z.infer<typeof FinishResult>;

/** What the second finish changed. */
export const FinishChange = z
  .strictObject({
    liftRatio: uncertainSi({ symbol: "k_L2/k_L1", unit: "1", text: "Lift of the second finish over the first" }),
    dragRatio: uncertainSi({
      symbol: "C_D2/C_D1",
      unit: "1",
      text: "Section drag of the second finish over the first",
    }),
    dragChange: uncertainSi({ symbol: "ΔC_D", unit: "1", text: "Section drag of the second finish less the first" }),
    monteCarlo: z
      .strictObject({
        draws: z.int().min(1).describe("Draws that could be solved"),
        failed: z.int().min(0).describe("Draws that no surface could reach"),
        liftRatio: UncertainNumber,
        dragRatio: UncertainNumber,
      })
      .nullable()
      .describe("The same by drawing the measurements; null where no draws were asked for"),
    sentence: z.string().describe("The answer in words"),
  })
  .meta({ id: "FinishChange" });
export type FinishChange = z.infer<typeof FinishChange>;

/** What a hydraulically smooth surface could still bring over the last finish. */
export const SmoothGain = z
  .strictObject({
    thrustAtEqualRotation: uncertainSi({ symbol: "T_s/T", unit: "1", text: "Thrust ratio at equal rotation rate" }),
    thrustAtEqualPower: uncertainSi({
      symbol: "T_s/T",
      unit: "1",
      text: "Thrust ratio at equal shaft power, at bollard",
    }).nullable(),
    smoothRoughness: si(z.number(), {
      symbol: "k_adm",
      unit: "m",
      text: "Roughness below which this section is hydraulically smooth",
    }),
    sentence: z.string().describe("The answer in words"),
  })
  .meta({ id: "SmoothGain" });
export type SmoothGain = z.infer<typeof SmoothGain>;

/** Whether a claimed gain over the first finish can come from its surface. */
export const FinishClaim = z
  .strictObject({
    claimedFactor: number("x", "1", "Claimed thrust ratio at equal rotation rate"),
    verdict: z.enum(["refuted", "open", "possible"]),
    liftFactorNeeded: si(z.number().nullable(), {
      symbol: "k_L",
      unit: "1",
      text: "Lift factor that the claim needs with a smooth section's drag; null where none is enough",
    }),
    sentence: z.string().describe("The verdict in words"),
  })
  .meta({ id: "FinishClaim" });
export type FinishClaim = z.infer<typeof FinishClaim>;

const DragPoint = z.strictObject({
  at: z.number().describe("Roughness height, m, or Reynolds number"),
  drag: number("C_D", "1", "Section drag coefficient at the working lift"),
});

/** Lines and points to draw. */
export const FinishPicture = z
  .strictObject({
    reynolds: number("Re", "1", "Reynolds number of the section at 0.7 of the radius"),
    smoothDrag: number("C_D", "1", "Drag of the smooth section at the working lift"),
    laminarFloor: number("C_D", "1", "Friction of two laminar sides: nothing on a blade has less"),
    dragAgainstRoughness: z
      .array(
        z.strictObject({
          finish: z.string().nullable().describe("Finish whose lift factor it is for; null: a clean section"),
          liftFactor: number("k_L", "1", "Lift over that of a clean section"),
          points: z.array(DragPoint).describe("From a smooth section on"),
        }),
      )
      .describe("The section model for each fitted finish at its own lift; its roughness is where this meets its drag"),
    smoothDragAgainstReynolds: z.array(DragPoint),
    laminarFloorAgainstReynolds: z.array(DragPoint),
    thrustAgainstDrag: z
      .array(
        z.strictObject({
          dragFactor: number("k_D", "1", "Drag factor"),
          sectionDrag: number("C_D", "1", "Section drag coefficient at 0.7 of the radius"),
          thrustRatio: number("T/T_s", "1", "Thrust at equal shaft power over that of the smooth section, at bollard"),
        }),
      )
      .describe("What drag alone costs, at the lift factor of the last finish"),
  })
  .meta({ id: "FinishPicture" });
export type FinishPicture = z.infer<typeof FinishPicture>;

export const FinishFit = z
  .strictObject({
    finishes: z.array(FinishResult).min(1).max(2),
    change: FinishChange.nullable().describe("Null unless two finishes were fitted"),
    smoothGain: SmoothGain.nullable().describe("Null where the smooth blade could not be computed"),
    claim: FinishClaim.nullable().describe(
      "Null where nobody claims a gain, or the smooth blade could not be computed",
    ),
    picture: FinishPicture.nullable().describe("Null where the smooth blade could not be computed"),
    shape: z.string().describe("What else than the surface explains the same, in words"),
    sentence: z.string().describe("The whole answer in plain words"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "FinishFit" });
export type FinishFit = z.infer<typeof FinishFit>;

import { z } from "zod";
import { si } from "./fields.ts";
import { FluidProperties } from "./fluid.ts";
import { ColumnUse } from "./recipe.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "./uncertain.ts";

const count = (text: string) => z.number().min(0).describe(text);

/** A stretch of steady running, or one row of a hand-written table. */
export const Plateau = z
  .strictObject({
    start: si(z.number().nullable(), { symbol: "t", unit: "s", text: "Start; null in a table without time" }),
    end: si(z.number().nullable(), { symbol: "t", unit: "s", text: "End; null in a table without time" }),
    duration: si(z.number().nullable(), { symbol: "t", unit: "s", text: "Length; null in a table without time" }),
    firstLine: z.int().min(1).describe("First line of the file that it rests on"),
    lastLine: z.int().min(1).describe("Last line of the file that it rests on"),
    samples: count("Samples used"),
    effectiveSamples: count("Independent samples they are worth, of the thrust"),
    command: si(z.number().nullable(), { symbol: "delta", unit: "1", text: "Mean command in the unit of its column" }),
    rotationRate: uncertainSi({ symbol: "n", unit: "rev/s", text: "Rotation rate of the shaft" }),
    thrust: uncertainSi({ symbol: "T", unit: "N", text: "Thrust after tare and calibration" }),
    thrustTare: si(z.number(), { symbol: "T_0", unit: "N", text: "Tare that was taken off" }),
    torque: uncertainSi({ symbol: "Q", unit: "N·m", text: "Shaft torque" }).nullable(),
    voltage: uncertainSi({ symbol: "U", unit: "V", text: "Supply voltage" }).nullable(),
    current: uncertainSi({ symbol: "I", unit: "A", text: "Supply current" }).nullable(),
    electricalPower: uncertainSi({ symbol: "P_e", unit: "W", text: "Electrical power" }).nullable(),
    shaftPower: uncertainSi({ symbol: "P", unit: "W", text: "Shaft power" }).nullable(),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient of this plateau alone" }),
    powerCoefficient: uncertainSi({
      symbol: "C_P",
      unit: "1",
      text: "Power coefficient of this plateau alone",
    }).nullable(),
    momentumLimit: si(z.number().nullable(), {
      symbol: "T_max",
      unit: "N",
      text: "Greatest thrust momentum theory allows for the power that is known",
    }),
    used: z.boolean().describe("Counts in the fit"),
    leftOutBecause: z.string().nullable(),
    residual: si(z.number().nullable(), {
      symbol: "r",
      unit: "1",
      text: "Distance from the thrust fit in standard uncertainties",
    }),
  })
  .meta({ id: "Plateau" });
export type Plateau = z.infer<typeof Plateau>;

/** Line through the origin of a force or power against rho n² D⁴ or rho n³ D⁵. */
export const CoefficientFit = z
  .strictObject({
    coefficient: UncertainNumber,
    independentUncertainty: z
      .number()
      .min(0)
      .describe("Standard uncertainty from what differs between points of the run"),
    commonUncertainty: z.number().min(0).describe("Standard uncertainty from what all points share"),
    components: z.array(
      z.strictObject({
        name: z.string().describe("Cause in words"),
        key: z.string().describe("Runs that share this key share the error, and it cancels between them"),
        standardUncertainty: z.number().min(0).describe("Part of the standard uncertainty of the coefficient"),
      }),
    ),
    degreesOfFreedom: z.number().positive().describe("Effective degrees of freedom (Welch-Satterthwaite)"),
    points: z.int().min(1).describe("Plateaus that count in the fit"),
    chiSquared: z.number().min(0).describe("Weighted residual sum of squares"),
    scatterRatio: z
      .number()
      .min(1)
      .describe("Factor the uncertainty was widened by, because points scatter more than their own doubts explain"),
  })
  .meta({ id: "CoefficientFit" });
export type CoefficientFit = z.infer<typeof CoefficientFit>;

export const Reduction = z
  .strictObject({
    source: z.strictObject({
      fileName: z.string(),
      sha256: z.string(),
      rows: z.int().min(0).describe("Rows of numbers in the file"),
      program: z.string().describe("Program and version that computed this"),
    }),
    columns: z.array(z.strictObject({ ...ColumnUse.shape, header: z.string() })),
    fluid: FluidProperties,
    diameter: uncertainSi({ symbol: "D", unit: "m", text: "Propeller diameter" }),
    tare: z.strictObject({
      windows: z.array(
        z.strictObject({
          start: si(z.number(), { symbol: "t", unit: "s", text: "Start" }),
          end: si(z.number(), { symbol: "t", unit: "s", text: "End" }),
          thrust: uncertainSi({ symbol: "T_0", unit: "N", text: "Thrust reading with the propeller at rest" }),
        }),
      ),
      drift: uncertainSi({ symbol: "ΔT_0", unit: "N", text: "Change of the tare over the run" }).nullable(),
    }),
    plateaus: z.array(Plateau),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient" }),
    powerCoefficient: uncertainSi({ symbol: "C_P", unit: "1", text: "Power coefficient" }).nullable(),
    torqueCoefficient: uncertainSi({ symbol: "K_Q", unit: "1", text: "Torque coefficient, C_P/2π" }).nullable(),
    powerSource: z.enum(["torque", "motorConstants"]).nullable().describe("Where the shaft power comes from"),
    staticMerit: uncertainSi({ symbol: "FM", unit: "1", text: "Static merit: ideal over real shaft power" }).nullable(),
    exponent: uncertainSi({ symbol: "e", unit: "1", text: "Exponent of thrust against rotation rate; theory 2" }),
    intercept: uncertainSi({
      symbol: "T_i",
      unit: "N",
      text: "Thrust at zero speed by a line with intercept; theory 0",
    }),
    thrustFit: CoefficientFit,
    powerFit: CoefficientFit.nullable(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Reduction" });
export type Reduction = z.infer<typeof Reduction>;

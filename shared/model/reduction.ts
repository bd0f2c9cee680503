import { z } from "zod";
import { AdvanceFit } from "./advance.ts";
import { RunBudget } from "./budget.ts";
import { si } from "./fields.ts";
import { FluidProperties } from "./fluid.ts";
import { InstrumentRole } from "./instrument.ts";
import { QualityCheck } from "./quality.ts";
import { ColumnUse } from "./recipe.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "./uncertain.ts";

const count = (text: string) => z.number().min(0).describe(text);

/** Where something lies on the axis of the trace: time in s, or rows counted from 0 where the log has no clock. */
const TraceSpan = z.strictObject({
  start: si(z.number(), { symbol: "t", unit: "s", text: "First reading; a row from 0 where there is no clock" }),
  end: si(z.number(), { symbol: "t", unit: "s", text: "Last reading; a row from 0 where there is no clock" }),
});

/**
 * What a plateau was found by: change points (PELT) in the command or in the rotation rate, a row of a hand-written table,
 * a person's edit (`hand`: one of which no more is known), or a bin of rotation rate of a sweep, which is no plateau.
 */
export const PlateauFinding = z.enum([
  "command",
  "rotationRate",
  "row",
  "moved",
  "split",
  "merged",
  "added",
  "hand",
  "binned",
]);
export type PlateauFinding = z.infer<typeof PlateauFinding>;

const OWN_DOUBT =
  "; its interval holds what this plateau has of its own (scatter, rounding, tare): calibration, diameter, density, meters and motor constants are in the coefficient of the run";

/** A stretch of steady running, or one row of a hand-written table. */
export const Plateau = z
  .strictObject({
    start: si(z.number().nullable(), { symbol: "t", unit: "s", text: "Start; null in a table without time" }),
    end: si(z.number().nullable(), { symbol: "t", unit: "s", text: "End; null in a table without time" }),
    duration: si(z.number().nullable(), { symbol: "t", unit: "s", text: "Length; null in a table without time" }),
    firstLine: z.int().min(1).describe("First line of the file that it rests on"),
    lastLine: z.int().min(1).describe("Last line of the file that it rests on"),
    span: TraceSpan,
    foundBy: PlateauFinding,
    settlingTime: si(z.number().min(0).nullable(), {
      symbol: "t_s",
      unit: "s",
      text: "From the step until thrust and rotation rate had settled; null where no step or no clock tells it",
    }),
    samples: count("Samples used"),
    effectiveSamples: count("Independent samples they are worth, of the thrust"),
    command: si(z.number().nullable(), { symbol: "delta", unit: "1", text: "Mean command in the unit of its column" }),
    rotationRate: uncertainSi({ symbol: "n", unit: "rev/s", text: "Rotation rate of the shaft" }),
    thrust: uncertainSi({ symbol: "T", unit: "N", text: "Thrust after tare and calibration" }),
    thrustTare: si(z.number(), { symbol: "T_0", unit: "N", text: "Tare that was taken off" }),
    tareUncertainty: si(z.number().min(0), { symbol: "u(T_0)", unit: "N", text: "Its standard uncertainty" }),
    torque: uncertainSi({ symbol: "Q", unit: "N·m", text: "Shaft torque" }).nullable(),
    voltage: uncertainSi({ symbol: "U", unit: "V", text: "Supply voltage" }).nullable(),
    current: uncertainSi({ symbol: "I", unit: "A", text: "Supply current" }).nullable(),
    electricalPower: uncertainSi({ symbol: "P_e", unit: "W", text: "Electrical power" }).nullable(),
    shaftPower: uncertainSi({
      symbol: "P",
      unit: "W",
      text: "Shaft power, its interval with calibration and the stated doubt of the motor's constants",
    }).nullable(),
    thrustCoefficient: uncertainSi({
      symbol: "K_T",
      unit: "1",
      text: `Thrust coefficient of this plateau alone${OWN_DOUBT}`,
    }),
    powerCoefficient: uncertainSi({
      symbol: "C_P",
      unit: "1",
      text: `Power coefficient of this plateau alone${OWN_DOUBT}`,
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

/** A stretch of the log that did not become a plateau. */
export const RejectedStretch = z
  .strictObject({
    ...TraceSpan.shape,
    firstLine: z.int().min(1).describe("First line of the file that it covers"),
    lastLine: z.int().min(1).describe("Last line of the file that it covers"),
    because: z.string().describe("Why, in words"),
  })
  .meta({ id: "RejectedStretch" });
export type RejectedStretch = z.infer<typeof RejectedStretch>;

/** What a slow ramp gave that plateaus do not: the regression behind the thrust coefficient. */
export const Sweep = z
  .strictObject({
    method: z.string().describe("Estimator, with its authors"),
    blocks: z.int().min(1).describe("Mean readings of equal length that the regression rests on"),
    blockDuration: si(z.number().positive(), { symbol: "Δt", unit: "s", text: "Length of one" }),
    autocorrelation: si(z.number().min(-1).max(1), {
      symbol: "ρ",
      unit: "1",
      text: "First-order autocorrelation of what the regression leaves",
    }),
    lag: uncertainSi({
      symbol: "τ",
      unit: "s",
      text: "Time by which the thrust reading comes after the rotation rate",
    }),
    up: uncertainSi({
      symbol: "K_T",
      unit: "1",
      text: "Thrust coefficient of the way up alone, lag not allowed for",
    }).nullable(),
    down: uncertainSi({
      symbol: "K_T",
      unit: "1",
      text: "Thrust coefficient of the way down alone, lag not allowed for",
    }).nullable(),
    lagEffect: si(z.number().nullable(), {
      symbol: "δ",
      unit: "1",
      text: "Up over down less 1 before the lag is allowed for; how much too fast the ramp was",
    }),
    freeZero: z.boolean().describe("The zero was fitted with the thrust, because the log holds no rest"),
    converged: z.boolean(),
  })
  .meta({ id: "Sweep" });
export type Sweep = z.infer<typeof Sweep>;

/** Coefficients at bollard with the propeller turning backwards; thrust astern counts as positive. */
export const ReverseFit = z
  .strictObject({
    foundBy: z.enum(["rotationRate", "command", "thrust"]).describe("What tells the sense of rotation"),
    plateaus: z.array(z.int().min(1)).describe("Numbers of the plateaus, from 1"),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient" }),
    powerCoefficient: uncertainSi({ symbol: "C_P", unit: "1", text: "Power coefficient" }).nullable(),
    torqueCoefficient: uncertainSi({ symbol: "K_Q", unit: "1", text: "Torque coefficient, C_P/2π" }).nullable(),
    staticMerit: uncertainSi({ symbol: "FM", unit: "1", text: "Static merit" }).nullable(),
    toForward: uncertainSi({ symbol: "K_T/K_T", unit: "1", text: "Thrust coefficient astern over ahead" }),
    thrustFit: CoefficientFit,
    powerFit: CoefficientFit.nullable(),
  })
  .meta({ id: "ReverseFit" });
export type ReverseFit = z.infer<typeof ReverseFit>;

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
      shape: z.enum(["piecewise", "line"]).describe("How it goes between the windows"),
      driftRate: uncertainSi({ symbol: "dT_0/dt", unit: "N/s", text: "Drift of the tare" }).nullable(),
      line: z
        .array(
          z.strictObject({
            at: si(z.number(), {
              symbol: "t",
              unit: "s",
              text: "Place on the trace; a row from 0 where there is no clock",
            }),
            thrust: si(z.number(), { symbol: "T_0", unit: "N", text: "Tare there" }),
          }),
        )
        .describe("Corners of the tare over the trace: s, or rows without a clock; N"),
    }),
    plateaus: z.array(Plateau),
    rejected: z.array(RejectedStretch).describe("Stretches that did not become plateaus, in order"),
    sweep: Sweep.nullable().describe("Of a slow ramp: plateaus are then bins of rotation rate, for display"),
    thrustCoefficient: uncertainSi({ symbol: "K_T", unit: "1", text: "Thrust coefficient" }),
    powerCoefficient: uncertainSi({ symbol: "C_P", unit: "1", text: "Power coefficient" }).nullable(),
    torqueCoefficient: uncertainSi({ symbol: "K_Q", unit: "1", text: "Torque coefficient, C_P/2π" }).nullable(),
    powerSource: z.enum(["torque", "motorConstants"]).nullable().describe("Where the shaft power comes from"),
    staticMerit: uncertainSi({ symbol: "FM", unit: "1", text: "Static merit: ideal over real shaft power" }).nullable(),
    exponent: uncertainSi({
      symbol: "e",
      unit: "1",
      text: "Exponent of thrust against rotation rate; theory 2. Null where plateaus at rest do not tell it",
    }).nullable(),
    intercept: uncertainSi({
      symbol: "T_i",
      unit: "N",
      text: "Thrust at zero rotation rate by a line with intercept; theory 0. Null where the exponent is",
    }).nullable(),
    thrustFit: CoefficientFit,
    powerFit: CoefficientFit.nullable(),
    budget: RunBudget.exactOptional().describe(
      "Where the doubt of each coefficient comes from, and what would halve it",
    ),
    advance: AdvanceFit.nullable().describe("Curves against the advance ratio; null for a bollard run"),
    reverse: ReverseFit.nullable().describe("Plateaus that turn backwards, reduced apart; null without such"),
    calibrations: z
      .array(
        z.strictObject({
          role: InstrumentRole,
          name: z.string().describe("Name of the instrument"),
          sentence: z.string().describe("What its calibration is worth, in words"),
        }),
      )
      .exactOptional()
      .describe("Instruments whose calibration was used"),
    quality: z.array(QualityCheck).default([]).describe("Checks of the run: passed, flagged or not known"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "Reduction" });
export type Reduction = z.infer<typeof Reduction>;

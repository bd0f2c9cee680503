import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const doubt = (symbol: string, unit: string, text: string) =>
  si(z.number().min(0), { symbol, unit, text: `Standard uncertainty of the ${text}` }).exactOptional();

/** What a motor did in one steady point. */
export const MotorReading = z
  .strictObject({
    load: z
      .enum(["noLoadDry", "noLoadWet", "loaded"])
      .describe("Turning free in air, turning free flooded, or turning a propeller or brake"),
    voltage: si(z.number().positive(), { symbol: "U", unit: "V", text: "Voltage at the controller's input" }),
    current: number("I", "A", "Current into the controller"),
    rotationRate: si(z.number().positive(), { symbol: "n", unit: "rev/s", text: "Rotation rate of the shaft" }),
    throttle: z
      .union([z.number().positive().max(1), z.null(), z.literal("unknown")])
      .default(null)
      .describe("Duty of the controller, 0 to 1; null: full throttle; unknown: only the power balance is used"),
    torque: si(z.number().nullable(), {
      symbol: "Q",
      unit: "N·m",
      text: "Measured shaft torque of a loaded point; null where there was no torque cell",
    }).default(null),
    command: z
      .number()
      .nullable()
      .default(null)
      .describe("Command in the unit of its column, e.g. microseconds; used for the throttle map"),
    voltageUncertainty: doubt("u(U)", "V", "voltage"),
    currentUncertainty: doubt("u(I)", "A", "current"),
    rotationRateUncertainty: doubt("u(n)", "rev/s", "rotation rate"),
    torqueUncertainty: doubt("u(Q)", "N·m", "torque"),
    name: z.string().max(120).default("").describe("What to call the point in the residuals"),
  })
  .meta({ id: "MotorReading" });
export type MotorReading = z.infer<typeof MotorReading>;

/** An error that points share, such as the gain of one meter: it does not average down. */
export const SharedError = z
  .strictObject({
    quantity: z.enum(["voltage", "current", "rotationRate", "torque"]),
    relative: z.number().min(0).max(1).default(0).describe("Standard uncertainty as part of the reading"),
    offset: z.number().min(0).default(0).describe("Standard uncertainty of the zero, SI"),
    points: z.array(z.int().min(0)).exactOptional().describe("Indices of the points that share it; absent: all"),
  })
  .meta({ id: "SharedError" });
export type SharedError = z.infer<typeof SharedError>;

const Stated = z.strictObject({
  value: z.number().min(0).describe("Known beforehand, SI"),
  standardUncertainty: z.number().min(0).default(0).describe("Same unit; 0: taken as exact"),
});

export const MotorIdentificationRequest = z
  .strictObject({
    points: z.array(MotorReading).max(2000).default([]),
    shared: z.array(SharedError).max(50).default([]),
    controllerResistance: si(z.number().min(0), {
      symbol: "R_c",
      unit: "Ω",
      text: "Controller resistance in the motor's current path",
    }).default(0),
    stated: z
      .strictObject({
        speedConstant: Stated.describe("K_v, rad/(V·s)").exactOptional(),
        resistance: Stated.describe("Winding resistance, Ω").exactOptional(),
        noLoadCurrent: Stated.describe("I_0 at rest, A").exactOptional(),
        noLoadCurrentSlope: Stated.describe("Growth of I_0, A·s/rad").exactOptional(),
      })
      .default({})
      .describe("Constants known from elsewhere; they count as measurements with their uncertainty"),
    idleCommand: z.number().nullable().default(null).describe("Command at which the motor stands, for the dead band"),
    polePairReadings: z
      .array(
        z.strictObject({
          electrical: si(z.number().positive(), { symbol: "n_e", unit: "rev/s", text: "Electrical turns a second" }),
          shaft: si(z.number().positive(), { symbol: "n", unit: "rev/s", text: "Turns of the shaft by a tachometer" }),
        }),
      )
      .max(500)
      .default([])
      .describe("The same steady speed counted both ways"),
  })
  .meta({ id: "MotorIdentificationRequest" });
export type MotorIdentificationRequest = z.infer<typeof MotorIdentificationRequest>;
export type MotorIdentificationInput = z.input<typeof MotorIdentificationRequest>;

/** The constants a covariance matrix runs over, in this order. */
export const MOTOR_CONSTANTS = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const;

const covariance = z
  .array(z.array(z.number()))
  .describe("Covariance of speed constant, resistance, no-load current and its growth, in this order, SI");

export const IdentifiedConstants = z
  .strictObject({
    speedConstant: uncertainSi({ symbol: "K_v", unit: "rad/(V·s)", text: "Speed constant" }),
    torqueConstant: uncertainSi({ symbol: "K_t", unit: "N·m/A", text: "Torque constant, 1/K_v" }),
    resistance: uncertainSi({ symbol: "R_m", unit: "Ω", text: "Winding resistance" }),
    pathResistance: uncertainSi({ symbol: "R", unit: "Ω", text: "Resistance of winding and controller" }),
    noLoadCurrent: uncertainSi({ symbol: "I_0", unit: "A", text: "No-load current at rest" }).nullable(),
    noLoadCurrentSlope: uncertainSi({
      symbol: "b",
      unit: "A·s/rad",
      text: "Growth of the no-load current; uncertainty 0 where it was taken as a constant",
    }).nullable(),
    covariance,
  })
  .meta({ id: "IdentifiedConstants" });
export type IdentifiedConstants = z.infer<typeof IdentifiedConstants>;

export const WetLoss = z
  .strictObject({
    coefficient: UncertainNumber.describe("k in Q = k ω^m, SI with ω in rad/s"),
    exponent: uncertainSi({ symbol: "m", unit: "1", text: "Exponent of the extra torque on speed" }),
    rotationRate: number("n", "rev/s", "Speed in the middle of the wet points"),
    torque: uncertainSi({ symbol: "Q_wet", unit: "N·m", text: "Extra torque at that speed" }),
    power: uncertainSi({ symbol: "P_wet", unit: "W", text: "Extra shaft power at that speed" }),
  })
  .meta({ id: "WetLoss" });
export type WetLoss = z.infer<typeof WetLoss>;

export const PolePairs = z
  .strictObject({
    polePairs: z.int().min(1).describe("Magnet pole pairs, the nearest whole number"),
    ratio: uncertainSi({ symbol: "n_e/n", unit: "1", text: "Electrical turns for one turn of the shaft" }),
    off: z.number().describe("Measured ratio less the whole number"),
  })
  .meta({ id: "PolePairs" });
export type PolePairs = z.infer<typeof PolePairs>;

export const ThrottleMap = z
  .strictObject({
    commandAtZero: UncertainNumber.describe("Where the line reaches no duty, unit of the command"),
    commandAtFull: UncertainNumber.describe("Where the line reaches full duty, unit of the command"),
    deadBand: z.number().nullable().describe("From the idle command to the start of the line, unit of the command"),
    lowestTurning: z.number().describe("Lowest command, on the way from idle, at which the motor was seen to turn"),
    linearity: z.number().min(0).describe("Greatest distance of the duty from the line, part of full"),
    points: z.array(
      z.strictObject({
        command: z.number().describe("Command in the unit of its column"),
        throttle: UncertainNumber,
        used: z.boolean().describe("Counts in the line; points at full duty do not"),
      }),
    ),
  })
  .meta({ id: "ThrottleMap" });
export type ThrottleMap = z.infer<typeof ThrottleMap>;

export const MotorResidual = z.strictObject({
  point: z.int().min(0).describe("Index of the point"),
  name: z.string(),
  equation: z.enum(["voltage", "current", "power"]).describe("Which balance"),
  rotationRate: number("n", "rev/s", "Rotation rate of the point"),
  difference: z.number().describe("Measured less model: V, A or W"),
  residual: z.number().describe("The same in standard uncertainties"),
});
export type MotorResidual = z.infer<typeof MotorResidual>;

export const MotorIdentification = z
  .strictObject({
    constants: IdentifiedConstants.nullable().describe("Null where only pole pairs were asked for"),
    torqueConstantFromTorque: uncertainSi({
      symbol: "K_t",
      unit: "N·m/A",
      text: "Torque constant from torque against current alone, as a check",
    }).nullable(),
    wetLoss: WetLoss.nullable(),
    flooded: IdentifiedConstants.nullable().describe("The constants of the motor as it runs under water"),
    polePairs: PolePairs.nullable(),
    throttleMap: ThrottleMap.nullable(),
    residuals: z.array(MotorResidual),
    degreesOfFreedom: z.int().min(0).describe("Balances and stated constants less unknowns"),
    chiSquared: z.number().min(0).describe("Weighted sum of squared residuals before widening"),
    scatterRatio: z
      .number()
      .min(0)
      .describe("Factor on the uncertainties of the readings: above 1 where they scatter more than they should"),
    converged: z.boolean(),
    sentence: z.string().describe("The answer in words"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "MotorIdentification" });
export type MotorIdentification = z.infer<typeof MotorIdentification>;

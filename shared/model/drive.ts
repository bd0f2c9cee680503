import { z } from "zod";
import { si } from "./fields.ts";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

const MotorInput = z.enum(["speedConstant", "motorResistance", "noLoadCurrent", "noLoadCurrentSlope"]);

/** Motor, controller, supply, propeller and fluid of one thruster at bollard. */
export const DriveRequest = z
  .strictObject({
    speedConstant: number("K_v", "rad/(V·s)", "Speed constant"),
    motorResistance: number("R_m", "Ω", "Winding resistance"),
    noLoadCurrent: number("I_0", "A", "No-load current at rest"),
    noLoadCurrentSlope: number("b", "A·s/rad", "Growth of the no-load current with angular velocity").default(0),
    controllerResistance: number("R_c", "Ω", "Controller resistance").default(0),
    supplyVoltage: number("U_oc", "V", "Open-circuit voltage of the supply"),
    supplyResistance: number("R_s", "Ω", "Resistance of supply and leads").default(0),
    hotelPower: number("P_h", "W", "Constant power drawn by the rest of the vehicle").default(0),
    thrusters: z.int().min(1).max(64).default(1).describe("Equal thrusters at this throttle on the same supply"),
    diameter: number("D", "m", "Propeller diameter"),
    thrustCoefficient: number("K_T", "1", "Thrust coefficient"),
    torqueCoefficient: number("K_Q", "1", "Torque coefficient"),
    density: number("rho", "kg/m³", "Density of the fluid"),
    throttle: number("delta", "1", "Throttle, 0 to 1"),
    limits: z
      .strictObject({
        motorCurrent: number("I_max", "A", "Continuous motor current").exactOptional(),
        motorPower: number("P_max", "W", "Continuous electrical power of the motor").exactOptional(),
        controllerCurrent: number("I_max", "A", "Continuous controller current").exactOptional(),
        supplyCurrent: number("I_max", "A", "Continuous supply current").exactOptional(),
      })
      .default({}),
    uncertainties: z
      .partialRecord(
        z.enum([
          "speedConstant",
          "motorResistance",
          "noLoadCurrent",
          "noLoadCurrentSlope",
          "controllerResistance",
          "supplyVoltage",
          "supplyResistance",
          "diameter",
          "thrustCoefficient",
          "torqueCoefficient",
        ]),
        z.number().min(0),
      )
      .default({})
      .describe("Standard uncertainties of the inputs, same unit as each"),
    correlations: z
      .array(
        z.strictObject({
          of: MotorInput,
          and: MotorInput,
          coefficient: z.number().min(-1).max(1).describe("Correlation coefficient, -1 to 1"),
        }),
      )
      .default([])
      .describe("Correlations of motor constants that were identified together; other inputs are independent"),
  })
  .meta({ id: "DriveRequest" });
export type DriveRequest = z.infer<typeof DriveRequest>;
export type DriveRequestInput = z.input<typeof DriveRequest>;

/** The steady point of one thruster; every number for one thruster unless it says "all". */
export const OPERATING_POINT_NUMBERS = {
  rotationRate: number("n", "rev/s", "Rotation rate"),
  thrust: number("T", "N", "Bollard thrust"),
  torque: number("Q", "N·m", "Shaft torque"),
  motorCurrent: number("I_m", "A", "Motor current"),
  motorVoltage: number("U_m", "V", "Mean voltage at the motor"),
  supplyCurrent: number("I_s", "A", "Current from the supply, all thrusters and the hotel load"),
  supplyVoltage: number("U", "V", "Supply voltage under load"),
  shaftPower: number("P", "W", "Shaft power"),
  electricalPower: number("P_e", "W", "Electrical power into the controller"),
  efficiency: number("eta", "1", "Shaft power over electrical power"),
  thrustPerPower: number("T/P_e", "N/W", "Thrust over electrical power"),
} as const;

export const LimitState = z
  .strictObject({
    name: z.enum(["motor current", "motor power", "controller current", "supply current", "supply voltage"]),
    limit: z.number().describe("Allowed value, SI"),
    actual: z.number().describe("Value at this throttle, SI"),
    unit: z.string(),
    reachedAtThrottle: z
      .number()
      .nullable()
      .describe("Throttle at which it is reached; null if not up to full throttle"),
  })
  .meta({ id: "LimitState" });
export type LimitState = z.infer<typeof LimitState>;

export const OperatingPoint = z
  .strictObject({
    ...OPERATING_POINT_NUMBERS,
    efficiencies: z.strictObject({
      supply: number("eta_s", "1", "Supply voltage under load over open-circuit voltage"),
      controller: number("eta_c", "1", "Motor electrical power over power into the controller"),
      motor: number("eta_m", "1", "Shaft power over motor electrical power"),
      propeller: number("FM", "1", "Static merit: ideal over real shaft power"),
    }),
    losses: z.strictObject({
      supplyResistance: number("P", "W", "Lost in supply and leads"),
      controllerResistance: number("P", "W", "Lost in the controller"),
      winding: number("P", "W", "Lost in the winding"),
      friction: number("P", "W", "Lost to core and friction"),
    }),
    limits: z.array(LimitState),
    governingLimit: z.string().describe("The limit that is reached first as the throttle opens"),
    uncertainties: z
      .partialRecord(
        z.enum(Object.keys(OPERATING_POINT_NUMBERS) as [keyof typeof OPERATING_POINT_NUMBERS]),
        UncertainNumber,
      )
      .nullable()
      .describe("First-order propagation of the input uncertainties; null where none was given"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "OperatingPoint" });
export type OperatingPoint = z.infer<typeof OperatingPoint>;

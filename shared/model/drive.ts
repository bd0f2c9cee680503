import { z } from "zod";
import { OpenWater } from "./drivePropeller.ts";
import { si } from "./fields.ts";
import { WetTorque } from "./parts/motor.ts";
import { ResultWarning, UncertainNumber } from "./uncertain.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });

/** Inputs that may carry a standard uncertainty. */
const UncertainInput = z.enum([
  "speedConstant",
  "motorResistance",
  "noLoadCurrent",
  "noLoadCurrentSlope",
  "thermalResistance",
  "wetTorque",
  "gearEfficiency",
  "controllerResistance",
  "freewheelVoltage",
  "switchingLoss",
  "standbyPower",
  "supplyVoltage",
  "supplyResistance",
  "hotelPower",
  "diameter",
  "density",
  "thrustCoefficient",
  "torqueCoefficient",
]);
export type UncertainInput = z.infer<typeof UncertainInput>;

/** How warm the winding gets; absent in a request: the resistance is taken as it was stated. */
export const WindingHeat = z
  .strictObject({
    surroundings: number("T_w", "K", "Temperature of the water or air around the motor"),
    resistanceTemperature: number("T_0", "K", "Winding temperature that the resistance belongs to").default(293.15),
    thermalResistance: number("R_th", "K/W", "From winding to surroundings"),
    temperatureLimit: number("T_max", "K", "Greatest winding temperature").exactOptional(),
  })
  .meta({ id: "WindingHeat" });
export type WindingHeat = z.infer<typeof WindingHeat>;

/** Motor, controller, supply, gear, propeller and fluid of one thruster, at rest or at a speed through the water. */
export const DriveRequest = z
  .strictObject({
    speedConstant: number("K_v", "rad/(V·s)", "Speed constant"),
    motorResistance: number("R_m", "Ω", "Winding resistance"),
    noLoadCurrent: number("I_0", "A", "No-load current at rest"),
    noLoadCurrentSlope: number("b", "A·s/rad", "Growth of the no-load current with angular velocity").default(0),
    heat: WindingHeat.exactOptional(),
    wetTorque: WetTorque.omit({ coefficientUncertainty: true })
      .exactOptional()
      .describe("Extra torque of the flooded rotor; absent: none"),
    gearRatio: number("g", "1", "Turns of the motor for one turn of the propeller").default(1),
    gearEfficiency: number("eta_g", "1", "Share of the power that the gear lets through").default(1),
    controllerResistance: number("R_c", "Ω", "Controller resistance").default(0),
    freewheelVoltage: number("U_f", "V", "Voltage lost while the current freewheels").default(0),
    switchingLoss: number("kappa", "1", "Switching loss over supply voltage times motor current").default(0),
    standbyPower: number("P_0", "W", "Power each controller draws by itself").default(0),
    supplyVoltage: number("U_oc", "V", "Open-circuit voltage of the supply"),
    supplyResistance: number("R_s", "Ω", "Resistance of supply and leads").default(0),
    hotelPower: number("P_h", "W", "Constant power drawn by the rest of the vehicle").default(0),
    thrusters: z.int().min(1).max(64).default(1).describe("Equal thrusters at this throttle on the same supply"),
    diameter: number("D", "m", "Propeller diameter"),
    thrustCoefficient: number("K_T", "1", "Thrust coefficient at rest"),
    torqueCoefficient: number("K_Q", "1", "Torque coefficient at rest"),
    openWater: OpenWater.exactOptional().describe("Change of both with the advance ratio; needed at speed"),
    advanceSpeed: number("V_A", "m/s", "Speed of the water into the propeller").default(0),
    density: number("rho", "kg/m³", "Density of the fluid"),
    throttle: number("delta", "1", "Throttle, 0 to 1"),
    limits: z
      .strictObject({
        motorCurrent: number("I_max", "A", "Continuous motor current").exactOptional(),
        motorPower: number("P_max", "W", "Continuous electrical power of the motor").exactOptional(),
        controllerCurrent: number("I_max", "A", "Continuous controller current").exactOptional(),
        supplyCurrent: number("I_max", "A", "Continuous current of the pack").exactOptional(),
        fuseCurrent: number("I_max", "A", "Rating of the fuse").exactOptional(),
        tetherCurrent: number("I_max", "A", "Continuous current of the tether").exactOptional(),
        supplyVoltage: number("U_min", "V", "Least voltage under load").exactOptional(),
        cavitation: number("n", "rev/s", "Rotation rate of the propeller at which cavitation sets in").exactOptional(),
        ventilation: number("n", "rev/s", "Rotation rate of the propeller at which it draws air").exactOptional(),
      })
      .default({}),
    uncertainties: z
      .partialRecord(UncertainInput, z.number().min(0))
      .default({})
      .describe("Standard uncertainties of the inputs, same unit as each"),
    correlations: z
      .array(
        z.strictObject({
          of: UncertainInput,
          and: UncertainInput,
          coefficient: z.number().min(-1).max(1).describe("Correlation coefficient, -1 to 1"),
        }),
      )
      .default([])
      .describe("Correlations of inputs that were found together, such as motor constants; others are independent"),
  })
  .meta({ id: "DriveRequest" });
export type DriveRequest = z.infer<typeof DriveRequest>;
export type DriveRequestInput = z.input<typeof DriveRequest>;

/** The steady point of one thruster; every number for one thruster unless it says "all". */
export const OPERATING_POINT_NUMBERS = {
  rotationRate: number("n", "rev/s", "Rotation rate of the propeller"),
  thrust: number("T", "N", "Thrust"),
  torque: number("Q", "N·m", "Torque of the propeller"),
  motorCurrent: number("I_m", "A", "Motor current"),
  motorVoltage: number("U_m", "V", "Mean voltage at the motor"),
  supplyCurrent: number("I_s", "A", "Current from the supply, all thrusters and the hotel load"),
  supplyVoltage: number("U", "V", "Supply voltage under load"),
  windingTemperature: number("T", "K", "Steady temperature of the winding; as stated where heat is not worked out"),
  shaftPower: number("P", "W", "Power of the propeller shaft"),
  electricalPower: number("P_e", "W", "Electrical power into the controller"),
  efficiency: number("eta", "1", "Shaft power over electrical power"),
  thrustPerPower: number("T/P_e", "N/W", "Thrust over electrical power"),
} as const;

/** What can bound the throttle. "full throttle" is no limit of a part: all that the voltage gives. */
export const LIMIT_NAMES = [
  "motor current",
  "motor power",
  "winding temperature",
  "controller current",
  "supply current",
  "fuse current",
  "tether current",
  "least supply voltage",
  "supply voltage",
  "cavitation",
  "ventilation",
] as const;

export const LimitState = z
  .strictObject({
    name: z.enum(LIMIT_NAMES),
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
    status: z
      .enum(["turning", "atRest", "windmilling"])
      .describe(
        "windmilling: the propeller would turn slower than its curve reaches; rate and thrust are those at the end of the curve, thrust and torque are not known, and nothing is drawn",
      ),
    ...OPERATING_POINT_NUMBERS,
    efficiencies: z.strictObject({
      supply: number("eta_s", "1", "Supply voltage under load over open-circuit voltage"),
      controller: number("eta_c", "1", "Motor electrical power over power into the controller"),
      motor: number("eta_m", "1", "Shaft power over motor electrical power"),
      gear: number("eta_g", "1", "Propeller power over motor shaft power"),
      propeller: number("FM", "1", "Ideal over real shaft power: the static merit at rest, T (V + v)/P at speed"),
    }),
    losses: z.strictObject({
      supplyResistance: number("P", "W", "Lost in supply and leads"),
      controllerResistance: number("P", "W", "Lost in the resistance of the controller"),
      partThrottle: number("P", "W", "Lost in the controller by freewheeling and switching"),
      standby: number("P", "W", "Drawn by the controller itself"),
      winding: number("P", "W", "Lost in the winding"),
      friction: number("P", "W", "Lost to core and friction"),
      wetRotor: number("P", "W", "Lost to the water in the motor"),
      gear: number("P", "W", "Lost in the gear"),
    }),
    limits: z.array(LimitState),
    governingLimit: z
      .string()
      .describe(
        "The limit that is reached first as the throttle opens; supply voltage also where none is up to full throttle",
      ),
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

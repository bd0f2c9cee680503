import { z } from "zod";
import { si } from "../fields.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "../uncertain.ts";
import { PowerAccount } from "./account.ts";
import { ToldNumber } from "./toldNumber.ts";

const number = (symbol: string, unit: string, text: string) => si(z.number(), { symbol, unit, text });
const told = (symbol: string, unit: string, text: string) => si(ToldNumber, { symbol, unit, text });
const doubtful = (symbol: string, unit: string, text: string) => uncertainSi({ symbol, unit, text });

/** The six ways that a vehicle can go without turning. */
export const MotionWay = z.enum(["ahead", "astern", "starboard", "port", "up", "down"]);
export type MotionWay = z.infer<typeof MotionWay>;

/** What keeps the thrusters from pushing harder: full throttle, or the limit of a part. */
export const LimitingPart = z
  .strictObject({
    part: z
      .enum(["voltage", "motor", "controller", "propeller", "pack", "fuse", "tether", "layout", "nothing"])
      .describe(
        "voltage: full throttle, all that the bus voltage gives; propeller: cavitation, air drawn in or the end of its curve; layout: the other axes could not be held at zero",
      ),
    drive: z.string().nullable().describe("Name of the drive whose part it is; null: it is common to all"),
    limit: z.string().describe("The limit by its name, such as motor current"),
    text: z.string().describe("What would have to grow, as a sentence"),
  })
  .meta({ id: "LimitingPart" });
export type LimitingPart = z.infer<typeof LimitingPart>;

/** One thruster in a state of the whole vehicle. */
export const ThrusterState = z
  .strictObject({
    name: z.string(),
    drive: z.string(),
    thrust: number("T", "N", "Thrust; negative: astern"),
    greatestThrust: number("T", "N", "Greatest thrust that way at this bus voltage and speed, without sign"),
    throttle: number("delta", "1", "Throttle, 0 to 1, without sign"),
    rotationRate: number("n", "rev/s", "Rotation rate of the propeller"),
    motorCurrent: number("I_m", "A", "Motor current"),
    electricalPower: number("P_e", "W", "Electrical power into its controller"),
    shaftPower: number("P", "W", "Power of the propeller shaft"),
    inflow: number("V_A", "m/s", "Speed of the water into the propeller along its push; negative: against it"),
  })
  .meta({ id: "ThrusterState" });
export type ThrusterState = z.infer<typeof ThrusterState>;

/** All thrusters and the hotel load on one bus. */
export const BusState = z
  .strictObject({
    voltage: told("U", "V", "Voltage of the bus under load"),
    openCircuitVoltage: number("U_oc", "V", "Open-circuit voltage of the supply"),
    current: told("I", "A", "Current from the supply; without doubt where a limit of it is reached"),
    power: told("P", "W", "Power from the bus, thrusters and hotel load"),
    account: PowerAccount.describe("Best estimates"),
    thrusters: z.array(ThrusterState).describe("Best estimates"),
    limitedBy: LimitingPart,
    share: number("s", "1", "Part of what the thrusters could do by themselves that the supply lets them"),
    converged: z.boolean(),
  })
  .meta({ id: "BusState" });
export type BusState = z.infer<typeof BusState>;

/** What one doubtful input does to a result. */
export const DoubtShare = z
  .strictObject({
    input: z.string().describe("Stable key of the input"),
    name: z.string().describe("The input in words"),
    contribution: z.number().describe("Change of the result for one standard uncertainty of the input"),
    share: z.number().min(0).describe("Part of the variance of the result; correlated inputs stand together"),
    mend: z.string().describe("How to know it better"),
  })
  .meta({ id: "DoubtShare" });
export type DoubtShare = z.infer<typeof DoubtShare>;

/** Forces against speed: the chart whose crossing is the steady speed. */
export const ForceCurvePoint = z
  .strictObject({
    speed: number("V", "m/s", "Speed through the water"),
    available: number("T(1-t)", "N", "Greatest force of the thrusters on the hull that way"),
    drag: number("D", "N", "Drag of the vehicle"),
    tether: number("F_t", "N", "Force of the tether against the motion"),
    weight: number("W", "N", "Net weight or buoyancy against the motion; 0 but for up and down"),
  })
  .meta({ id: "ForceCurvePoint" });
export type ForceCurvePoint = z.infer<typeof ForceCurvePoint>;

export const SpeedAfter = z
  .strictObject({
    share: number("V/V_s", "1", "Share of the steady speed"),
    time: told("t", "s", "Time from rest at full thrust"),
    distance: told("x", "m", "Way through the water meanwhile"),
  })
  .meta({ id: "SpeedAfter" });
export type SpeedAfter = z.infer<typeof SpeedAfter>;

/** Stopping from the steady speed ahead or astern. */
export const Stopping = z
  .strictObject({
    coastDistance: told("x", "m", "Way with the thrusters off until a tenth of the speed is left"),
    coastTime: told("t", "s", "Time until then"),
    brakedDistance: told("x", "m", "Way with full thrust the other way").nullable(),
    brakedTime: told("t", "s", "Time to standstill with full thrust the other way").nullable(),
    text: z.string().describe("What it rests on"),
  })
  .meta({ id: "Stopping" });
export type Stopping = z.infer<typeof Stopping>;

/** How fast the vehicle goes one way at full thrust, and what that rests on. */
export const SteadyMotion = z
  .strictObject({
    way: MotionWay,
    state: z
      .enum(["moves", "stands", "notCommanded", "noDrag"])
      .describe(
        "stands: the force at rest does not overcome weight or tether; notCommanded: no thruster pushes that way alone; noDrag: the drag that way is not given",
      ),
    sentence: z.string(),
    force: ToldNumber.nullable().describe("Greatest force on the hull at rest, N; null: not commanded"),
    speed: ToldNumber.nullable().describe("Greatest steady speed through the water, m/s; null where there is none"),
    atRest: BusState.nullable().describe("The bus at that force"),
    atSpeed: BusState.nullable().describe("The bus at that speed"),
    drag: number("D", "N", "Drag at that speed").nullable(),
    tether: number("F_t", "N", "Force of the tether against the motion at that speed").nullable(),
    propulsiveEfficiency: told("eta", "1", "Useful power over power from the bus without the hotel load").nullable(),
    shares: z
      .array(DoubtShare)
      .describe("What makes the speed doubtful, the greatest share first: what to measure next"),
    interaction: z
      .strictObject({
        speedWithout: told("V", "m/s", "Speed with neither wake nor thrust deduction"),
        byWake: told("dV", "m/s", "What the wake alone changes"),
        byDeduction: told("dV", "m/s", "What the thrust deduction alone changes"),
      })
      .nullable(),
    curve: z.array(ForceCurvePoint).describe("From rest to beyond the steady speed"),
    upToSpeed: z.array(SpeedAfter).describe("From rest at full thrust; empty where mass or speed is not known"),
    stopping: Stopping.nullable().describe("From this speed; null where there is none"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "SteadyMotion" });
export type SteadyMotion = z.infer<typeof SteadyMotion>;

/** One heading of the polar diagram. */
export const HeadingPoint = z
  .strictObject({
    currentFrom: number("psi", "rad", "Where the current comes from, from the way it goes: 0 ahead, π/2 starboard"),
    speedOverGround: number(
      "V_g",
      "m/s",
      "Greatest speed over the ground along its way; negative: it is carried back",
    ).nullable(),
    bowOffset: number("beta", "rad", "Angle of the bow to its way, to starboard positive").nullable(),
    speedThroughWater: number("V", "m/s", "Speed through the water meanwhile").nullable(),
    greatestCurrentHeld: number(
      "U",
      "m/s",
      "Greatest current from there in which it holds its place, bow kept",
    ).nullable(),
    holdsStation: z.boolean().nullable().describe("Bow kept, in the current of the scenario; null: not known"),
  })
  .meta({ id: "HeadingPoint" });
export type HeadingPoint = z.infer<typeof HeadingPoint>;

export const HeadingPolar = z
  .strictObject({
    current: number("U", "m/s", "Speed of the current"),
    points: z.array(HeadingPoint).describe("Every 15° round"),
    leastCurrentHeld: ToldNumber.nullable().describe(
      "Least of the greatest currents held from any side, bow kept, m/s",
    ),
    worstFrom: number("psi", "rad", "Where that current comes from").nullable(),
    againstCurrent: ToldNumber.nullable().describe("Speed over the ground straight against the current, m/s"),
    sentence: z.string(),
  })
  .meta({ id: "HeadingPolar" });
export type HeadingPolar = z.infer<typeof HeadingPolar>;

/** A change of the vehicle and what it does to the speed ahead. */
export const DesignChange = z
  .strictObject({
    key: z.string(),
    name: z.string().describe("The change in words"),
    speed: number("V", "m/s", "Speed ahead with it"),
    change: ToldNumber.describe("Change of the speed ahead, m/s"),
    text: z.string().describe("What it rests on"),
  })
  .meta({ id: "DesignChange" });
export type DesignChange = z.infer<typeof DesignChange>;

/** Up and down. */
export const VerticalAnswer = z
  .strictObject({
    netForce: doubtful("F_z", "N", "Net force without thrust, payload aboard; positive: it sinks"),
    sentence: z.string(),
    ballast: doubtful("W_b", "N", "Weight in water to add so that it neither floats nor sinks; negative: to take off"),
    climb: ToldNumber.nullable().describe("Greatest speed up, m/s; null: it can not climb or it is not known"),
    descent: ToldNumber.nullable().describe("Greatest speed down, m/s"),
    holdPower: told(
      "P",
      "W",
      "Power from the bus to hold the depth against the net force and the pull of the tether at rest, hotel included",
    ).nullable(),
    holdPowerNeutral: told("P", "W", "The same without either").nullable(),
    greatestPayload: UncertainNumber.nullable().describe("Greatest weight in water that it lifts at the climb rate, N"),
    climbRate: number("w", "m/s", "The climb rate that is for"),
    withoutPower: z
      .strictObject({
        goes: z.enum(["up", "down", "nowhere"]),
        speed: ToldNumber.nullable().describe("Speed it ends at, m/s; null: nowhere, or the drag is not known"),
        timeToSurface: number("t", "s", "Time to the surface from the depth of the scenario").nullable(),
        text: z.string(),
      })
      .describe("With the thrusters dead"),
    losses: z
      .array(
        z.strictObject({
          thruster: z.string(),
          up: number("F", "N", "Greatest force up left on the hull, other motions at zero"),
          ahead: number("F", "N", "Greatest force ahead left"),
          holdsDepth: z.boolean().describe("The force left holds the net force"),
          sentence: z.string(),
        }),
      )
      .describe("With one thruster lost"),
  })
  .meta({ id: "VerticalAnswer" });
export type VerticalAnswer = z.infer<typeof VerticalAnswer>;

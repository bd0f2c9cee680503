import { driveRequestOf } from "../drive/driveRequestOf.ts";
import { requireDrive } from "../drive/requireDrive.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { DrivePropeller } from "../model/drivePropeller.ts";
import type { DriveTrain, SupplyAssembly } from "../model/driveTrain.ts";
import type { DriveRunning } from "../model/driveTrainPoint.ts";
import type { Controller } from "../model/parts/controller.ts";
import type { Gear } from "../model/parts/gear.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { PartsBox, ShortlistRequirement } from "../model/shortlist.ts";
import { COPPER_REFERENCE_TEMPERATURE } from "../quantity/copper.ts";
import { InputProblem, OutOfDomain } from "../quantity/problem.ts";
import { allPropellers, allSupplies } from "./boxContents.ts";
import { type AskedDuty, type DemandTable, demandTable } from "./demandSlots.ts";
import { type CurveInputs, type DoubtfulInput, type Doubts, emptyInputs, type InputDoubt, NO_DOUBT } from "./inputs.ts";
import type {
  ControllerRecord,
  GearRecord,
  MotorRecord,
  PartRecords,
  PropellerRecord,
  SupplyRecord,
} from "./partRecords.ts";
import { advanceOf, NOT_KNOWN, RateSolver } from "./rateSolver.ts";

const AT_REST: DriveRunning = { throttle: 1, direction: "ahead", advanceSpeed: 0 };

/** What records are made with. */
export interface Making {
  readonly requirement: ShortlistRequirement;
  readonly table: DemandTable;
  /** A drive of the first of each kind; a part is put in its place to see what it brings. */
  readonly first: DriveTrain;
}

/**
 * What each part of a box brings into every combination. The request that the drive makes of a part does not depend on
 * the parts beside it, so each is asked once, next to the first of the other kinds.
 *
 * Range    a box with at least one part of each kind: `requireBox`.
 * Throws   as `driveRequestOf`, and of propellers as `requireDrive`, told from the part.
 */
export function recordsOf(requirement: ShortlistRequirement, box: PartsBox): PartRecords {
  const supplies = allSupplies(box);
  const { propellers, warnings } = allPropellers(box, requirement.water);
  const controllers = [...box.controllers, ...(box.withoutController ? [undefined] : [])];
  const gears = [...(box.directDrive ? [undefined] : []), ...box.gears];
  const making = makingOf(requirement, { motor: box.motors[0]!, supply: supplies[0]!, propeller: propellers[0]! });
  const { request } = driveRequestOf(making.first, AT_REST);
  const records = {
    motors: box.motors.map((motor) => motorRecord(making, motor)),
    controllers: controllers.map((controller) => controllerRecord(making, controller)),
    supplies: supplies.map((supply) => supplyRecord(making, supply)),
    gears: gears.map((gear) => gearRecord(making, gear)),
    propellers: propellers.map((propeller) => propellerRecord(making, propeller)),
  };
  const sizes = Object.fromEntries(Object.entries(records).map(([kind, list]) => [kind, list.length]));
  return {
    ...records,
    table: making.table,
    sizes: sizes as unknown as PartRecords["sizes"],
    common: { density: request.density, hotelPower: requirement.hotelPower, thrusters: requirement.thrusters },
    commonDoubts: { inputs: doubt("hotelPower", requirement.hotelPowerUncertainty), correlations: [] },
    warnings,
  };
}

/** What records of parts are made with; `parts` are put beside each. */
export function makingOf(requirement: ShortlistRequirement, parts: Chosen): Making {
  return { requirement, table: demandTable(requirement), first: drive(requirement, parts) };
}

type Chosen = Pick<DriveTrain, "motor" | "supply" | "propeller"> & Partial<Pick<DriveTrain, "controller" | "gear">>;

/** The drive train of some parts in the water of a requirement. */
export function drive(requirement: ShortlistRequirement, parts: Chosen): DriveTrain {
  const { thrusters, hotelPower, hotelPowerUncertainty, water, depth } = requirement;
  return {
    ...parts,
    ...{ thrusters, hotelPower, hotelPowerUncertainty, water },
    ...(depth !== undefined && { depth }),
  };
}

function requestWith({ first }: Making, part: Partial<DriveTrain>, kind: string, name: string): DriveRequest {
  return toldFrom(`${kind} ${name}`, () => driveRequestOf({ ...first, ...part }, AT_REST).request);
}

function toldFrom<T>(where: string, action: () => T): T {
  try {
    return action();
  } catch (reason) {
    if (reason instanceof InputProblem) throw reason.at(where);
    if (!(reason instanceof OutOfDomain)) throw reason;
    const { problem } = reason;
    throw new OutOfDomain({ ...problem, where: problem.where === "" ? where : `${where}, ${problem.where}` });
  }
}

const MOTOR_DOUBTS = [
  ...["speedConstant", "motorResistance", "noLoadCurrent", "noLoadCurrentSlope", "thermalResistance", "wetTorque"],
] as const satisfies readonly string[];

function motorRecord(making: Making, motor: Motor): MotorRecord {
  const request = requestWith(making, { motor }, "Motor", motor.name);
  const { heat, wetTorque, limits } = request;
  return {
    ...bought(making, motor),
    document: motor,
    inputs: {
      speedConstant: request.speedConstant,
      motorResistance: request.motorResistance,
      noLoadCurrent: request.noLoadCurrent,
      noLoadCurrentSlope: request.noLoadCurrentSlope,
      thermalResistance: heat?.thermalResistance ?? 0,
      resistanceTemperature: heat?.resistanceTemperature ?? COPPER_REFERENCE_TEMPERATURE,
      surroundings: making.requirement.water.temperature,
      wetTorque: wetTorque?.coefficient ?? 0,
      wetExponent: wetTorque?.exponent ?? 2,
      motorCurrent: limits.motorCurrent ?? Infinity,
      motorPower: limits.motorPower ?? Infinity,
      windingTemperature: heat?.temperatureLimit ?? Infinity,
      motorVoltage: motor.voltageLimit ?? Infinity,
    },
    doubts: doubtsOf(request, MOTOR_DOUBTS),
  };
}

function controllerRecord(making: Making, controller: Controller | undefined): ControllerRecord {
  const name = controller?.name ?? "no controller";
  const request = requestWith(making, controller ? { controller } : {}, "Controller", name);
  return {
    ...(controller ? bought(making, controller) : { name, mass: 0, price: 0 }),
    document: controller,
    turnsBothWays: controller?.command?.fullReverse !== null,
    inputs: {
      controllerResistance: request.controllerResistance,
      freewheelVoltage: request.freewheelVoltage,
      switchingLoss: request.switchingLoss,
      standbyPower: request.standbyPower,
      controllerCurrent: request.limits.controllerCurrent ?? Infinity,
      controllerVoltage: controller?.voltageLimit ?? Infinity,
    },
    doubts: NO_DOUBT,
  };
}

function supplyRecord(making: Making, supply: SupplyAssembly): SupplyRecord {
  const name = supplyName(supply);
  const request = requestWith(making, { supply }, "Supply", name);
  const { supplyCurrent, fuseCurrent, tetherCurrent, supplyVoltage } = request.limits;
  const { pack, tether } = supply;
  const unknown = unknownAmount(making);
  const { charge, chargeDoubt } = chargeOf(supply, making.requirement.endurance?.reserve ?? 0);
  const { inputs, correlations } = doubtsOf(request, ["supplyVoltage", "supplyResistance"]);
  return {
    name,
    document: supply,
    // A tether states no mass: it lies in the water, not on the vehicle.
    mass: pack.mass ?? unknown,
    price: (pack.price ?? unknown) + (tether ? (tether.price ?? unknown) : 0),
    inputs: {
      supplyVoltage: request.supplyVoltage,
      supplyResistance: request.supplyResistance,
      supplyCurrent: supplyCurrent ?? Infinity,
      fuseCurrent: fuseCurrent ?? Infinity,
      tetherCurrent: tetherCurrent ?? Infinity,
      leastVoltage: supplyVoltage ?? 0,
      charge,
    },
    doubts: { inputs: [...inputs, ...doubt("charge", chargeDoubt)], correlations },
  };
}

/** Pack and tether by their names. */
export function supplyName({ pack, tether }: SupplyAssembly): string {
  return tether === undefined ? pack.name : `${pack.name} through ${tether.name}`;
}

/**
 * Charge that may be drawn, C: from the state it begins in (full where none is stated) down to the reserve. A source at
 * the surface without a stated charge has no end; a pack aboard without one is not known.
 */
function chargeOf({ pack, tether, charge: state = 1 }: SupplyAssembly, reserve: number) {
  const share = Math.max(0, state - reserve);
  const chargeDoubt = share * (pack.uncertainties?.charge ?? 0);
  if (pack.charge !== undefined) return { charge: pack.charge * share, chargeDoubt };
  return { charge: tether?.conductor ? Infinity : Number.NaN, chargeDoubt: 0 };
}

function gearRecord(making: Making, gear: Gear | undefined): GearRecord {
  return {
    ...(gear ? bought(making, gear) : { name: "direct drive", mass: 0, price: 0 }),
    document: gear,
    inputs: { gearRatio: gear?.ratio ?? 1, gearEfficiency: gear?.efficiency ?? 1 },
    doubts: NO_DOUBT,
  };
}

/** What a propeller brings into every combination. */
export function propellerRecord(making: Making, propeller: DrivePropeller): PropellerRecord {
  const { duties } = making.table;
  const rest = requestWith(making, { propeller }, "Propeller", propeller.name);
  const requests = duties.map((duty) => requestIn(making, propeller, duty));
  // The other parts can not be other than physical by their documents; coefficients and their change with speed can.
  toldFrom(`Propeller ${propeller.name}`, () => {
    for (const request of [rest, ...requests]) if (request !== null) requireDrive(request);
  });
  const astern = requests[duties.findIndex(({ duty }) => duty === "astern")] ?? null;
  const curves = requests.map((request, d) => request && curveOf(request, duties[d]!.advanceSpeed));
  const inputs = doubtsOf(rest, ["diameter"]).inputs;
  const ahead = coefficientDoubts(rest, "thrustAhead", "torqueAhead");
  const back = astern === null ? NO_DOUBT : coefficientDoubts(astern, "thrustAstern", "torqueAstern");
  return {
    ...bought(making, propeller),
    document: propeller,
    diameter: rest.diameter,
    curves,
    rates: curves.map((curve, d) => (curve === null ? NOT_KNOWN : rateOf(making, duties[d]!, curve, rest))),
    atRest: curveOf(rest, 0),
    doubts: {
      inputs: [...inputs, ...ahead.inputs, ...back.inputs],
      correlations: [...ahead.correlations, ...back.correlations],
    },
  };
}

/** The rate does not depend on what turns the propeller, so motor and supply are left empty. */
function rateOf(
  { requirement }: Making,
  { thrust }: AskedDuty,
  curve: CurveInputs,
  { diameter, density }: DriveRequest,
) {
  const solver = new RateSolver();
  solver.fill({ ...emptyInputs(requirement, density), diameter }, curve, curve.advance);
  return solver.rateForThrust(thrust);
}

/** The request of a propeller in a state; null where nothing is known of it there. */
function requestIn({ first, requirement }: Making, propeller: DrivePropeller, duty: AskedDuty): DriveRequest | null {
  const { advanceSpeed } = duty;
  const { controller: _, ...withoutController } = first;
  const direction = duty.duty === "astern" ? "astern" : "ahead";
  const { asternEstimate } = requirement;
  if (direction === "astern" && propeller.astern === undefined && asternEstimate === undefined) return null;
  if (advanceSpeed > 0 && propeller.ahead.openWater === undefined) return null;
  const running = { throttle: 1, direction, advanceSpeed, ...(asternEstimate && { asternEstimate }) } as const;
  return toldFrom(
    `Propeller ${propeller.name}`,
    () => driveRequestOf({ ...withoutController, propeller }, running).request,
  );
}

function curveOf(request: DriveRequest, advanceSpeed: number): CurveInputs {
  const { thrustCoefficient, torqueCoefficient, openWater = null, limits } = request;
  const atRest = { thrustCoefficient, torqueCoefficient, openWater };
  const { cavitation = Infinity, ventilation = Infinity } = limits;
  const curve = { ...atRest, cavitation, ventilation, advance: null };
  return { ...curve, advance: advanceOf(curve, advanceSpeed) };
}

function coefficientDoubts(request: DriveRequest, thrust: DoubtfulInput, torque: DoubtfulInput): Doubts {
  const { thrustCoefficient = 0, torqueCoefficient = 0 } = request.uncertainties;
  const shared = request.correlations.find(({ of, and }) => of === "thrustCoefficient" && and === "torqueCoefficient");
  return {
    inputs: [...doubt(thrust, thrustCoefficient), ...doubt(torque, torqueCoefficient)],
    correlations: shared ? [{ of: thrust, and: torque, coefficient: shared.coefficient }] : [],
  };
}

/** Doubts of a request in these of its inputs, which have the same names here. */
function doubtsOf({ uncertainties, correlations }: DriveRequest, names: readonly string[]): Doubts {
  const inputs = Object.entries(uncertainties).flatMap(([name, u]) =>
    names.includes(name) ? doubt(name as DoubtfulInput, u!) : [],
  );
  const within = correlations.filter(({ of, and }) => names.includes(of) && names.includes(and));
  return { inputs, correlations: within as Doubts["correlations"] };
}

function doubt(input: DoubtfulInput, standardUncertainty: number): InputDoubt[] {
  return standardUncertainty > 0 ? [{ input, standardUncertainty }] : [];
}

interface Stated {
  readonly name: string;
  readonly mass?: number;
  readonly price?: number;
}

function bought(making: Making, { name, mass, price }: Stated) {
  const unknown = unknownAmount(making);
  return { name, mass: mass ?? unknown, price: price ?? unknown };
}

/** What a mass or price that is not stated counts as. */
function unknownAmount({ requirement }: Making): number {
  return requirement.notStated === "nothing" ? 0 : Number.NaN;
}

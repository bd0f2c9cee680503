import { driveRequestOf } from "../drive/driveRequestOf.ts";
import type { SupplyAssembly } from "../model/driveTrain.ts";
import type { Controller } from "../model/parts/controller.ts";
import type { Gear } from "../model/parts/gear.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { PartsBox, ShortlistRequirement } from "../model/shortlist.ts";
import { COPPER_REFERENCE_TEMPERATURE } from "../quantity/copper.ts";
import { allPropellers, allSupplies } from "./boxContents.ts";
import { NO_DOUBT } from "./inputs.ts";
import type { ControllerRecord, GearRecord, MotorRecord, PartRecords, SupplyRecord } from "./partRecords.ts";
import { propellerRecord } from "./propellerRecord.ts";
import { AT_REST, bought, doubt, doubtsOf, type Making, makingOf, requestWith, unknownAmount } from "./recordMaking.ts";

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
  return {
    ...records,
    table: making.table,
    sizes: {
      motors: records.motors.length,
      controllers: records.controllers.length,
      supplies: records.supplies.length,
      gears: records.gears.length,
      propellers: records.propellers.length,
    },
    common: { density: request.density, hotelPower: requirement.hotelPower, thrusters: requirement.thrusters },
    commonDoubts: { inputs: doubt("hotelPower", requirement.hotelPowerUncertainty), correlations: [] },
    warnings,
  };
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
function supplyName({ pack, tether }: SupplyAssembly): string {
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

import { driveRequestOf } from "../../drive/driveRequestOf.ts";
import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { DriveRequest } from "../../model/drive.ts";
import type { DriveTrain } from "../../model/driveTrain.ts";
import type { DriveGround } from "../../model/driveTrainPoint.ts";
import type { SupplyState } from "../../model/supplyState.ts";
import type { AxisDrag, ResolvedDrag } from "../../model/vehicle/drag.ts";
import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { ThrusterDrive, Vehicle } from "../../model/vehicle/vehicle.ts";
import { formatNumber } from "../../quantity/format.ts";
import { mergedWarnings } from "../../quantity/mergedWarnings.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { supplyOf } from "../../supply/supplyOf.ts";
import { axisDrag } from "../drag/axisDrag.ts";
import { checkNumbers } from "./checkNumbers.ts";
import { unstatedLimits } from "./unstatedLimits.ts";

/** The two directions of one kind of thruster, each as a question to the engine of the operating point. */
export interface DriveWays {
  readonly name: string;
  readonly ahead: DriveRequest;
  /** Null: it pushes one way only. */ readonly astern: DriveRequest | null;
}

/** Drag one way. */
export interface WayDrag {
  /** C_D A, m². */ readonly dragArea: number;
  /** N·s/m. */ readonly linear: number;
  /** kg. */ readonly addedMass: number;
}

/** Source behind one resistance. */
export interface BusSupply {
  /** U_oc, V. */ readonly openCircuitVoltage: number;
  /** R_s, Ω. */ readonly resistance: number;
}

/** Everything of a vehicle that may be doubtful, as plain numbers: what a draw changes. */
export interface VehicleNumbers {
  /** kg/m³. */ readonly density: number;
  readonly wakeFraction: number;
  readonly thrustDeduction: number;
  readonly supply: BusSupply;
  /** W. */ readonly hotelPower: number;
  /** kg. */ readonly mass: number;
  /** Buoyancy less weight without payload, N. */ readonly netBuoyancy: number;
  /** Weight in water of the payload, N. */ readonly payload: number;
  /** m/s. */ readonly currentSpeed: number;
  readonly drives: readonly DriveWays[];
  /** Null: not given. Two ways that share one drag share one object. */
  readonly drag: Readonly<Record<MotionWay, WayDrag | null>>;
  /** Factors on the drag and weight of the tether. */
  readonly tether: { readonly normal: number; readonly tangential: number; readonly weight: number };
}

/** The numbers with all that stands behind them. */
export interface VehicleFacts {
  readonly vehicle: Vehicle;
  readonly numbers: VehicleNumbers;
  readonly supply: SupplyState;
  readonly axisDrag: AxisDrag;
  readonly resolved: Readonly<Record<MotionWay, ResolvedDrag | null>>;
  readonly grounds: readonly (DriveGround & { readonly drive: string })[];
  readonly warnings: readonly Warning[];
}

/**
 * The numbers of a vehicle, worked out from its parts once.
 *
 * Throws   InputProblem `vehicle.no-such-drive`, `vehicle.same-drive-name`, `vehicle.mass`; and as `checkNumbers`, `axisDrag`, `supplyOf`
 *          and `driveRequestOf`, told from the drive.
 */
export function vehicleFacts(vehicle: Vehicle): VehicleFacts {
  requireVehicle(vehicle);
  checkNumbers(vehicle);
  const supply = supplyOf(vehicle.supply);
  const drag = axisDrag(vehicle.drag, vehicle.water);
  const resolved = {
    ...{ ahead: drag.surge?.forward ?? null, astern: drag.surge?.astern ?? null },
    ...{ starboard: drag.sway, port: drag.sway, up: drag.heave?.up ?? null, down: drag.heave?.down ?? null },
  };
  const prepared = vehicle.drives.map((drive) => preparedDrive(vehicle, drive));
  const numbers: VehicleNumbers = {
    density: fluidProperties(vehicle.water).density,
    wakeFraction: vehicle.interaction.wakeFraction.value,
    thrustDeduction: vehicle.interaction.thrustDeduction.value,
    supply: { openCircuitVoltage: supply.openCircuitVoltage, resistance: supply.resistance },
    hotelPower: vehicle.hotelPower.value,
    mass: vehicle.mass.value,
    netBuoyancy: vehicle.netBuoyancy.value,
    payload: vehicle.scenario.payload.value,
    currentSpeed: vehicle.scenario.currentSpeed,
    drives: prepared.map(({ ways }) => ways),
    drag: dragNumbers(resolved),
    tether: { normal: 1, tangential: 1, weight: 1 },
  };
  return {
    ...{ vehicle, numbers, supply, axisDrag: drag, resolved },
    grounds: prepared.flatMap(({ grounds }) => grounds),
    warnings: mergedWarnings([...supply.warnings, ...drag.warnings, ...prepared.flatMap(({ warnings }) => warnings)]),
  };
}

/** One object for each drag, so that ways which share it go on sharing it. */
function dragNumbers(resolved: VehicleFacts["resolved"]): VehicleNumbers["drag"] {
  const made = new Map<ResolvedDrag, WayDrag>();
  const of = (one: ResolvedDrag | null): WayDrag | null => {
    if (one === null) return null;
    const { dragArea, linear, addedMass } = one;
    const way = made.get(one) ?? { dragArea: dragArea.value, linear: linear.value, addedMass: addedMass.value };
    made.set(one, way);
    return way;
  };
  return {
    ...{ ahead: of(resolved.ahead), astern: of(resolved.astern) },
    ...{ starboard: of(resolved.starboard), port: of(resolved.port), up: of(resolved.up), down: of(resolved.down) },
  };
}

interface PreparedWays {
  readonly ways: DriveWays;
  readonly grounds: VehicleFacts["grounds"];
  readonly warnings: readonly Warning[];
}

/** Both directions of a drive, without its supply: the bus is solved for the vehicle as a whole. */
function preparedDrive(vehicle: Vehicle, drive: ThrusterDrive): PreparedWays {
  const train: DriveTrain = {
    ...{ supply: vehicle.supply, motor: drive.motor, propeller: drive.propeller, water: vehicle.water },
    ...(drive.controller && { controller: drive.controller }),
    ...(drive.gear && { gear: drive.gear }),
    ...{ thrusters: 1, hotelPower: 0, hotelPowerUncertainty: 0, depth: vehicle.scenario.depth },
  };
  const prepare = (direction: "ahead" | "astern") => {
    const estimate = drive.asternEstimate && { asternEstimate: drive.asternEstimate };
    const { request, grounds, warnings } = driveRequestOf(train, {
      ...{ throttle: 1, direction, advanceSpeed: 0 },
      ...estimate,
    });
    return { request: withoutSupply(request), grounds, warnings };
  };
  const ahead = prepare("ahead");
  const astern = pushesAstern(drive) ? prepare("astern") : null;
  const grounds = bothWays(ahead.grounds, astern?.grounds ?? []).map((one) => ({ ...one, drive: drive.name }));
  const told = [...ahead.warnings, ...(astern?.warnings ?? []), ...(astern ? [] : [oneWay(drive)])];
  const warnings = [...unstatedLimits(ahead.request), ...told].map((one) => ({
    ...one,
    where: `${drive.name}: ${one.where}`,
  }));
  return { ways: { name: drive.name, ahead: ahead.request, astern: astern?.request ?? null }, grounds, warnings };
}

/** What is said of both ways is said once; where they differ, each says its way. */
function bothWays(ahead: readonly DriveGround[], astern: readonly DriveGround[]): DriveGround[] {
  const said = (one: DriveGround, others: readonly DriveGround[], way: string): DriveGround => {
    const other = others.find(({ about }) => about === one.about);
    if (other === undefined || other.text === one.text) return one;
    return { ...one, text: `Pushing ${way}, ${one.text.charAt(0).toLowerCase()}${one.text.slice(1)}` };
  };
  return [...ahead.map((one) => said(one, astern, "ahead")), ...astern.map((one) => said(one, ahead, "astern"))];
}

function pushesAstern({ controller, propeller, asternEstimate }: ThrusterDrive): boolean {
  return controller?.command?.fullReverse !== null && (propeller.astern !== undefined || asternEstimate !== undefined);
}

/** The limits of the supply hold for all thrusters together, and its doubts are counted once. */
function withoutSupply(request: DriveRequest): DriveRequest {
  const {
    supplyCurrent: _pack,
    fuseCurrent: _fuse,
    tetherCurrent: _tether,
    supplyVoltage: _least,
    ...limits
  } = request.limits;
  const { supplyVoltage: _u, supplyResistance: _r, hotelPower: _h, ...uncertainties } = request.uncertainties;
  return { ...request, supplyResistance: 0, hotelPower: 0, limits, uncertainties };
}

function requireVehicle({ drives, thrusters, mass }: Vehicle): void {
  drives.forEach(({ name }, i) => {
    if (drives.findIndex((other) => other.name === name) === i) return;
    throw new InputProblem({
      code: "vehicle.same-drive-name",
      where: `drives.${i}.name`,
      found: `Two drives are called ${name}`,
      needed: "a name for each, as thrusters name their drive by it",
      mend: "Rename one of them",
    });
  });
  thrusters.forEach(({ name, drive }, i) => {
    if (drives.some((one) => one.name === drive)) return;
    throw new InputProblem({
      code: "vehicle.no-such-drive",
      where: `thrusters.${i}.drive`,
      found: `The thruster ${name} has the drive ${drive}, which the vehicle does not have`,
      needed: `one of ${drives.map((one) => one.name).join(", ")}`,
      mend: "Choose one of them, or add the drive",
    });
  });
  if (mass.value > 0 && Number.isFinite(mass.value)) return;
  throw new InputProblem({
    code: "vehicle.mass",
    where: "mass",
    found: `The mass is ${formatNumber(mass.value)} kg`,
    needed: "more than 0 kg",
    mend: "Weigh the vehicle, and add the water that it encloses",
  });
}

function oneWay({ controller, propeller: { name } }: ThrusterDrive): Warning {
  const byController = controller?.command?.fullReverse === null;
  return warning({
    code: "vehicle.pushes-ahead-only",
    where: byController ? "controller" : "astern coefficients",
    found: byController
      ? "The controller turns its motor one way only, so the thruster pushes ahead only"
      : `Nothing is known of “${name}” turning astern, so the thruster is taken to push ahead only`,
    needed: byController ? "" : "its coefficients turning astern, or shares of those ahead as an estimate",
    mend: byController
      ? "Use one that can reverse if the vehicle must stop or turn by it"
      : "Run it backwards on the stand",
  });
}

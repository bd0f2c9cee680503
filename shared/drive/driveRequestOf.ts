import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { PropellerCurve } from "../model/drivePropeller.ts";
import type { DriveTrain } from "../model/driveTrain.ts";
import type { DriveGround, DriveRunning } from "../model/driveTrainPoint.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { SupplyState } from "../model/supplyState.ts";
import { COPPER_REFERENCE_TEMPERATURE } from "../quantity/copper.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { supplyOf } from "../supply/supplyOf.ts";
import { curveInUse } from "./asternCurve.ts";
import { waterLimits } from "./waterLimits.ts";

/** The question to the operating point, and what stands behind it. */
export interface PreparedDrive {
  readonly request: DriveRequest;
  readonly supply: SupplyState;
  /** What limits and estimates rest on. */
  readonly grounds: readonly DriveGround[];
  readonly warnings: readonly Warning[];
}

/**
 * The request to `operatingPoint` that a drive train and a throttle make: numbers, doubts with their correlations, heat
 * and limits of the parts, in the water around them.
 *
 * The motor gives its heat to the water. The doubt of the density is left out: of water whose temperature is known to 1 K
 * it is 0.02 %, and where nothing else is stated it would pose as the whole.
 *
 * Throws   InputProblem `drive.no-astern-coefficients` or `drive.one-way-controller`; OutOfDomain as `supplyOf`, and
 *          outside the range of the fluid.
 */
export function driveRequestOf(train: DriveTrain, running: DriveRunning): PreparedDrive {
  requireDiameter(train);
  const { curve, warnings } = curveInUse(train, running.direction, running.asternEstimate);
  const supply = supplyOf(train.supply);
  const inWater = waterLimits(train, curve, running.advanceSpeed);
  const { heat, grounds } = heatOf(train);
  const correlations = [...motorCorrelations(train.motor), ...curveCorrelation(curve)];
  return {
    request: {
      ...numbersOf(train, curve),
      supplyVoltage: supply.openCircuitVoltage,
      supplyResistance: supply.resistance,
      ...{ throttle: running.throttle, advanceSpeed: running.advanceSpeed, ...heat },
      limits: { ...partLimits(train), ...supply.limits, ...inWater.limits },
      ...{ uncertainties: uncertaintiesOf(train, curve, supply), correlations },
    },
    supply,
    grounds: [...supplyGrounds(train), ...grounds, ...inWater.grounds],
    warnings: [...supply.warnings, ...warnings, ...voltageAboveLimit(train, supply.openCircuitVoltage)],
  };
}

/** The limits in the water divide by it, before `requireDrive` looks at the whole. */
function requireDiameter({ propeller: { name, diameter } }: DriveTrain): void {
  if (diameter.value > 0) return;
  throw new OutOfDomain({
    code: "drive.not-physical",
    where: "propeller.diameter.value",
    found: `The diameter of “${name}” is ${diameter.value} m`,
    needed: "more than 0 m",
    mend: "State the diameter over the blade tips",
  });
}

function numbersOf(
  { motor, gear, controller, propeller, thrusters, hotelPower, water }: DriveTrain,
  curve: PropellerCurve,
) {
  return {
    speedConstant: motor.speedConstant,
    motorResistance: motor.resistance,
    noLoadCurrent: motor.noLoadCurrent,
    noLoadCurrentSlope: motor.noLoadCurrentSlope,
    ...(motor.wetTorque && {
      wetTorque: { coefficient: motor.wetTorque.coefficient, exponent: motor.wetTorque.exponent },
    }),
    gearRatio: gear?.ratio ?? 1,
    gearEfficiency: gear?.efficiency ?? 1,
    controllerResistance: controller?.resistance ?? 0,
    freewheelVoltage: controller?.freewheelVoltage ?? 0,
    switchingLoss: controller?.switchingLoss ?? 0,
    standbyPower: controller?.standbyPower ?? 0,
    ...{ hotelPower, thrusters, diameter: propeller.diameter.value, density: fluidProperties(water).density },
    thrustCoefficient: curve.thrustCoefficient.value,
    torqueCoefficient: curve.torqueCoefficient.value,
    ...(curve.openWater && { openWater: curve.openWater }),
  };
}

function heatOf({ motor, water }: DriveTrain): { heat: Pick<DriveRequest, "heat">; grounds: DriveGround[] } {
  const { thermalResistance, temperatureLimit, resistanceTemperature = COPPER_REFERENCE_TEMPERATURE } = motor;
  if (thermalResistance === undefined) {
    const limit = temperatureLimit === undefined ? "" : ", and its temperature limit can not be held against anything";
    const text = `The heat of the winding is left out, as its thermal resistance to the water is not stated: its resistance is taken as stated${limit}. Go by the maker's continuous rating.`;
    return { heat: {}, grounds: [{ about: "heat", text }] };
  }
  const heat = { surroundings: water.temperature, resistanceTemperature, thermalResistance };
  return { heat: { heat: { ...heat, ...(temperatureLimit !== undefined && { temperatureLimit }) } }, grounds: [] };
}

function partLimits({ motor, controller }: DriveTrain): DriveRequest["limits"] {
  return {
    ...(motor.currentLimit !== undefined && { motorCurrent: motor.currentLimit }),
    ...(motor.powerLimit !== undefined && { motorPower: motor.powerLimit }),
    ...(controller?.currentLimit !== undefined && { controllerCurrent: controller.currentLimit }),
  };
}

/** Those that are known and not 0, by the names of the request. */
function uncertaintiesOf(
  { motor, propeller, hotelPowerUncertainty }: DriveTrain,
  curve: PropellerCurve,
  supply: SupplyState,
): DriveRequest["uncertainties"] {
  const { speedConstant, resistance, noLoadCurrent, noLoadCurrentSlope, thermalResistance } = motor.uncertainties ?? {};
  const all: { readonly [input in keyof DriveRequest["uncertainties"]]: number | undefined } = {
    ...{ speedConstant, motorResistance: resistance, noLoadCurrent, noLoadCurrentSlope },
    ...(motor.thermalResistance !== undefined && { thermalResistance }),
    wetTorque: motor.wetTorque?.coefficientUncertainty,
    supplyVoltage: supply.uncertainties.openCircuitVoltage,
    supplyResistance: supply.uncertainties.resistance,
    hotelPower: hotelPowerUncertainty,
    diameter: propeller.diameter.standardUncertainty,
    thrustCoefficient: curve.thrustCoefficient.standardUncertainty,
    torqueCoefficient: curve.torqueCoefficient.standardUncertainty,
  };
  return Object.fromEntries(Object.entries(all).filter(([, u]) => u !== undefined && u > 0));
}

function motorCorrelations({ uncertainties }: Motor): DriveRequest["correlations"] {
  type Constant = NonNullable<NonNullable<Motor["uncertainties"]>["correlations"]>[number]["of"];
  const inRequest = (constant: Constant) => (constant === "resistance" ? "motorResistance" : constant);
  return (uncertainties?.correlations ?? []).map(({ of, and, coefficient }) => ({
    ...{ of: inRequest(of), and: inRequest(and), coefficient },
  }));
}

function curveCorrelation({ correlation }: PropellerCurve): DriveRequest["correlations"] {
  return correlation === 0 ? [] : [{ of: "thrustCoefficient", and: "torqueCoefficient", coefficient: correlation }];
}

function supplyGrounds({ supply }: DriveTrain): DriveGround[] {
  const { cells } = supply.pack;
  if (cells === undefined || supply.charge === undefined || cells.curve !== undefined) return [];
  const text =
    "The voltage follows the charge as that of a nickel-manganese-cobalt cell (Chen et al. 2020) does; another chemistry needs its own curve.";
  return [{ about: "supply", text }];
}

/** Code of the warnings of `voltageAboveLimit`. */
export const VOLTAGE_CODE = "drive.voltage-above-limit";

/** Parts that are rated for less than a supply voltage, V, as warnings. */
export function voltageAboveLimit({ motor, controller }: DriveTrain, voltage: number): Warning[] {
  const parts = [
    { part: "motor", limit: motor.voltageLimit },
    { part: "controller", limit: controller?.voltageLimit },
  ];
  return parts.flatMap(({ part, limit }) =>
    limit === undefined || voltage <= limit
      ? []
      : [
          warning({
            code: VOLTAGE_CODE,
            where: `${part}.voltageLimit`,
            found: `The supply has ${formatNumber(voltage)} V without load, and the ${part} is rated for ${formatNumber(limit)} V`,
            needed: `at most ${formatNumber(limit)} V`,
            mend: `Do not connect them: use fewer cells in series, or a ${part} of higher rating; go by the maker's data sheet`,
          }),
        ],
  );
}

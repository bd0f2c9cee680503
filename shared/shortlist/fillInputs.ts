import type { ControllerInputs, GearInputs, Inputs, MotorInputs, SupplyInputs } from "./inputs.ts";

// Written out field by field: copying by name costs ten times as much, and this runs for every combination.

/** The motor of a combination into the inputs of its operating point; the three below do the same of other parts. */
export function putMotor(inputs: Inputs, motor: MotorInputs): void {
  inputs.speedConstant = motor.speedConstant;
  inputs.motorResistance = motor.motorResistance;
  inputs.noLoadCurrent = motor.noLoadCurrent;
  inputs.noLoadCurrentSlope = motor.noLoadCurrentSlope;
  inputs.thermalResistance = motor.thermalResistance;
  inputs.resistanceTemperature = motor.resistanceTemperature;
  inputs.surroundings = motor.surroundings;
  inputs.wetTorque = motor.wetTorque;
  inputs.wetExponent = motor.wetExponent;
  inputs.motorCurrent = motor.motorCurrent;
  inputs.motorPower = motor.motorPower;
  inputs.windingTemperature = motor.windingTemperature;
  inputs.motorVoltage = motor.motorVoltage;
}

export function putController(inputs: Inputs, controller: ControllerInputs): void {
  inputs.controllerResistance = controller.controllerResistance;
  inputs.freewheelVoltage = controller.freewheelVoltage;
  inputs.switchingLoss = controller.switchingLoss;
  inputs.standbyPower = controller.standbyPower;
  inputs.controllerCurrent = controller.controllerCurrent;
  inputs.controllerVoltage = controller.controllerVoltage;
}

export function putSupply(inputs: Inputs, supply: SupplyInputs): void {
  inputs.supplyVoltage = supply.supplyVoltage;
  inputs.supplyResistance = supply.supplyResistance;
  inputs.supplyCurrent = supply.supplyCurrent;
  inputs.fuseCurrent = supply.fuseCurrent;
  inputs.tetherCurrent = supply.tetherCurrent;
  inputs.leastVoltage = supply.leastVoltage;
  inputs.charge = supply.charge;
}

export function putGear(inputs: Inputs, gear: GearInputs): void {
  inputs.gearRatio = gear.gearRatio;
  inputs.gearEfficiency = gear.gearEfficiency;
}

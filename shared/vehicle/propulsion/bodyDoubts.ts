import { type Doubt, plain } from "./doubt.ts";
import type { VehicleFacts, VehicleNumbers } from "./vehicleNumbers.ts";

/** Wake and thrust deduction. */
export function interactionDoubts({ vehicle: { interaction } }: VehicleFacts): Doubt[] {
  const mend =
    "Measure the pull of the whole vehicle on a line beside that of the thrusters alone, or its speed at a known throttle";
  return [
    {
      ...{ key: "wakeFraction", group: "wakeFraction", name: "wake fraction", mend, of: "propulsion" },
      ...{ standardUncertainty: interaction.wakeFraction.standardUncertainty, shift: plain("wakeFraction") },
    },
    {
      ...{ key: "thrustDeduction", group: "thrustDeduction", name: "thrust deduction", mend, of: "propulsion" },
      ...{ standardUncertainty: interaction.thrustDeduction.standardUncertainty, shift: plain("thrustDeduction") },
    },
  ];
}

/** Supply and hotel load, which count once for all thrusters. */
export function supplyDoubts({ supply: { uncertainties }, vehicle }: VehicleFacts): Doubt[] {
  const shift =
    (field: "openCircuitVoltage" | "resistance") =>
    (numbers: VehicleNumbers, by: number): VehicleNumbers => ({
      ...numbers,
      supply: { ...numbers.supply, [field]: numbers.supply[field] + by },
    });
  return [
    {
      ...{
        key: "supplyVoltage",
        group: "supplyVoltage",
        name: "open-circuit voltage of the supply",
        of: "propulsion",
      },
      ...{
        mend: "Read it with a meter, rested",
        standardUncertainty: uncertainties.openCircuitVoltage,
        shift: shift("openCircuitVoltage"),
      },
    },
    {
      ...{ key: "supplyResistance", group: "supplyResistance", name: "resistance of the supply", of: "propulsion" },
      ...{
        mend: "Measure the sag at a known current, cold",
        standardUncertainty: uncertainties.resistance,
        shift: shift("resistance"),
      },
    },
    {
      ...{
        key: "hotelPower",
        group: "hotelPower",
        name: "hotel load",
        of: "propulsion",
        mend: "Read current and voltage with the thrusters off",
      },
      ...{ standardUncertainty: vehicle.hotelPower.standardUncertainty, shift: plain("hotelPower") },
    },
  ];
}

/** Mass, weight in water and current. */
export function bodyDoubts({ vehicle: { mass, netBuoyancy, scenario } }: VehicleFacts): Doubt[] {
  return [
    {
      ...{ key: "mass", group: "mass", name: "mass", of: "mass", mend: "Weigh it, with the water it encloses" },
      ...{ standardUncertainty: mass.standardUncertainty, shift: plain("mass") },
    },
    {
      ...{
        key: "netBuoyancy",
        group: "netBuoyancy",
        name: "net buoyancy",
        of: "weight",
        mend: "Hang it on a scale in the water it works in",
      },
      ...{ standardUncertainty: netBuoyancy.standardUncertainty, shift: plain("netBuoyancy") },
    },
    {
      ...{ key: "payload", group: "payload", name: "payload", of: "weight", mend: "Weigh it in water" },
      ...{ standardUncertainty: scenario.payload.standardUncertainty, shift: plain("payload") },
    },
    {
      ...{
        key: "currentSpeed",
        group: "currentSpeed",
        name: "current",
        of: "current",
        mend: "Measure it at the depth, at that state of the tide",
      },
      ...{ standardUncertainty: scenario.currentSpeedUncertainty, shift: plain("currentSpeed") },
    },
  ];
}

/** Drag and weight of the tether, as factors. */
export function tetherDoubts({ vehicle: { tether, scenario } }: VehicleFacts): Doubt[] {
  if (tether === undefined || scenario.tetherLength === 0) return [];
  const { diameter, normalDragCoefficient, tangentialDragCoefficient, netWeightPerLength } =
    tether.cable.relativeUncertainties;
  const shift =
    (...fields: readonly (keyof VehicleNumbers["tether"])[]) =>
    (numbers: VehicleNumbers, by: number): VehicleNumbers => ({
      ...numbers,
      tether: { ...numbers.tether, ...Object.fromEntries(fields.map((field) => [field, numbers.tether[field] + by])) },
    });
  const common = {
    group: "tether",
    name: "drag and weight of the tether",
    of: "tether" as const,
    mend: "Tow a length of it, and see whether it strums",
  };
  return [
    { ...common, key: "tether.diameter", standardUncertainty: diameter, shift: shift("normal", "tangential") },
    { ...common, key: "tether.normal", standardUncertainty: normalDragCoefficient, shift: shift("normal") },
    { ...common, key: "tether.tangential", standardUncertainty: tangentialDragCoefficient, shift: shift("tangential") },
    { ...common, key: "tether.weight", standardUncertainty: netWeightPerLength, shift: shift("weight") },
  ];
}

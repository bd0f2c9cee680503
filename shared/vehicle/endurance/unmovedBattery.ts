import { CELSIUS_ZERO } from "../../quantity/constants.ts";
import { supplyOf } from "../../supply/supplyOf.ts";
import type { VehicleFacts } from "../propulsion/vehicleNumbers.ts";
import type { BatteryFacts } from "./battery.ts";

/** A source whose charge is not stated: it stays as it is, so that powers can be told and no times. */
export function unmovedBattery({ vehicle: { supply } }: Pick<VehicleFacts, "vehicle">): BatteryFacts {
  const { openCircuitVoltage, resistance } = supplyOf(supply);
  return {
    battery: {
      ...{ rated: 1, start: 1, floor: 1, floorIsCurve: false, resistance, knots: [] },
      openCircuitVoltage: () => openCircuitVoltage,
    },
    temperature: supply.temperature ?? CELSIUS_ZERO + 20,
    warnings: [],
  };
}

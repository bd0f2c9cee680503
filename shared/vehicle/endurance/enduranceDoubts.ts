import { packState } from "../../supply/packState.ts";
import type { Doubt, VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearOf, STEP } from "../propulsion/firstOrder.ts";
import { type PropulsionModel, withNumbers } from "../propulsion/propulsionModel.ts";
import { vehicleDoubts } from "../propulsion/vehicleDoubts.ts";
import type { VehicleFacts, VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { Battery } from "./battery.ts";
import { type Drawing, type Drawn, drawing } from "./plan.ts";
import type { TableOptions } from "./powerTable.ts";

const CHARGE = "packCharge";

/**
 * The doubts of a vehicle with those of its pack as it runs down: rated charge, and voltage and resistance at the
 * temperature and over the charges that are used.
 */
export function enduranceDoubts(facts: VehicleFacts, battery: Battery, temperature: number): VehicleDoubts {
  const { pack } = facts.vehicle.supply;
  const middle = packState(pack, { temperature, ...(pack.cells && { charge: 0.5 * (battery.start + battery.floor) }) });
  const others = facts.supply.parts.filter(({ name }) => name !== "pack").map((part) => part.resistanceUncertainty);
  const uncertainties = {
    openCircuitVoltage: middle.uncertainties.openCircuitVoltage,
    resistance: Math.hypot(middle.uncertainties.resistance, ...others),
  };
  const { list, correlations } = vehicleDoubts({ ...facts, supply: { ...facts.supply, uncertainties } });
  const charge: Doubt = {
    ...{ key: CHARGE, group: CHARGE, name: "charge of the pack", of: "propulsion" },
    ...{ mend: "Discharge the pack once at the current it works at, and count the charge" },
    ...{ standardUncertainty: pack.uncertainties?.charge ?? 0, shift: (numbers) => numbers },
  };
  // Last, so that the places which the correlations name stay.
  return { list: [...list, ...(charge.standardUncertainty > 0 ? [charge] : [])], correlations };
}

/** One voltage does for a derivative, as the value it is taken from has the same. */
const COARSE: TableOptions = { orders: [0] };

export interface Changing extends Drawn {
  readonly facts: VehicleFacts;
  readonly doubts: VehicleDoubts;
  /** Why no interval can be stated of what is done while the depth is held; null: one can. */
  readonly why: string | null;
}

/**
 * Results of a vehicle on its battery by first order; `of` gives them for a changed vehicle, or null where there are none.
 * The values are those given; the changes are taken between equally coarse tables.
 */
export function linearOfDrawing(
  changing: Changing,
  values: readonly number[],
  of: (on: Drawing) => readonly number[] | null,
): Linear[] {
  const { model, doubts, facts } = changing;
  const base = of(drawing(changing, COARSE));
  const rows = new Map<number, readonly number[] | null>();
  const rowOf = (numbers: VehicleNumbers, doubt: Doubt, place: number) => {
    if (doubt.of === "mass" || base === null) return null;
    const known = rows.get(place);
    const row = known ?? of(changedDrawing(changing, withNumbers(model, numbers), doubt));
    rows.set(place, row);
    return row;
  };
  return values.map((value, k) =>
    linearOf(doubts, facts.numbers, value, (numbers, doubt, place) => {
      const row = rowOf(numbers, doubt, place);
      return row === null ? null : value + (row[k]! - base![k]!);
    }),
  );
}

function changedDrawing(changing: Changing, model: PropulsionModel, doubt: Doubt): Drawing {
  return drawing({ ...changing, model, battery: changedBattery(changing, model.numbers, doubt) }, COARSE);
}

function changedBattery({ facts, battery }: Changing, { supply }: VehicleNumbers, doubt: Doubt): Battery {
  if (doubt.key === CHARGE) return { ...battery, rated: battery.rated + STEP * doubt.standardUncertainty };
  const rise = supply.openCircuitVoltage - facts.numbers.supply.openCircuitVoltage;
  return {
    ...battery,
    resistance: battery.resistance + supply.resistance - facts.numbers.supply.resistance,
    openCircuitVoltage: rise === 0 ? battery.openCircuitVoltage : (share) => battery.openCircuitVoltage(share) + rise,
  };
}

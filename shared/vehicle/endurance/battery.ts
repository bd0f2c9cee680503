import type { Mission } from "../../model/vehicle/mission.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { monotoneCubic } from "../../numeric/monotoneCubic.ts";
import { CELSIUS_ZERO } from "../../quantity/constants.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { NICKEL_MANGANESE_COBALT_CELL } from "../../supply/chargeCurve.data.ts";
import { packState } from "../../supply/packState.ts";
import { supplyOf } from "../../supply/supplyOf.ts";

/** A pack with its leads as a source that runs down. */
export interface Battery {
  /** Q, rated charge, C. */ readonly rated: number;
  /** Share of it at the start, and the share at which it is over. */ readonly start: number;
  readonly floor: number;
  /** The floor is the end of the curve of the cell, above the reserve that was asked for. */
  readonly floorIsCurve: boolean;
  /** R_s with leads and tether, Ω; the same at every charge. */ readonly resistance: number;
  /** U_oc, V, at a share of the charge. */ readonly openCircuitVoltage: (share: number) => number;
  /** Shares between floor and start where the curve of the cell changes its cubic, falling. */
  readonly knots: readonly number[];
}

export interface BatteryFacts {
  readonly battery: Battery;
  /** K. */ readonly temperature: number;
  readonly warnings: readonly Warning[];
}

/** What stands in a mission for the pack; without a mission the usual. */
export type PackUse = Pick<Mission, "reserve" | "startCharge" | "packTemperature">;

/** Temperature of a pack where none is stated, K. */
const USUAL_TEMPERATURE = CELSIUS_ZERO + 20;

/**
 * The source of a vehicle as it runs down; null where the rated charge of its pack is not stated.
 *
 *   U_oc(s) by the curve of the cell,   R_s = R_pack(T) + R_leads + R_tether
 *
 * Source   as `supplyOf` and `packState`.
 * Assumes  the resistance does not change with the charge; the rated charge can be drawn at any current; one temperature.
 */
export function batteryOf({ supply }: Pick<Vehicle, "supply">, use: PackUse): BatteryFacts | null {
  const { pack } = supply;
  if (pack.charge === undefined) return null;
  const temperature = use.packTemperature ?? supply.temperature ?? USUAL_TEMPERATURE;
  const { floor, start, ...ends } = endsOf(supply, use);
  const charges = pack.cells === undefined ? [] : curveCharges(pack);
  const curve = monotoneCubic(
    charges.length === 0 ? [0] : charges,
    charges.length === 0
      ? [pack.openCircuitVoltage]
      : charges.map((charge) => supplyOf({ ...supply, charge }).openCircuitVoltage),
  );
  const battery: Battery = {
    ...{ rated: pack.charge, start, floor, floorIsCurve: ends.floorIsCurve },
    ...{ resistance: resistanceAt(supply, temperature), openCircuitVoltage: curve },
    knots: charges.filter((charge) => charge > floor && charge < start).toReversed(),
  };
  return { battery, temperature, warnings: [...ends.warnings, ...constantVoltage(pack)] };
}

const curveCharges = ({ cells }: Vehicle["supply"]["pack"]) =>
  (cells?.curve ?? NICKEL_MANGANESE_COBALT_CELL).map(({ charge }) => charge).toSorted((a, b) => a - b);

/** The cold of a mission is that of the pack; leads and tether keep the temperature of the supply. */
function resistanceAt(supply: Vehicle["supply"], temperature: number): number {
  const whole = supplyOf(supply);
  const pack = whole.parts.find(({ name }) => name === "pack")!.resistance;
  return whole.resistance - pack + packState(supply.pack, { temperature }).resistance;
}

function endsOf({ pack, charge }: Vehicle["supply"], use: PackUse) {
  const asked = use.startCharge ?? charge ?? 1;
  const charges = pack.cells === undefined ? [0, 1] : curveCharges(pack);
  const [low, high] = [charges[0]!, charges.at(-1)!];
  const [floor, start] = [Math.max(use.reserve, low), Math.min(asked, high)];
  const warnings: Warning[] = [];
  if (floor > use.reserve || start < asked) {
    warnings.push(
      warning({
        code: "vehicle.endurance-curve-ends",
        where: "supply.pack.cells.curve",
        found: `The curve of the cell goes from ${percent(low)} to ${percent(high)} of the charge, and the mission from ${percent(asked)} to ${percent(use.reserve)}`,
        needed: "a curve that covers the charge that is used",
        mend: `Add points to it; what is told holds from ${percent(start)} to ${percent(floor)}`,
      }),
    );
  }
  return { floor, start, floorIsCurve: floor > use.reserve, warnings };
}

export const percent = (share: number) => `${formatNumber(100 * share)} %`;

function constantVoltage({ cells }: Vehicle["supply"]["pack"]): Warning[] {
  if (cells !== undefined) return [];
  return [
    warning({
      code: "vehicle.endurance-constant-voltage",
      where: "supply.pack.cells",
      found: "The cells of the pack are not stated, so that its voltage is taken as the same at every charge",
      needed: "cells in series and in parallel, and the charge that the stated voltage belongs to",
      mend: "State them with the pack: near empty the voltage falls, and with it thrust and time",
    }),
  ];
}

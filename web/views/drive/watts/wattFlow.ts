import type { OperatingPoint } from "../../../../shared/model/drive.ts";
import { formatQuantity } from "../../../../shared/quantity/format.ts";
import { WATT } from "../../bench/shownUnits.ts";

/** A share of the power that leaves the stream on its way from the pack to the water. */
export interface Watts {
  readonly name: string;
  readonly power: number;
  readonly share: number;
  readonly text: string;
  /** Lost as heat or swirl, wanted elsewhere on the vehicle, or the push itself. */
  readonly kind: "loss" | "load" | "push";
}

/** What the power of a supply is split over besides the thrusters. */
export interface AroundThrusters {
  readonly thrusters: number;
  /** Constant power of the rest of the vehicle, W. */
  readonly hotelPower: number;
  /** Resistances in series between the ideal source and the bus. */
  readonly supplyParts: readonly { readonly name: string; readonly resistance: number }[];
}

/** Where the power goes, all thrusters together, in the order of the way; the parts add up to the whole. */
export function wattFlow(point: OperatingPoint, around: AroundThrusters): Watts[] {
  const { losses, shaftPower, efficiencies } = point;
  const { thrusters: N, hotelPower } = around;
  const ideal = shaftPower * efficiencies.propeller;
  const controller = losses.controllerResistance + losses.partThrottle + losses.standby;
  const rows: readonly (readonly [string, number, Watts["kind"]])[] = [
    ...supplyLosses(losses.supplyResistance, around.supplyParts),
    ["Hotel load", hotelPower, "load"],
    [N > 1 ? "Controllers" : "Controller", N * controller, "loss"],
    ["Motor winding", N * losses.winding, "loss"],
    ["Motor core and friction", N * losses.friction, "loss"],
    ["Water in the motor", N * losses.wetRotor, "loss"],
    ["Gear", N * losses.gear, "loss"],
    ["Propeller: friction, swirl, tips", N * (shaftPower - ideal), "loss"],
    ["Pushing water, the least that this thrust can take", N * ideal, "push"],
  ];
  const total = rows.reduce((sum, [, power]) => sum + power, 0);
  return rows
    .filter(([, power]) => power > 0)
    .map(([name, power, kind]) => ({
      ...{ name, power, kind },
      share: total > 0 ? power / total : 0,
      text: formatQuantity(power, WATT, 3),
    }));
}

/** The same current runs through all of them, so the loss is shared as the resistances are. */
function supplyLosses(power: number, parts: AroundThrusters["supplyParts"]): [string, number, "loss"][] {
  const whole = parts.reduce((sum, { resistance }) => sum + resistance, 0);
  if (whole === 0) return [["Pack and leads", power, "loss"]];
  return parts.map(({ name, resistance }) => [capital(name), (power * resistance) / whole, "loss"]);
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

import type { ShortlistRequest } from "../../shared/model/shortlist.ts";
import { ShortlistRequest as Request } from "../../shared/model/shortlist.ts";

const spread = <T>(count: number, make: (share: number, place: number) => T): T[] =>
  Array.from({ length: count }, (_, place) => make(place / (count - 1), place));

/** A parts box of a million combinations: 20 motors, 10 controllers, 10 packs, 2 gears, 250 propellers. */
export function millionRequest(): ShortlistRequest {
  return Request.parse({
    requirement: {
      ...{ thrusters: 2, thrustAhead: 22, supplyCurrent: 32, windingTemperature: 353.15, tipSpeed: 15, diameter: 0.11 },
      ...{ hotelPower: 12, water: { kind: "fresh", temperature: 291.15 } },
      weights: { thrustPerPower: 2, mass: 1, price: 1 },
    },
    box: {
      motors: spread(20, (x, i) => ({
        ...{
          name: `Motor ${i}`,
          speedConstant: 25 + 60 * x,
          resistance: 0.25 - 0.18 * x,
          noLoadCurrent: 0.3 + 0.4 * x,
        },
        ...{ noLoadCurrentSlope: 0.0008, thermalResistance: 1.2 + 0.6 * x, temperatureLimit: 373.15 },
        ...{ currentLimit: 12 + 18 * x, mass: 0.1 + 0.1 * x, price: 20 + 20 * x },
      })),
      controllers: spread(10, (x, i) => ({
        ...{ name: `Controller ${i}`, resistance: 0.02 - 0.015 * x, currentLimit: 8 + 30 * x, standbyPower: 0.5 },
        ...{ mass: 0.02 + 0.03 * x, price: 10 + 20 * x },
      })),
      packs: spread(10, (x, i) => ({
        ...{
          name: `Pack ${i}`,
          openCircuitVoltage: 7.4 + 18 * x,
          resistance: 0.03 + 0.05 * x,
          currentLimit: 25 + 20 * x,
        },
        ...{ mass: 1, price: 50 },
      })),
      gears: [{ name: "Gear", ratio: 2.5, efficiency: 0.92, mass: 0.04, price: 18 }],
      propellers: spread(250, (x, i) => ({
        ...{ name: `Propeller ${i}`, diameter: { value: 0.06 + (0.06 * ((i * 7) % 250)) / 249 }, mass: 0.02, price: 4 },
        ahead: {
          thrustCoefficient: { value: 0.15 + 0.2 * x },
          torqueCoefficient: { value: 0.012 + 0.035 * x ** 1.5 },
        },
      })),
    },
  });
}

import { expect } from "vitest";
import {
  PartsBox,
  type PartsBoxInput,
  ShortlistRequest,
  ShortlistRequirement,
  type ShortlistRequirementInput,
} from "../../shared/model/shortlist.ts";
import type { Shortlist } from "../../shared/model/shortlistResult.ts";
import { combinationCount } from "../../shared/shortlist/combinations.ts";
import { finishedShortlist } from "../../shared/shortlist/finish.ts";
import { bestOf, rankStretch } from "../../shared/shortlist/rank.ts";
import { searchStretch } from "../../shared/shortlist/search.ts";
import { preparedRecords, scoringOf } from "../../shared/shortlist/shortlist.ts";
import { mergedTally } from "../../shared/shortlist/tally.ts";

/** Invented parts; solved by itself in tests/reference/shortlistSolved.py. */
export const BOX: PartsBoxInput = {
  motors: [
    {
      ...{ name: "Slow", speedConstant: 30, resistance: 0.18, noLoadCurrent: 0.35, noLoadCurrentSlope: 0.0008 },
      ...{ thermalResistance: 1.2, temperatureLimit: 373.15, currentLimit: 14, mass: 0.19, price: 32 },
    },
    {
      ...{ name: "Quick", speedConstant: 75, resistance: 0.09, noLoadCurrent: 0.6, noLoadCurrentSlope: 0.0005 },
      ...{ thermalResistance: 1.6, temperatureLimit: 373.15, currentLimit: 25, mass: 0.12, price: 24 },
    },
  ],
  controllers: [
    { name: "Small", resistance: 0.012, currentLimit: 12, standbyPower: 0.4, mass: 0.02, price: 11 },
    { name: "Large", resistance: 0.006, currentLimit: 30, standbyPower: 0.6, mass: 0.05, price: 26 },
  ],
  packs: [
    { name: "Four", openCircuitVoltage: 14.8, resistance: 0.05, currentLimit: 40, charge: 36000 },
    { name: "Three", openCircuitVoltage: 11.1, resistance: 0.12, currentLimit: 20, charge: 54000 },
  ],
  gears: [{ name: "Half", ratio: 2.5, efficiency: 0.92, mass: 0.04, price: 18 }],
  propellers: [
    propeller("Fine", 0.076, 0.21, 0.0195, { mass: 0.02, price: 4 }),
    propeller("Coarse", 0.09, 0.33, 0.047, { mass: 0.03, price: 5 }),
    propeller("Wide", 0.105, 0.25, 0.03, { mass: 0.04, price: 6 }),
  ],
};

type PropellerInput = NonNullable<PartsBoxInput["propellers"]>[number];

export function propeller(
  name: string,
  diameter: number,
  thrust: number,
  torque: number,
  more: Partial<PropellerInput> = {},
): PropellerInput {
  const ahead = { thrustCoefficient: { value: thrust }, torqueCoefficient: { value: torque } };
  return { name, diameter: { value: diameter }, ahead, ...more };
}

export const REQUIREMENT: ShortlistRequirementInput = {
  thrusters: 2,
  thrustAhead: 22,
  supplyCurrent: 32,
  windingTemperature: 353.15,
  tipSpeed: 15,
  diameter: 0.1,
  mass: 0.3,
  price: 75,
  endurance: { meanThrust: 7, duration: 3600, reserve: 0.2 },
  water: { kind: "fresh", temperature: 291.15 },
  hotelPower: 12,
};

/** What a generator returns, the shares that it yields checked. */
function ended<T>(work: Generator<number, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    expect(step.value).toBeGreaterThanOrEqual(0);
    expect(step.value).toBeLessThanOrEqual(1);
  }
}

/** The whole search as one stretch, as the threads of the server do it in many. */
export function shortlist(request: ShortlistRequest): Shortlist {
  const { requirement, rows, misses } = request;
  const records = preparedRecords(request);
  const whole = { start: 0, end: combinationCount(records.sizes), misses };
  const tally = ended(searchStretch(requirement, records, whole));
  const ranked = ended(rankStretch(requirement, records, tally, scoringOf(requirement, tally), rows));
  return finishedShortlist(request, records, mergedTally([tally], misses), bestOf([ranked], rows));
}

/** A shortlist of the box above with changes, long enough to tell of every combination. */
export function listed(
  requirement: Partial<ShortlistRequirementInput> = {},
  box: Partial<PartsBoxInput> = {},
  more: Partial<ShortlistRequest> = {},
): Shortlist {
  const request = ShortlistRequest.parse({
    requirement: ShortlistRequirement.parse({ ...REQUIREMENT, ...requirement }),
    box: PartsBox.parse({ ...BOX, ...box }),
    rows: 500,
    misses: 200,
    ...more,
  });
  return shortlist(request);
}

import type { DriveTrain } from "../model/driveTrain.ts";
import type { CombinationName, DemandMargin, DutyPoint } from "../model/shortlistResult.ts";
import type { Candidate } from "./candidate.ts";
import { placesOf } from "./combinations.ts";
import { Confidence, probabilityKept } from "./confidence.ts";
import { type AskedDuty, AT_DUTY, type DemandSlot, DUTY_DEMANDS } from "./demandSlots.ts";
import type { PartRecords } from "./partRecords.ts";
import { drive } from "./recordMaking.ts";
import { asSentence, marginInWords } from "./words.ts";

/** Names of the parts of a combination. */
export function combinationName(records: PartRecords, number: number): CombinationName {
  const places = placesOf(number, records.sizes);
  const controller = records.controllers[places.controller]!;
  const gear = records.gears[places.gear]!;
  return {
    number,
    motor: records.motors[places.motor]!.name,
    controller: controller.document === undefined ? null : controller.name,
    supply: records.supplies[places.supply]!.name,
    gear: gear.document === undefined ? null : gear.name,
    propeller: records.propellers[places.propeller]!.name,
  };
}

/** The drive that a combination is. */
export function trainOf({ records, requirement, places }: Candidate): DriveTrain {
  const controller = records.controllers[places.controller]!.document;
  const gear = records.gears[places.gear]!.document;
  return drive(requirement, {
    motor: records.motors[places.motor]!.document,
    supply: records.supplies[places.supply]!.document,
    propeller: records.propellers[places.propeller]!.document,
    ...(controller && { controller }),
    ...(gear && { gear }),
  });
}

/** A demand of the combination that `candidate` holds, with its slot. */
export interface HeldSlot {
  readonly slot: number;
  readonly margin: DemandMargin;
}

/** Every demand that is asked, kept or not, with its doubt. Leaves the candidate as it takes it again. */
export function demandsOf(candidate: Candidate): HeldSlot[] {
  const { judge, number } = candidate;
  candidate.take(number);
  const { slots } = judge.table;
  const held = slots.map((_, slot) => ({
    share: judge.share[slot]!,
    allowed: judge.allowed[slot]!,
    actual: judge.actual[slot]!,
  }));
  const confidence = new Confidence(candidate);
  const isDoubtful = candidate.doubts().inputs.length > 0;
  confidence.leastStandardDistance();
  candidate.take(number);
  return slots.flatMap((demand, slot) => {
    const { share } = held[slot]!;
    if (share === Infinity) return [];
    const doubt = isDoubtful ? confidence.doubt[slot]! : null;
    return [{ slot, margin: marginOf(demand, held[slot]!, doubt, candidate.requirement.confidence) }];
  });
}

interface Held {
  readonly share: number;
  readonly allowed: number;
  readonly actual: number;
}

function marginOf(slot: DemandSlot, held: Held, doubt: number | null, confidence: number | undefined): DemandMargin {
  const known = Number.isFinite(held.share);
  const [share, allowed, actual] = [
    known ? held.share : null,
    Number.isFinite(held.allowed) && held.allowed > 0 ? held.allowed : null,
    Number.isFinite(held.actual) && known ? held.actual : null,
  ];
  const margin = allowed === null || actual === null ? null : (slot.bound === "at most" ? 1 : -1) * (allowed - actual);
  // The doubt is that of the share; the margin is the share times one scale.
  const scale = margin !== null && share !== null && share !== 0 ? Math.abs(margin / share) : allowed;
  const probability = doubt === null || share === null ? null : probabilityKept(share, doubt);
  const isLikely = probability === null || confidence === undefined || probability >= confidence;
  return {
    ...{ duty: slot.duty, demand: slot.demand, unit: slot.unit, allowed, actual, margin, share, probability },
    standardUncertainty: doubt === null || scale === null || share === null ? null : doubt * scale,
    kept: held.share >= 0 && isLikely,
    sentence: asSentence(marginInWords(slot, { allowed, actual, share })),
  };
}

/** What the combination does in each state that is asked for, and the most it can do there. */
export function pointsOf(candidate: Candidate): DutyPoint[] {
  candidate.take(candidate.number);
  return pointsNow(candidate);
}

/** The same with the inputs as they stand, changed or not. */
export function pointsNow(candidate: Candidate): DutyPoint[] {
  const { judge, inputs, requirement } = candidate;
  const points = judge.table.duties.flatMap(({ duty, thrust, advanceSpeed }, d) => {
    const curve = candidate.curves[d] ?? null;
    const demanded = candidate.rates[d]!;
    if (curve === null || demanded < 0) return [];
    const greatestRate = candidate.greatestRate(d);
    const rate = thrust > 0 ? demanded : greatestRate;
    const greatest = Number.isNaN(greatestRate) ? null : judge.solver.thrustAt(greatestRate);
    const at = pointAt(candidate, rate, thrust > 0 ? thrust : (greatest ?? 0));
    if (at === null) return [];
    const greatestThrottle = greatest === null ? null : judge.solver.runAt(greatestRate).throttle;
    const governing = greatest === null ? "none" : governingAt(candidate, d, greatestRate);
    return [{ duty, advanceSpeed, ...at, greatestThrust: greatest, greatestThrottle, governing }];
  });
  if (requirement.endurance === undefined) return points;
  const { meanThrust } = requirement.endurance;
  candidate.runAtMeanThrust();
  const mean = pointAt(candidate, judge.solver.rateForThrust(meanThrust), meanThrust);
  const open = { greatestThrust: null, greatestThrottle: null, governing: "none" };
  return mean === null ? points : [...points, { duty: "meanThrust", advanceSpeed: 0, ...mean, ...open }];

  function pointAt(_: Candidate, rotationRate: number, thrust: number) {
    const running = judge.solver.runAt(rotationRate);
    if (!running.held || !(rotationRate >= 0)) return null;
    const { throttle, motorCurrent, windingTemperature, supplyCurrent, supplyVoltage, electricalPower } = running;
    return {
      ...{ thrust, rotationRate, throttle, motorCurrent, supplyCurrent, supplyVoltage, electricalPower },
      windingTemperature: Number.isFinite(windingTemperature) ? windingTemperature : null,
      thrustPerPower: electricalPower > 0 ? thrust / electricalPower : 0,
      tipSpeed: Math.PI * rotationRate * inputs.diameter,
    };
  }
}

/** Thrust asked in a state of running, and the greatest there is within all limits, N; null where there is none. */
export interface Reach {
  readonly duty: AskedDuty["duty"];
  readonly demanded: number;
  readonly greatest: number | null;
}

/** How far the combination reaches in each state, also where the supply does not hold the demanded thrust. */
export function reachesOf(candidate: Candidate): Reach[] {
  const { judge, number } = candidate;
  candidate.take(number);
  return judge.table.duties.map(({ duty, thrust }, d) => {
    const rate = candidate.greatestRate(d);
    return { duty, demanded: thrust, greatest: Number.isNaN(rate) ? null : judge.solver.thrustAt(rate) };
  });
}

/** The demand with the least left at a rate: what bounds the thrust there. */
function governingAt(candidate: Candidate, d: number, rate: number): string {
  const { judge, inputs } = candidate;
  judge.judgeDuty(d, inputs, candidate.curves[d]!, rate);
  const base = d * DUTY_DEMANDS.length;
  let least = AT_DUTY.voltage as number;
  for (let place = 1; place < DUTY_DEMANDS.length; place++) {
    if (judge.share[base + place]! < judge.share[base + least]!) least = place;
  }
  return DUTY_DEMANDS[least]!.demand;
}

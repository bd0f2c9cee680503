import type { ShortlistRequirement } from "../model/shortlist.ts";
import { Best } from "./best.ts";
import { Candidate } from "./candidate.ts";
import { Confidence, LIKELY_95 } from "./confidence.ts";
import { ParetoFront } from "./front.ts";
import type { PartRecords } from "./partRecords.ts";
import {
  EASINGS,
  emptyRanges,
  FRONT_PAIRS,
  type Miss,
  partBases,
  partCount,
  QUANTITY_SENSE,
  type Tally,
  widen,
} from "./tally.ts";
import { valuesOf } from "./values.ts";

/** Combinations between two reports of progress. */
const STEP = 20_000;

export interface Stretch {
  /** Number of the first combination, and that after the last. */ readonly start: number;
  readonly end: number;
  /** Nearest misses to keep. */ readonly misses: number;
}

/**
 * Judges every combination of a stretch and tells what is known of them. Nothing is passed over: a bound that would rule
 * combinations out without looking would also leave them out of the counts of everything else they fail by. What depends
 * on the propeller alone (its rate at the demanded thrust, its limits in the water) is worked out once, so that a
 * combination costs some hundred operations.
 *
 * Yields   the share that is done.
 */
export function* searchStretch(
  requirement: ShortlistRequirement,
  records: PartRecords,
  stretch: Stretch,
): Generator<number, Tally> {
  const searching = new Searching(requirement, records, stretch);
  for (let number = stretch.start; number < stretch.end; ) {
    const until = Math.min(stretch.end, number + STEP);
    for (; number < until; number++) searching.look(number);
    yield (number - stretch.start) / (stretch.end - stretch.start);
  }
  return searching.told();
}

class Searching {
  private readonly tally: Tally;
  private readonly candidate: Candidate;
  private readonly confidence: Confidence;
  private readonly fronts = FRONT_PAIRS.map(([x, y]) => new ParetoFront(QUANTITY_SENSE[x], QUANTITY_SENSE[y]));
  private readonly nearest: Best<Miss>;
  private readonly failed: Int32Array;
  private readonly bases: ReturnType<typeof partBases>;
  private readonly slots: number;

  constructor(
    private readonly requirement: ShortlistRequirement,
    records: PartRecords,
    { start, end, misses }: Stretch,
  ) {
    this.candidate = new Candidate(records, requirement);
    this.confidence = new Confidence(this.candidate);
    this.nearest = new Best(misses);
    this.slots = records.table.slots.length;
    this.failed = new Int32Array(this.slots);
    this.bases = partBases(records.sizes);
    this.tally = emptyTally(start, end, this.slots, partCount(records.sizes));
  }

  look(number: number): void {
    const { candidate, failed, slots } = this;
    candidate.take(number);
    const { share } = candidate.judge;
    let count = 0;
    let worst = 0;
    for (let slot = 0; slot < slots; slot++) {
      const left = share[slot]!;
      if (left >= 0) continue;
      failed[count++] = slot;
      if (left < worst) worst = left;
    }
    if (count === 0) this.meets(number);
    else this.fails(number, count, -worst);
  }

  private fails(number: number, count: number, shortfall: number): void {
    const { tally, failed } = this;
    const { places } = this.candidate;
    const { motor, controller, supply, gear, propeller } = this.bases;
    for (let i = 0; i < count; i++) {
      const slot = failed[i]!;
      tally.failing[slot]!++;
      this.addTo(motor + places.motor, slot);
      this.addTo(controller + places.controller, slot);
      this.addTo(supply + places.supply, slot);
      this.addTo(gear + places.gear, slot);
      this.addTo(propeller + places.propeller, slot);
    }
    if (count === 1) this.failsAlone(number, failed[0]!, shortfall);
    if (this.nearest.wants(shortfall, number)) this.nearest.add(shortfall, number, { number, shortfall });
  }

  private addTo(part: number, slot: number): void {
    this.tally.partFailing[part * this.slots + slot]!++;
  }

  private failsAlone(number: number, slot: number, shortfall: number): void {
    const { tally } = this;
    tally.alone[slot]!++;
    for (let k = 0; k < EASINGS.length; k++) {
      if (shortfall <= EASINGS[k]!) tally.eased[slot * EASINGS.length + k]!++;
    }
    if (shortfall >= tally.leastShare[slot]!) return;
    tally.leastShare[slot] = shortfall;
    tally.leastNumber[slot] = number;
  }

  private meets(number: number): void {
    const { tally, candidate, confidence, requirement } = this;
    tally.meetingByBestEstimate++;
    // Values first: looking for the doubt changes the candidate's inputs on the way.
    const values = valuesOf(candidate);
    const level = confidence.leastStandardDistance();
    if (level >= LIKELY_95) tally.meetingAt95++;
    if (requirement.confidence !== undefined && level < confidence.wanted) {
      for (const slot of confidence.slotsBelow(confidence.wanted)) tally.uncertain[slot]!++;
      return;
    }
    tally.meeting++;
    tally.meets[(number - tally.start) >> 3]! |= 1 << ((number - tally.start) & 7);
    const { places } = candidate;
    const { motor, controller, supply, gear, propeller } = this.bases;
    tally.partMeeting[motor + places.motor]!++;
    tally.partMeeting[controller + places.controller]!++;
    tally.partMeeting[supply + places.supply]!++;
    tally.partMeeting[gear + places.gear]!++;
    tally.partMeeting[propeller + places.propeller]!++;
    widen(tally.ranges.thrustPerPower, values.thrustPerPower);
    widen(tally.ranges.mass, values.mass);
    widen(tally.ranges.price, values.price);
    widen(tally.ranges.thrustMargin, values.thrustMargin);
    widen(tally.ranges.tipSpeed, values.tipSpeed);
    widen(tally.ranges.endurance, values.endurance);
    for (let pair = 0; pair < FRONT_PAIRS.length; pair++) {
      const [x, y] = FRONT_PAIRS[pair]!;
      this.fronts[pair]!.add(number, values[x], values[y]);
    }
  }

  told(): Tally {
    const fronts = this.fronts.map(({ points, of }) => ({ points, of }));
    return { ...this.tally, fronts, misses: this.nearest.items };
  }
}

function emptyTally(start: number, end: number, slots: number, parts: number): Tally {
  return {
    ...{ start, end, meetingByBestEstimate: 0, meeting: 0, meetingAt95: 0 },
    failing: new Float64Array(slots),
    alone: new Float64Array(slots),
    uncertain: new Float64Array(slots),
    eased: new Float64Array(slots * EASINGS.length),
    leastShare: new Float64Array(slots).fill(Infinity),
    leastNumber: new Float64Array(slots).fill(-1),
    partMeeting: new Float64Array(parts),
    partFailing: new Float64Array(parts * slots),
    meets: new Uint8Array(Math.ceil((end - start) / 8)),
    ranges: emptyRanges(),
    fronts: [],
    misses: [],
  };
}

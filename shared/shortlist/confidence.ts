import quantile from "@stdlib/stats-base-dists-t-quantile";
import { normalProbability } from "../numeric/normalProbability.ts";
import type { Candidate } from "./candidate.ts";
import { AT_PARTS } from "./demandSlots.ts";
import type { DoubtfulInput, InputCorrelation, InputDoubt } from "./inputs.ts";

/** Standard deviations from 0 of the one-sided 95 % point of the normal distribution; R 4.2.2 `qnorm(.95)`. */
export const LIKELY_95 = 1.6448536269514722;

/** Degrees of freedom from which on Student's distribution is the normal one to 1e-8. */
const AS_NORMAL = 1e8;

/** Step of the differences, of the size of the input: truncation (h) and rounding (1e-15/h) are both below 1e-7. */
const RELATIVE_STEP = 1e-6;

/**
 * How certain a combination keeps its demands: standard uncertainty of the share that is left of each, by the law of
 * propagation with forward differences of the solved combination.
 *
 *   u² = Σ (c_i u_i)² + 2 Σ r_ij c_i c_j u_i u_j,   P(kept) = Φ(share/u)
 *
 * Source   JCGM 100:2008, 5.1.2 and 5.2.2.
 * Assumes  doubts small enough for first order, normal margins. Diameter, voltage, mass and price are taken as exact
 *          where they are demands: a propeller of just the greatest diameter is meant to fit. The rates at which cavitation and air
 *          drawn in begin stay those of the best estimate.
 * Error    a draw (Monte Carlo) shows what first order misses.
 */
export class Confidence {
  /** Standard deviations that the requirement asks for. */
  readonly wanted: number;
  /** Standard uncertainty of the share of each slot. */
  readonly doubt: Float64Array;
  private readonly left: Float64Array;
  private readonly effects = new Map<DoubtfulInput, Float64Array>();
  private readonly slots: number;
  private readonly partsBase: number;
  private readonly endurance: number;

  constructor(private readonly candidate: Candidate) {
    const size = candidate.judge.share.length;
    this.doubt = new Float64Array(size);
    this.left = new Float64Array(size);
    this.slots = size;
    this.partsBase = candidate.judge.table.partsBase;
    this.endurance = this.partsBase + AT_PARTS.endurance;
    const { confidence } = candidate.requirement;
    this.wanted = confidence === undefined ? 0 : quantile(confidence, AS_NORMAL);
  }

  /**
   * Fills `doubt` for the combination that the candidate holds and has judged, and gives the least share over its doubt;
   * Infinity where nothing is doubtful. The candidate must be taken again afterwards.
   */
  leastStandardDistance(): number {
    const { candidate, doubt, left } = this;
    const { inputs, correlations } = candidate.doubts();
    left.set(candidate.judge.share);
    doubt.fill(0);
    if (inputs.length === 0) return Infinity;
    this.fillEffects(inputs);
    for (const { input } of inputs) {
      const effect = this.effects.get(input)!;
      for (let slot = 0; slot < this.slots; slot++) doubt[slot]! += effect[slot]! ** 2;
    }
    for (const correlation of correlations) this.addCorrelation(correlation);
    let least = Infinity;
    for (let slot = 0; slot < this.slots; slot++) {
      // Correlations that can not hold together would leave less than nothing.
      doubt[slot] = Math.sqrt(Math.max(0, doubt[slot]!));
      if (Number.isFinite(left[slot]!) && doubt[slot]! > 0) least = Math.min(least, left[slot]! / doubt[slot]!);
    }
    return least;
  }

  /** Slots that are kept by fewer standard deviations. */
  slotsBelow(distance: number): number[] {
    const slots: number[] = [];
    for (let slot = 0; slot < this.slots; slot++) {
      if (Number.isFinite(this.left[slot]!) && this.left[slot]! < distance * this.doubt[slot]!) slots.push(slot);
    }
    return slots;
  }

  /** Probability that the demand of a slot is kept. */
  probability(slot: number): number {
    return probabilityKept(this.left[slot]!, this.doubt[slot]!);
  }

  /** Effect of one standard uncertainty of each input on the share of each slot. */
  private fillEffects(inputs: readonly InputDoubt[]): void {
    const { candidate, left } = this;
    candidate.ownCurves();
    for (const effect of this.effects.values()) effect.fill(0);
    for (const { input, standardUncertainty } of inputs) {
      let effect = this.effects.get(input);
      if (effect === undefined) {
        effect = new Float64Array(this.slots);
        this.effects.set(input, effect);
      }
      const value = candidate.valueOf(input);
      const step = RELATIVE_STEP * (value === 0 ? standardUncertainty : value);
      candidate.setValue(input, value + step);
      candidate.judgeAgain();
      const { share } = candidate.judge;
      for (let slot = 0; slot < this.slots; slot++) {
        const change = share[slot]! - left[slot]!;
        const counts = (slot < this.partsBase || slot === this.endurance) && Number.isFinite(change);
        effect[slot] = counts ? (change / step) * standardUncertainty : 0;
      }
      candidate.setValue(input, value);
    }
  }

  private addCorrelation({ of, and, coefficient }: InputCorrelation): void {
    const [a, b] = [this.effects.get(of), this.effects.get(and)];
    if (a === undefined || b === undefined || of === and) return;
    for (let slot = 0; slot < this.slots; slot++) this.doubt[slot]! += 2 * coefficient * a[slot]! * b[slot]!;
  }
}

/** Φ(share/u): the probability that a share that is left by the best estimate is not negative in truth. */
export function probabilityKept(share: number, doubt: number): number {
  if (!Number.isFinite(share) || doubt === 0) return share >= 0 ? 1 : 0;
  return normalProbability(share / doubt);
}

import { AT_DUTY, AT_PARTS, type DemandTable, DUTY_DEMANDS } from "./demandSlots.ts";
import type { CurveInputs, Inputs } from "./inputs.ts";
import { NO_THRUST, NOT_KNOWN, RateSolver, type Running } from "./rateSolver.ts";

/** Bounds that the requirement sets besides the ratings of the parts; Infinity where not asked. */
export interface AskedBounds {
  readonly supplyCurrent: number;
  readonly windingTemperature: number;
  readonly tipSpeed: number;
}

/** Share by which a supply is counted short that would hold at full throttle but not on the way there. */
const COLLAPSED = 1e-6;

/**
 * Holds one combination against the demands of a requirement. Every demand has a slot with what is allowed, what the
 * combination comes to, and the share of the allowed that is left: negative where it is missed, Infinity where nothing
 * is asked, -Infinity where it can not be judged or no thrust comes.
 *
 * In each state of running the rotation rate follows from the thrust that is asked, and everything else from the rate
 * without a search. As current, power, temperature and voltage rise with the rate, a limit that is kept at the demanded
 * thrust is the same as a greatest thrust within that limit that is no less than demanded.
 */
export class Judge {
  readonly share: Float64Array;
  readonly allowed: Float64Array;
  readonly actual: Float64Array;
  readonly solver = new RateSolver();

  constructor(
    readonly table: DemandTable,
    private readonly bounds: AskedBounds,
  ) {
    const size = table.slots.length;
    this.share = new Float64Array(size).fill(Infinity);
    this.allowed = new Float64Array(size);
    this.actual = new Float64Array(size);
  }

  /** Fills the slots of duty `d` with the propeller at the rate that gives the demanded thrust (rev/s, or why none). */
  judgeDuty(d: number, inputs: Inputs, curve: CurveInputs | null, rate: number): void {
    const base = d * DUTY_DEMANDS.length;
    this.share.fill(Infinity, base, base + DUTY_DEMANDS.length);
    if (curve === null || rate === NOT_KNOWN) {
      this.share[base + AT_DUTY["not known"]] = -Infinity;
      return;
    }
    if (rate === NO_THRUST) {
      this.share[base + AT_DUTY["no thrust"]] = -Infinity;
      return;
    }
    this.solver.fill(inputs, curve, curve.advance);
    this.holdRunning(base, inputs, curve, rate);
  }

  private holdRunning(base: number, inputs: Inputs, curve: CurveInputs, rate: number): void {
    const { bounds } = this;
    const running = this.solver.runAt(rate);
    const T = running.windingTemperature;
    this.holdVoltage(base + AT_DUTY.voltage, running, inputs.supplyVoltage);
    this.atMost(base + AT_DUTY["motor current"], inputs.motorCurrent, running.motorCurrent);
    this.atMost(base + AT_DUTY["motor power"], inputs.motorPower, running.motorPower);
    this.coolerThan(base + AT_DUTY["winding temperature"], inputs.windingTemperature, T, inputs.surroundings);
    this.atMost(base + AT_DUTY["controller current"], inputs.controllerCurrent, running.motorCurrent);
    this.atMost(base + AT_DUTY["supply current"], inputs.supplyCurrent, running.supplyCurrent);
    this.atMost(base + AT_DUTY["fuse current"], inputs.fuseCurrent, running.supplyCurrent);
    this.atMost(base + AT_DUTY["tether current"], inputs.tetherCurrent, running.supplyCurrent);
    this.atLeast(base + AT_DUTY["least supply voltage"], inputs.leastVoltage, running.supplyVoltage);
    this.atMost(base + AT_DUTY.cavitation, curve.cavitation, rate);
    this.atMost(base + AT_DUTY.ventilation, curve.ventilation, rate);
    this.atMost(base + AT_DUTY["greatest current"], bounds.supplyCurrent, running.supplyCurrent);
    this.coolerThan(base + AT_DUTY["greatest temperature"], bounds.windingTemperature, T, inputs.surroundings);
    this.atMost(base + AT_DUTY["tip speed"], bounds.tipSpeed, Math.PI * rate * inputs.diameter);
  }

  /** Fills a slot of the parts by themselves; `allowed` is Infinity (or 0 with atLeast) where nothing is asked. */
  holdPart(demand: keyof typeof AT_PARTS, bound: "at most" | "at least", allowed: number, actual: number): void {
    const slot = this.table.partsBase + AT_PARTS[demand];
    if (bound === "at most") this.atMost(slot, allowed, actual);
    else this.atLeast(slot, allowed, actual);
  }

  /** Says of the parts by themselves that something asked is not stated, or that all of it is. */
  partsKnown(known: boolean): void {
    this.share[this.table.partsBase + AT_PARTS["not known"]] = known ? Infinity : -Infinity;
  }

  private atMost(slot: number, allowed: number, actual: number): void {
    this.allowed[slot] = allowed;
    this.actual[slot] = actual;
    // A current of a supply that does not hold is no number: its voltage is what is missed then.
    this.share[slot] = allowed === Infinity || Number.isNaN(actual) ? Infinity : (allowed - actual) / allowed;
  }

  private atLeast(slot: number, allowed: number, actual: number): void {
    this.allowed[slot] = allowed;
    this.actual[slot] = actual;
    this.share[slot] = allowed === 0 || Number.isNaN(actual) ? Infinity : (actual - allowed) / allowed;
  }

  /** A supply that does not hold at part throttle either is short even where full throttle would do. */
  private holdVoltage(slot: number, { neededVoltage, held }: Running, supplyVoltage: number): void {
    const needed = held ? neededVoltage : Math.max(neededVoltage, supplyVoltage * (1 + COLLAPSED));
    this.allowed[slot] = needed;
    this.actual[slot] = supplyVoltage;
    if (needed === Infinity) this.share[slot] = -Infinity;
    else this.share[slot] = needed === 0 ? Infinity : (supplyVoltage - needed) / needed;
  }

  /** A temperature counts from that of the water: what is allowed is a rise. */
  private coolerThan(slot: number, allowed: number, actual: number, surroundings: number): void {
    this.allowed[slot] = allowed;
    this.actual[slot] = actual;
    if (allowed === Infinity) this.share[slot] = Infinity;
    else if (allowed <= surroundings || !Number.isFinite(actual)) this.share[slot] = -Infinity;
    else this.share[slot] = (allowed - actual) / (allowed - surroundings);
  }
}

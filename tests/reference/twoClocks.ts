import { tableOf } from "../unit/benchTable.ts";

/** Edges of the command steps, s, and the rotation rate from each on, rpm: uneven, so that only one lag fits. */
const EDGES = [8, 21, 27, 44, 50, 69, 75, 88, 97];
const RATES = [1200, 0, 1700, 0, 2400, 0, 2000, 1400, 0];

/** Rotation rate at run time t, rpm; each step as a logistic curve of 0.3 s. */
export function rateAt(t: number): number {
  return EDGES.reduce((sum, edge, i) => {
    const change = RATES[i]! - (RATES[i - 1] ?? 0);
    return sum + change / (1 + Math.exp(-(t - edge) / 0.3));
  }, 0);
}

export interface SecondClock {
  /** Reading of the second clock at run time 0, s. */
  readonly at: number;
  /** How much faster the first clock runs, 1. */
  readonly rate?: number;
}

/** 20 readings a second for 120 s on a clock that starts at 0. */
export function thrustTable() {
  const time = Array.from({ length: 2400 }, (_, i) => i / 20);
  const thrust = time.map((t) => 37 + 1.7e-4 * rateAt(t) ** 2 + 2 * Math.sin(5.1 * t + 0.5) + Math.cos(13.7 * t));
  return tableOf({ time, thrust });
}

/** 8 readings a second, from 1.03 s to 118.9 s of run time, on a clock of its own. */
export function electricalTable({ at, rate = 0 }: SecondClock) {
  const run = Array.from({ length: 944 }, (_, i) => 1.03 + i / 8);
  const middle = (run[0]! + run.at(-1)!) / 2;
  const clock = run.map((t) => at + middle + (t - middle) / (1 + rate));
  const current = run.map((t) => 0.4 + 2.5e-6 * rateAt(t) ** 2 + 0.05 * Math.sin(3.3 * t));
  return tableOf({
    clock,
    current,
    voltage: run.map((t) => 15.2 - 0.035 * (0.4 + 2.5e-6 * rateAt(t) ** 2)),
    speed: run.map((t) => rateAt(t) + 0 * t),
  });
}

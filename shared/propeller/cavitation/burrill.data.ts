import type { BurrillLineName } from "../../model/cavitation.ts";

/**
 * Limit lines of the loading, τ_c = a (σ - s)^b. Their digits are from memory, and known to 10 % in τ_c; the part of
 * the back that cavitates is a reading of the chart and not printed with the lines.
 *
 * Source   light, merchant, fast: Molland, Turnock & Hudson, Ship Resistance and Propulsion, after Burrill & Emerson,
 *          Transactions NECIES 79 (1963); segmental, breakdown: Blount & Fox, Design considerations for propellers in a
 *          cavitating environment, Marine Technology 15 (1978) 144.
 */
export interface BurrillLine {
  readonly line: BurrillLineName;
  readonly a: number;
  readonly s: number;
  readonly b: number;
  readonly meaning: string;
}

export const BURRILL_LINES: readonly BurrillLine[] = [
  { line: "light", a: 0.21, s: 0.04, b: 0.46, meaning: "more than about 2.5 % of the back cavitates" },
  { line: "merchant", a: 0.28, s: 0.03, b: 0.57, meaning: "more than about 5 % of the back cavitates" },
  { line: "fast", a: 0.43, s: 0.02, b: 0.71, meaning: "more than about 10 to 15 % of the back cavitates" },
  {
    line: "segmental",
    a: 0.494,
    s: 0,
    b: 0.88,
    meaning: "more than about 10 % of the back of flat-faced sections cavitates",
  },
  { line: "breakdown", a: 1.2, s: 0, b: 1, meaning: "a fully cavitating flat-faced propeller can push no harder" },
];

/** Cavitation numbers the formulas were written for. */
export const FORMULA_RANGE: readonly [number, number] = [0.1, 1];

/** Cavitation number at which the chart ends. */
export const CHART_END = 2;

/** How well the lines are known, of τ_c. */
export const LINE_TOLERANCE = 0.1;

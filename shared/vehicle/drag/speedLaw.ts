import { combined } from "../../numeric/combined.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type NamedPart, SQUARE_METRE } from "./fitDocument.ts";

export interface SpeedLaw {
  /** q in V = q √F, m/(s √N). */ readonly slope: number;
  /** Relative doubts of q by cause. */ readonly doubt: readonly NamedPart[];
  /** kg/m³ */ readonly density: number;
  /** For messages. */ readonly where: string;
  /** What to do where the speeds are too uncertain. */ readonly mend: string;
}

/**
 * C_D A (m²) from the slope q of speed over the root of the driving force.
 *
 *   V = q √F,   C_D A = 2/(ρ q²),   u(C_D A)/C_D A = 2 u(q)/q
 *
 * The interval is that of q carried over, which is lopsided: the speed is what was measured.
 *
 * Source   F = ½ ρ C_D A V²; JCGM 100:2008, 5.1.2 and G.4.
 * Throws   InputProblem `vehicle.fit-speed-not-shown` where the interval of q reaches 0.
 */
export function dragAreaOfSlope({ slope: q, doubt, density, where, mend }: SpeedLaw) {
  const value = 2 / (density * q * q);
  const half = combined(doubt).expanded95;
  if (!(half < 1)) {
    throw new InputProblem({
      code: "vehicle.fit-speed-not-shown",
      where,
      found: `the speeds are so uncertain (95 %: ${formatNumber(100 * half)} %) that C_D A, about ${formatNumber(value)} ${SQUARE_METRE.symbol}, has no upper end`,
      needed: "speeds known to better than their own size",
      mend,
    });
  }
  return {
    value,
    doubt: doubt.map((part) => ({ ...part, standardUncertainty: 2 * value * part.standardUncertainty })),
    interval95: [value / (1 + half) ** 2, value / (1 - half) ** 2] as const,
  };
}

import { median } from "../numeric/median.ts";
import type { ColumnStatistics } from "./columnStatistics.ts";
import type { LogTable } from "./logTable.ts";
import type { Evidence } from "./roleEvidence.ts";

/** Rows looked at. */
const SAMPLE = 5000;
/** Up to this share of the top rotation rate the propeller counts as standing still. */
const STILL_SHARE = 0.02;
/** Below this share of the top rotation rate, idle current and friction hide the law. */
const LOWEST_SHARE = 0.3;
const FEWEST_ROWS = 8;

/**
 * What the columns without a header say together: at rest in the fluid, thrust goes with the square of the rotation
 * rate and current, at a nearly constant voltage, with the cube (e.g. Carlton, Marine Propellers and Propulsion, ch. 6).
 * Both readings are given, the nearer one first; neither is ever sure.
 */
export function powerLawEvidence(
  table: LogTable,
  statistics: readonly ColumnStatistics[],
  evidence: readonly Evidence[],
): Evidence[] {
  const rate = evidence.find(({ role }) => role === "rotationRate");
  if (!rate) return [];
  return table.shape.columns.flatMap(({ header, unit }, column) => {
    if (header !== "" || unit !== null || column === rate.column || statistics[column]!.count === 0) return [];
    if (evidence.some((other) => other.column === column)) return [];
    const power = exponent(table.columns[column]!, table.columns[rate.column]!, statistics[rate.column]!.high);
    return power === null ? [] : readings(column, power);
  });
}

function readings(column: number, power: number): Evidence[] {
  const candidates = [
    { role: "thrust", expected: 2 },
    { role: "current", expected: 3 },
  ] as const;
  return candidates
    .map(({ role, expected }) => ({ role, distance: Math.abs(power - expected) }))
    .filter(({ distance }) => distance < 0.8)
    .map(({ role, distance }) => ({
      column,
      role,
      score: 3 - distance,
      reasons: [`its numbers go with the power ${power.toFixed(1)} of the rotation rate`],
      isNamed: false,
    }));
}

/** Slope of the straight line through the logarithms, above what is read at rest; null where there is too little to tell. */
function exponent(values: Float64Array, rates: Float64Array, topRate: number): number | null {
  const stride = Math.max(1, Math.floor(values.length / SAMPLE));
  const zero = readingAtRest(values, rates, topRate, stride);
  let [count, sumX, sumY, sumXX, sumXY] = [0, 0, 0, 0, 0];
  for (let i = 0; i < values.length; i += stride) {
    // Counts of a load cell may start anywhere, and fall as the load grows.
    const size = zero === null ? values[i]! : Math.abs(values[i]! - zero);
    if (!(size > 0) || !(rates[i]! > LOWEST_SHARE * topRate)) continue;
    const [x, y] = [Math.log(rates[i]!), Math.log(size)];
    count++;
    sumX += x;
    sumY += y;
    sumXX += x * x;
    sumXY += x * y;
  }
  const spread = sumXX - (sumX * sumX) / count;
  return count < FEWEST_ROWS || !(spread > 0.01 * count) ? null : (sumXY - (sumX * sumY) / count) / spread;
}

function readingAtRest(values: Float64Array, rates: Float64Array, topRate: number, stride: number): number | null {
  const still: number[] = [];
  for (let i = 0; i < values.length; i += stride) {
    if (Math.abs(rates[i]!) <= STILL_SHARE * topRate && Number.isFinite(values[i]!)) still.push(values[i]!);
  }
  return still.length < FEWEST_ROWS ? null : median(still);
}

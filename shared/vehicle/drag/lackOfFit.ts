import { fUpperTail } from "../../numeric/fDistribution.ts";

/** Values closer than this part of the largest count as repeats of one setting. */
const SAME = 1e-6;

export interface LackOfFit {
  /** Scatter of the means of repeats about the curve over that of the repeats about their means, F. */
  readonly ratio: number;
  readonly pValue: number;
}

/**
 * Do the means of repeats lie further from a curve than their own scatter explains?
 *
 *   F = [Σ n_g (mean of residuals_g)²/(m − p)] / [Σ (residual − mean_g)²/(n − m)],   m groups, p unknowns
 *
 * Source   NIST/SEMATECH e-Handbook of Statistical Methods (2012), 4.4.4.6.
 * Range    null without repeats, without spare settings, or where repeats do not scatter.
 */
export function lackOfFit(
  settings: readonly number[],
  residuals: readonly number[],
  unknowns: number,
): LackOfFit | null {
  const groups = groupsOf(settings, residuals);
  const above = groups.length - unknowns;
  const below = residuals.length - groups.length;
  if (above < 1 || below < 1) return null;
  let [between, within] = [0, 0];
  for (const group of groups) {
    const mean = group.reduce((sum, r) => sum + r, 0) / group.length;
    between += group.length * mean * mean;
    within += group.reduce((sum, r) => sum + (r - mean) ** 2, 0);
  }
  if (!(within > 0)) return null;
  const ratio = between / above / (within / below);
  return { ratio, pValue: fUpperTail(ratio, [above, below]) };
}

function groupsOf(settings: readonly number[], residuals: readonly number[]): number[][] {
  const width = SAME * Math.max(...settings.map(Math.abs));
  const order = settings.map((_, i) => i).sort((a, b) => settings[a]! - settings[b]!);
  const groups: number[][] = [];
  order.forEach((index, place) => {
    const isSame = place > 0 && settings[index]! - settings[order[place - 1]!]! <= width;
    if (isSame) groups.at(-1)!.push(residuals[index]!);
    else groups.push([residuals[index]!]);
  });
  return groups;
}

/** How many different settings there are. */
export const differentSettings = (settings: readonly number[]) => groupsOf(settings, settings).length;

import type { TowData } from "../../model/vehicle/dragFit.ts";
import { median, NORMAL_SCALE } from "../../numeric/median.ts";
import { straightLine } from "../../numeric/straightLine.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";

/** Length over which a small vehicle slows to 1/e, M/b, m: what inertia is judged by. Common practice, no source. */
const USUAL_LENGTH = 1;
/** Inertia of this part of the drag is too much. */
const INERTIA_PART = 0.05;
/** Part of the log that may be unsteady, as between the steps of a staircase of speeds. */
const UNSTEADY_PART = 0.2;
/** Pieces of the log in which the change of speed is looked at: at least this long and this many rows. */
const PIECE = { seconds: 1, rows: 6 };

/**
 * Standard deviation of the noise of a logged speed (m/s) and the part by which it makes C_D A too small.
 *
 *   u = 1.4826 median |V_(i−1) − 2 V_i + V_(i+1)| / √6,   part = 5 u² ΣV²/ΣV⁴
 *
 * Second differences, and their median, let ramps and steps of the speed pass.
 */
export function speedNoise({ speed }: Pick<TowData, "speed">): { deviation: number; bias: number } {
  const second = speed.slice(2).map((V, i) => Math.abs(V - 2 * speed[i + 1]! + speed[i]!));
  if (second.length === 0) return { deviation: 0, bias: 0 };
  const deviation = (NORMAL_SCALE * median(second)) / Math.sqrt(6);
  const squares = speed.reduce((sum, V) => sum + V * V, 0);
  const fourths = speed.reduce((sum, V) => sum + V ** 4, 0);
  return { deviation, bias: fourths > 0 ? (5 * deviation ** 2 * squares) / fourths : 0 };
}

/** What the log of a tow says against itself. `scatter`: relative standard error of the fit. */
export function towWarnings(data: TowData, scatter: number): Warning[] {
  const { time, speed } = data;
  if (!time) return [];
  const told: Warning[] = [];
  const { deviation, bias } = speedNoise(data);
  if (bias > scatter / 2 && bias > 1e-3) {
    told.push(
      warning({
        code: "vehicle.fit-speed-noise",
        where: "tow",
        found: `the speed reading scatters by ${formatNumber(deviation, 2)} m/s, which makes C_D A some ${formatNumber(100 * bias, 2)} % too small`,
        needed: "a quieter speed",
        mend: "Average the rows of each steady stretch and fit these",
      }),
    );
  }
  const part = unsteadyPart(time, speed);
  if (part > UNSTEADY_PART) {
    told.push(
      warning({
        code: "vehicle.fit-not-steady",
        where: "tow",
        found: `in ${formatNumber(100 * part, 2)} % of the log the speed changes so fast that the force holds inertia`,
        needed: "steady stretches",
        mend: "Cut the log to where the speed stands still",
      }),
    );
  }
  return told;
}

/** Part of the pieces in which inertia would be more than a few percent of the drag, beyond the noise. */
function unsteadyPart(time: readonly number[], speed: readonly number[]): number {
  const pieces = piecesOf(time);
  const unsteady = pieces.filter(([from, to]) => {
    const V = speed.slice(from, to);
    const { slope, slopeStandardError } = straightLine({ x: time.slice(from, to), y: V });
    const mean = V.reduce((sum, one) => sum + one, 0) / V.length;
    return Math.abs(slope) > 3 * slopeStandardError && Math.abs(slope) * USUAL_LENGTH > INERTIA_PART * mean * mean;
  });
  return pieces.length === 0 ? 0 : unsteady.length / pieces.length;
}

function piecesOf(time: readonly number[]): [number, number][] {
  const pieces: [number, number][] = [];
  let from = 0;
  for (let i = 1; i <= time.length; i++) {
    if (i - from < PIECE.rows || time[i - 1]! - time[from]! < PIECE.seconds) continue;
    pieces.push([from, i]);
    from = i;
  }
  return pieces;
}

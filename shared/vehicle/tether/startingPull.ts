import { type TetherLoad, type Triple, writeFlow } from "./tetherLoad.ts";

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: Triple) => Math.hypot(...a);
const sum = (a: Triple, b: Triple, times: number): Triple => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];

/** Width under which two ends count as lying on one line along the load, as a part of the length. */
const ONE_LINE = 1e-9;

/**
 * Force of the tether on the vehicle to start a search from, N: of the catenary between the two ends under an even load,
 * made of the weight and of the mean drag square to the flow.
 *
 * The shape is exact for weight alone and for uniform flow with normal drag alone, which is the same catenary; the tension
 * grows away from the belly under weight and is even under normal drag, and is mixed here by their parts of the load.
 *
 * Source   Berteaux, Buoy Engineering (1976), ch. 4; Pode, DTMB report 687 (1951).
 */
export function startingPull(load: TetherLoad, fromDepth: number, chord: Triple): Triple {
  const drag = meanDrag(load, fromDepth, chord);
  const total: Triple = [drag[0], drag[1], drag[2] + load.weight];
  const q = size(total);
  if (q === 0) return sum([0, 0, 0], chord, 1e-3 / size(chord));
  const down = sum([0, 0, 0], total, 1 / q);
  const v = dot(chord, down);
  const sideways = sum(chord, down, -v);
  const isOneLine = size(sideways) < ONE_LINE * load.length;
  const h = isOneLine ? ONE_LINE * load.length : size(sideways);
  const across = isOneLine ? squareTo(down) : sum([0, 0, 0], sideways, 1 / h);
  const a = h / (2 * sinhRatioRoot(Math.sqrt(load.length ** 2 - v * v) / h));
  // Length along the catenary from the vehicle to its belly, over a.
  const toBelly = h / (2 * a) + Math.atanh(v / load.length);
  const tangent = sum(sum([0, 0, 0], across, 1 / Math.cosh(toBelly)), down, Math.tanh(toBelly));
  const weightPart = Math.abs(load.weight) / (Math.abs(load.weight) + size(drag));
  const T = q * a * (weightPart * Math.cosh(toBelly) + (1 - weightPart));
  return sum([0, 0, 0], tangent, T);
}

/** Mean over the straight line between the ends of 0.5 ρ C_n d |U| U, N/m. */
function meanDrag(load: TetherLoad, fromDepth: number, chord: Triple): Triple {
  const places = [0.1, 0.3, 0.5, 0.7, 0.9];
  const flow = new Float64Array(3);
  let total: Triple = [0, 0, 0];
  for (const place of places) {
    writeFlow(load, place * load.length, fromDepth + place * chord[2], flow);
    const U: Triple = [flow[0]!, flow[1]!, flow[2]!];
    total = sum(total, U, (load.normal * size(U)) / places.length);
  }
  return total;
}

/** A direction square to a unit vector, level if it can be. */
function squareTo(down: Triple): Triple {
  const level = Math.hypot(down[0], down[1]);
  return level > 1e-6 ? [-down[1] / level, down[0] / level, 0] : [1, 0, 0];
}

/** Root u > 0 of sinh(u)/u = ratio, by Newton on the logarithm, which stays finite for a ratio of any size. */
function sinhRatioRoot(ratio: number): number {
  const goal = Math.log(Math.max(ratio, 1 + 1e-15));
  let u = ratio < 3 ? Math.sqrt(6 * (Math.exp(goal) - 1)) : Math.log(2 * ratio) + Math.log(Math.log(2 * ratio));
  for (let step = 0; step < 20; step++) {
    const logarithm = u < 1e-3 ? (u * u) / 6 : Math.log((1 - Math.exp(-2 * u)) / (2 * u)) + u;
    const slope = u < 1e-3 ? u / 3 : 1 / Math.tanh(u) - 1 / u;
    const change = (goal - logarithm) / slope;
    u = Math.max(u / 2, u + change);
    if (Math.abs(change) < 1e-12 * u) break;
  }
  return u;
}

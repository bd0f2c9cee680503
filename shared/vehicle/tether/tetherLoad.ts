import type { TetherMotion, TetherSurroundings } from "../../model/vehicle/tether.ts";
import type { TetherRequest } from "../../model/vehicle/tetherShape.ts";
import type { Triple } from "./triple.ts";

/** What acts on a tether, in the numbers that the integration needs. */
export interface TetherLoad {
  /** 0.5 ρ C_n d, N/m at 1 m/s square to the tether. */
  readonly normal: number;
  /** 0.5 ρ C_t π d, N/m at 1 m/s along the tether. */
  readonly tangential: number;
  /** Net weight per length, N/m. */
  readonly weight: number;
  /** Depths of the current's table from the top down, m, and its speeds, m/s. */
  readonly depths: readonly number[];
  readonly speeds: readonly number[];
  /** Where the current flows to: cosine and sine of the angle from the bow. */
  readonly flowsTo: readonly [number, number];
  /** Velocity of the vehicle over the ground, m/s. */
  readonly velocity: Triple;
  readonly motion: TetherMotion;
  readonly length: number;
}

/** The numbers of a request that make the load on its tether. */
export function loadOf({ tether, surroundings, vehicle, motion }: TetherRequest): TetherLoad {
  const half = 0.5 * surroundings.density * tether.diameter;
  return {
    normal: half * tether.normalDragCoefficient,
    tangential: half * Math.PI * tether.tangentialDragCoefficient,
    weight: tether.netWeightPerLength,
    ...tableOf(surroundings.current),
    velocity: [vehicle.velocity.forward, vehicle.velocity.starboard, vehicle.velocity.down],
    motion,
    length: tether.length,
  };
}

function tableOf(current: TetherSurroundings["current"]): Pick<TetherLoad, "depths" | "speeds" | "flowsTo"> {
  const flowsTo = [unitPart(Math.cos(current.direction)), unitPart(Math.sin(current.direction))] as const;
  if (current.kind === "uniform") return { depths: [0], speeds: [current.speed], flowsTo };
  const { profile } = current;
  return { depths: profile.map(({ depth }) => depth), speeds: profile.map(({ speed }) => speed), flowsTo };
}

/** The cosine of a right angle comes out of the library as 6e-17, which would push a plane case out of its plane. */
const unitPart = (part: number) => (Math.abs(part) < 1e-15 ? 0 : part);

/** Speed of the current at a depth, m/s: straight between the rows of the table, held beyond its ends. */
export function currentAt({ depths, speeds }: TetherLoad, depth: number): number {
  const last = depths.length - 1;
  if (depth <= depths[0]!) return speeds[0]!;
  if (depth >= depths[last]!) return speeds[last]!;
  let row = 1;
  while (depths[row]! < depth) row++;
  const share = (depth - depths[row - 1]!) / (depths[row]! - depths[row - 1]!);
  return speeds[row - 1]! + share * (speeds[row]! - speeds[row - 1]!);
}

/** Velocity of the water past the tether at length `along` from the vehicle and a depth, m/s, written into `flow`. */
export function writeFlow(load: TetherLoad, along: number, depth: number, flow: Float64Array): void {
  const speed = currentAt(load, depth);
  const share = load.motion === "bothEnds" ? 1 : 1 - along / load.length;
  flow[0] = speed * load.flowsTo[0] - share * load.velocity[0];
  flow[1] = speed * load.flowsTo[1] - share * load.velocity[1];
  flow[2] = -share * load.velocity[2];
}

/**
 * Drag per length on a piece of tether with tangent (tx, ty, tz) in a flow, N/m, written into `force`; gives the speed
 * square to the tether, m/s.
 *
 *   f = 0.5 ρ C_n d |U_n| U_n + 0.5 ρ C_t π d |U_t| U_t
 *
 * Source   Berteaux, Buoy Engineering (1976), ch. 4; Pode, DTMB report 687 (1951), with the tangential force as drag on
 *          the wetted surface instead of a constant.
 */
export function writeDrag(
  { normal, tangential }: TetherLoad,
  flow: Float64Array,
  tx: number,
  ty: number,
  tz: number,
  force: Float64Array,
): number {
  const Ut = flow[0]! * tx + flow[1]! * ty + flow[2]! * tz;
  const nx = flow[0]! - Ut * tx;
  const ny = flow[1]! - Ut * ty;
  const nz = flow[2]! - Ut * tz;
  const Un = Math.sqrt(nx * nx + ny * ny + nz * nz);
  const n = normal * Un;
  const t = tangential * Math.abs(Ut) * Ut;
  force[0] = n * nx + t * tx;
  force[1] = n * ny + t * ty;
  force[2] = n * nz + t * tz;
  return Un;
}

/** The same tether and water with the drag on it, its weight or the current multiplied. */
export function multipliedLoad(load: TetherLoad, by: LoadFactors): TetherLoad {
  const { normal = 1, tangential = 1, weight = 1, current = 1 } = by;
  return {
    ...load,
    normal: load.normal * normal,
    tangential: load.tangential * tangential,
    weight: load.weight * weight,
    speeds: load.speeds.map((speed) => speed * current),
  };
}

/** Factors on parts of a load; 1 where absent. */
export interface LoadFactors {
  readonly normal?: number;
  readonly tangential?: number;
  readonly weight?: number;
  readonly current?: number;
}

/** Size of the load per length, N/m: weight, and drag square to the fastest flow anywhere between two depths. */
export function loadSize(load: TetherLoad, fromDepth: number, toDepth: number): number {
  return Math.abs(load.weight) + load.normal * fastestFlow(load, fromDepth, toDepth) ** 2;
}

/** Fastest flow past the tether between two depths, m/s: it is at a row of the table or at an end. */
export function fastestFlow(load: TetherLoad, fromDepth: number, toDepth: number): number {
  const [low, high] = [Math.min(fromDepth, toDepth), Math.max(fromDepth, toDepth)];
  const depths = [low, high, ...load.depths.filter((depth) => depth > low && depth < high)];
  const flow = new Float64Array(3);
  const speeds = depths.flatMap((depth) =>
    [0, load.length].map((along) => {
      writeFlow(load, along, depth, flow);
      return Math.hypot(flow[0]!, flow[1]!, flow[2]!);
    }),
  );
  return Math.max(...speeds);
}

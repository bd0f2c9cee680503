import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { discArea } from "../coefficients.ts";
import type { BladeShape } from "./bladeShape.ts";
import { BROAD_BLADE_MISSES, type BroadBladeMiss, SLENDER } from "./broadBlades.data.ts";

/** Blades broader than those of the section model: by how much they are off, from published screws of about their pitch. */
export function breadthWarnings({ bladeCount, diameter, pieces }: BladeShape): Warning[] {
  const area = bladeCount * pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
  const areaRatio = area / discArea(diameter);
  if (areaRatio <= SLENDER) return [];
  const { pitchRatio, thrust, torque } = missOf(pitchRatioOf({ diameter, pieces }));
  return [
    warning({
      code: "propeller.blades-broad",
      where: "geometry",
      found: `The blades have ${formatNumber(areaRatio, 2)} of the area of the disc`,
      needed: "",
      mend: `Against published screws of pitch ratio ${pitchRatio}, area ratio 0.3 to 1.05, such a computation at rest is ${spread(thrust)} off in thrust and ${spread(torque)} in torque; near zero thrust both are 10 to 50 % too high. Scale both through a measured point`,
    }),
  ];
}

/** P/D = 0.7 π tan θ of the piece nearest to 0.7 of the radius. */
function pitchRatioOf({ diameter, pieces }: Pick<BladeShape, "diameter" | "pieces">): number {
  const off = ({ radius }: { readonly radius: number }) => Math.abs(radius - 0.35 * diameter);
  const middle = pieces.reduce((near, piece) => (off(piece) < off(near) ? piece : near));
  return 0.7 * Math.PI * Math.tan(middle.pitchAngle);
}

function missOf(pitchRatio: number): BroadBladeMiss {
  const off = (miss: BroadBladeMiss) => Math.abs(miss.pitchRatio - pitchRatio);
  return BROAD_BLADE_MISSES.reduce((near, miss) => (off(miss) < off(near) ? miss : near));
}

/** "-19 to 8 %". */
function spread([low, high]: readonly [number, number]): string {
  return `${Math.round(100 * low)} to ${Math.round(100 * high)} %`.replaceAll("-", "\u2212");
}

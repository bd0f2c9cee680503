import { WAGENINGEN_B_STATIONS } from "./seriesGeometry.data.ts";

/** What is known of the blades of a propeller. */
export interface ChordOfBlades {
  readonly bladeCount?: number | undefined;
  /** c at 0.7 of the tip radius, m. */ readonly chordAt07?: number | undefined;
  /** Over the blade tips, m. */ readonly diameter: number;
}

const AT_07 = WAGENINGEN_B_STATIONS.find(({ radius }) => radius === 0.7)!;

/**
 * Expanded area ratio of the B screw with the chord of a propeller at 0.7 of its radius; null where number of blades or
 * chord is not known.
 *
 *   A_E/A_0 = (c/D) Z / K_r
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 1.
 *
 * @example areaRatioOf({ bladeCount: 3, chordAt07: 0.04336, diameter: 0.1 }) // 0.600
 */
export function areaRatioOf({ bladeCount, chordAt07, diameter }: ChordOfBlades): number | null {
  if (bladeCount === undefined || chordAt07 === undefined) return null;
  return ((chordAt07 / diameter) * bladeCount) / (bladeCount < 4 ? AT_07.chordOfThree : AT_07.chordOfFour);
}

import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { overlap, stationName } from "./checkedGeometry.ts";

/** Part of the tip radius that may lie without station between hub and blade. */
const ROOT_GAP = 0.15;

/** What a reader must know of a blade that can be computed all the same. */
export function geometryWarnings(geometry: BladeGeometry): Warning[] {
  return [...overlapWarnings(geometry), ...rootWarnings(geometry), ...flatWarnings(geometry)];
}

function overlapWarnings({ stations, bladeCount, hubDiameter }: BladeGeometry): Warning[] {
  const i = stations.findIndex(
    (station) => station.radius >= hubDiameter / 2 && station.chord > 0 && overlap(station, bladeCount) > 1,
  );
  if (i < 0) return [];
  return [
    warning({
      code: "propeller.blades-overlap",
      where: `stations[${i}].chord`,
      found: `Seen along the shaft the blades lie over each other at ${stationName(stations[i]!, i)}`,
      needed: "blades clear of each other",
      mend: "Blade elements take each blade as alone in the ring; so near the next one it lifts less than computed",
    }),
  ];
}

function rootWarnings({ stations, diameter, hubDiameter }: BladeGeometry): Warning[] {
  const gap = stations[0]!.radius - hubDiameter / 2;
  if (gap <= (ROOT_GAP * diameter) / 2) return [];
  return [
    warning({
      code: "propeller.blade-root-guessed",
      where: "stations[0].radius",
      found: `Between the hub and the first station, over ${formatNumber(gap * 1000, 3)} mm, nothing is known of the blade; it is taken as at the first station`,
      needed: "a station near the hub",
      mend: "Add one, or give the hub diameter at which the blades begin",
    }),
  ];
}

/** rad; a propeller whose pitch angles all lie below this is next to flat. */
const NEARLY_FLAT = 0.03;

function flatWarnings({ stations }: BladeGeometry): Warning[] {
  const steepest = Math.max(...stations.map(({ pitchAngle }) => Math.abs(pitchAngle)));
  if (steepest >= NEARLY_FLAT) return [];
  return [
    warning({
      code: "propeller.pitch-nearly-flat",
      where: "stations",
      found: `No pitch angle is more than ${formatNumber((steepest * 180) / Math.PI, 3)}°`,
      needed: "",
      mend: "If radians were written under a header of degrees, correct the header",
    }),
  ];
}

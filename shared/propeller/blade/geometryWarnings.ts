import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { overlap, stationName } from "./checkedGeometry.ts";

/** Part of the tip radius that may lie without station between hub and blade. */
const ROOT_GAP = 0.15;

/** What a reader must know of a blade that can be computed all the same. */
export function geometryWarnings(geometry: BladeGeometry): Warning[] {
  return [...overlapWarnings(geometry), ...rootWarnings(geometry), ...pitchWarnings(geometry)];
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
/** Pitch over diameter at about 0.7 of the radius that propellers for water or air have; common practice, no source. */
const USUAL_PITCH = [0.25, 3] as const;

/** A pitch in another unit than the header says is a shape all the same, but no likely one. */
function pitchWarnings(geometry: BladeGeometry): Warning[] {
  const { stations, diameter } = geometry;
  const steepest = Math.max(...stations.map(({ pitchAngle }) => Math.abs(pitchAngle)));
  if (steepest < NEARLY_FLAT) return [flatWarning(steepest)];
  const off = ({ radius }: BladeStation) => Math.abs(radius - 0.35 * diameter);
  const middle = stations.reduce((near, one) => (off(one) < off(near) ? one : near));
  const pitchRatio = Math.abs((2 * Math.PI * middle.radius * Math.tan(middle.pitchAngle)) / diameter);
  const [least, most] = USUAL_PITCH;
  if (pitchRatio >= least && pitchRatio <= most) return [];
  const at = stations.indexOf(middle);
  return [
    warning({
      code: "propeller.pitch-unlikely",
      where: `stations[${at}].pitchAngle`,
      found: `At ${stationName(middle, at)}, the pitch is ${formatNumber(pitchRatio)} diameters`,
      needed: `${least} to ${most} in usual propellers`,
      mend: "If the pitch was written in another unit than its header says, in or cm for mm, correct the header",
    }),
  ];
}

function flatWarning(steepest: number): Warning {
  return warning({
    code: "propeller.pitch-nearly-flat",
    where: "stations",
    found: `No pitch angle is more than ${formatNumber((steepest * 180) / Math.PI, 3)}°`,
    needed: "",
    mend: "If radians were written under a header of degrees, correct the header",
  });
}

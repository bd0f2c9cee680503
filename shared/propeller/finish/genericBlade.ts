import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { GenericBlade } from "../../model/finishFit.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { seriesGeometry } from "../series/seriesGeometry.ts";

/** Blades assumed where none were measured, and the warning that says so. */
export interface AssumedBlade {
  readonly geometry: BladeGeometry;
  readonly warning: Warning;
}

/**
 * A blade of the B series with the pitch ratio, blade count and chord at 0.7 of the radius of a propeller whose sections
 * are not known: constant pitch, outline, thickness and flat face of the series.
 *
 * Source   as `seriesGeometry`.
 * Throws   OutOfDomain for input the series can not be computed for.
 */
export function genericBlade({ diameter, bladeCount, pitchRatio, chordAt07 }: GenericBlade): AssumedBlade {
  const of = (areaRatio: number) =>
    seriesGeometry({
      series: { family: "wageningen-b", blades: bladeCount, areaRatio, pitchRatio },
      diameter,
      outsideRange: true,
    });
  // Chords grow straight with the area ratio, so one blade tells the ratio that makes the chord wanted.
  const trial = 0.5;
  const at07 = of(trial).stations.reduce((near, station) =>
    Math.abs(station.radius / diameter - 0.35) < Math.abs(near.radius / diameter - 0.35) ? station : near,
  );
  return {
    geometry: of((trial * chordAt07) / at07.chord),
    warning: warning({
      code: "propeller.generic-blade",
      where: "blade",
      found: `Blade outline, thickness and camber are those of a B-series screw of ${bladeCount} blades with this pitch ratio and chord, not of this propeller`,
      needed: "measured sections, for absolute numbers",
      mend: "Read the change between two finishes, which the outline hardly touches, rather than each number alone",
    }),
  };
}

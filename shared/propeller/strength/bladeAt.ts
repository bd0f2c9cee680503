import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { InputProblem } from "../../quantity/problem.ts";

/** The blade at `radius` (m): straight lines between stations; beyond the first or last station as there. */
export function bladeAt(stations: readonly BladeStation[], radius: number): Required<BladeStation> {
  const outerIndex = stations.findIndex((station) => station.radius >= radius);
  const outer = stations[outerIndex < 0 ? stations.length - 1 : outerIndex]!;
  const inner = stations[Math.max(0, outerIndex < 0 ? stations.length - 1 : outerIndex - 1)]!;
  const span = outer.radius - inner.radius;
  const part = span === 0 ? 0 : (radius - inner.radius) / span;
  const between = (of: (station: BladeStation) => number) => of(inner) + part * (of(outer) - of(inner));
  return {
    radius,
    chord: between((station) => station.chord),
    pitchAngle: between((station) => station.pitchAngle),
    thickness: between((station) => station.thickness),
    camber: between((station) => station.camber),
    skew: between((station) => station.skew ?? 0),
  };
}

/**
 * The stations, if a beam can be made of them: radii that grow, a chord and a thickness everywhere but at the tip.
 * Throws InputProblem that names station and field.
 */
export function beamStations({ stations, diameter, hubDiameter }: BladeGeometry): readonly BladeStation[] {
  if (!(hubDiameter < diameter)) {
    refuse("geometry.hubDiameter", `The hub is ${millimetres(hubDiameter)} wide`, `less than ${millimetres(diameter)}`);
  }
  stations.forEach((station, i) => {
    const where = (field: string) => `geometry.stations[${i}].${field}`;
    const before = stations[i - 1];
    if (before !== undefined && !(station.radius > before.radius)) {
      const found = `Station ${i + 1} lies at ${millimetres(station.radius)}`;
      refuse(where("radius"), found, `a radius greater than the ${millimetres(before.radius)} of the one before`);
    }
    for (const field of ["chord", "thickness"] as const) {
      if (!(station[field] > 0) && i < stations.length - 1) {
        const found = `Station ${i + 1} at ${millimetres(station.radius)} has no ${field}`;
        refuse(where(field), found, "more than 0 mm everywhere but at the tip");
      }
    }
  });
  return stations;
}

function refuse(where: string, found: string, needed: string): never {
  throw new InputProblem({
    code: "propeller.blade-not-a-beam",
    where,
    found,
    needed,
    mend: "Correct the station, or leave it out",
  });
}

const millimetres = (metres: number) => `${Number((metres * 1000).toPrecision(4))} mm`;

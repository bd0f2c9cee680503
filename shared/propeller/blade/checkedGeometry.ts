import type { BladeGeometry, BladeStation } from "../../model/bladeGeometry.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem, type Problem } from "../../quantity/problem.ts";

/** Greatest chord over diameter; the broadest published blades come to about 1. */
const GREATEST_CHORD = 2;
/** Greatest thickness over chord that is still a blade and no rod. */
const GREATEST_THICKNESS = 0.6;
/** Greatest camber over chord for which the section model holds. */
const GREATEST_CAMBER = 0.2;
/** Outermost and innermost place of the last station over the tip radius. */
const TIP_PLACES = [0.95, 1.005] as const;

/**
 * `geometry`, if it is one that a propeller can have.
 * Throws InputProblem naming field and station: `propeller.hub-size`, `propeller.station-order`, `propeller.station-chord`,
 * `propeller.station-thickness`, `propeller.station-camber`, `propeller.station-pitch`, `propeller.station-units`,
 * `propeller.blade-tip` or `propeller.blades-meet`.
 */
export function checkedGeometry(geometry: BladeGeometry): BladeGeometry {
  requireHub(geometry);
  requireScale(geometry);
  geometry.stations.forEach((station, i) => {
    requireStation(station, i, geometry);
  });
  return geometry;
}

const millimetres = (metres: number) => `${formatNumber(metres * 1000, 4)} mm`;

/** "station 3, r = 21 mm". */
export const stationName = ({ radius }: BladeStation, i: number) => `station ${i + 1}, r = ${millimetres(radius)}`;

function requireHub({ diameter, hubDiameter }: BladeGeometry): void {
  if (hubDiameter < 0.9 * diameter) return;
  throw new InputProblem({
    code: "propeller.hub-size",
    where: "hubDiameter",
    found: `The hub is ${millimetres(hubDiameter)} wide in a propeller of ${millimetres(diameter)}`,
    needed: "a hub that leaves at least a tenth of the radius for the blades",
    mend: "Give the diameters of hub and propeller, both in the same unit",
  });
}

/** A radius in millimetres where metres are meant, or a diameter where a radius is, shows against the diameter. */
function requireScale({ diameter, stations }: BladeGeometry): void {
  const last = stations.at(-1)!.radius;
  const ratio = last / (diameter / 2);
  if (ratio >= TIP_PLACES[0] && ratio <= TIP_PLACES[1]) return;
  const where = `stations[${stations.length - 1}].radius`;
  const found = `The outermost station is at ${millimetres(last)}; half the diameter is ${millimetres(diameter / 2)}`;
  const guess = likelyScale(ratio);
  if (guess) {
    throw new InputProblem({
      code: "propeller.station-units",
      where,
      found: `${found}, ${formatNumber(1 / ratio, 3)} times that`,
      needed: "stations that end at the tip",
      mend: guess,
    });
  }
  throw new InputProblem({
    code: "propeller.blade-tip",
    where,
    found,
    needed: `the outermost station at ${TIP_PLACES[0] * 100} to 100 % of the tip radius`,
    mend:
      ratio < 1
        ? "Add a station at the tip; its chord may be 0"
        : "Take out stations beyond the tip, or correct the diameter",
  });
}

function likelyScale(ratio: number): string | undefined {
  const close = (to: number) => Math.abs(ratio / to - 1) < 0.06;
  if (close(1000) || close(1e-3))
    return "Are radii and diameter in one unit? One looks like millimetres read as metres";
  if (close(2)) return "Are the radii diameters? Halve them";
  if (close(0.5)) return "Is the diameter a radius, or the radius halved? Correct the one that is wrong";
  if (close(25.4) || close(1 / 25.4))
    return "Are radii and diameter in one unit? One looks like inches read as millimetres";
  return undefined;
}

function requireStation(station: BladeStation, i: number, geometry: BladeGeometry): void {
  const fault =
    orderFault(station, geometry.stations[i - 1]) ??
    chordFault(station, i === geometry.stations.length - 1) ??
    breadthFault(station, geometry) ??
    thicknessFault(station) ??
    camberFault(station) ??
    pitchFault(station) ??
    meetingFault(station, geometry);
  if (!fault) return;
  const { field, ...rest } = fault;
  throw new InputProblem({
    ...rest,
    where: `stations[${i}].${field}`,
    found: `At ${stationName(station, i)}, ${rest.found}`,
  });
}

type Fault = Omit<Problem, "where"> & { readonly field: keyof BladeStation };

function orderFault({ radius }: BladeStation, before: BladeStation | undefined): Fault | undefined {
  if (radius > (before?.radius ?? 0)) return undefined;
  return {
    field: "radius",
    code: "propeller.station-order",
    found:
      before === undefined
        ? "the radius is not above 0"
        : `the radius is not above the ${millimetres(before.radius)} before`,
    needed: "radii that grow from station to station",
    mend: "Order the stations from hub to tip and take out doubles",
  };
}

function chordFault({ chord }: BladeStation, isTip: boolean): Fault | undefined {
  if (chord > 0 || (isTip && chord === 0)) return undefined;
  return {
    field: "chord",
    code: "propeller.station-chord",
    found: `the chord is ${millimetres(chord)}`,
    needed: "more than 0; 0 only at the tip",
    mend: "Measure the chord from leading to trailing edge",
  };
}

function breadthFault({ chord }: BladeStation, { diameter }: BladeGeometry): Fault | undefined {
  if (chord <= GREATEST_CHORD * diameter) return undefined;
  return {
    field: "chord",
    code: "propeller.station-units",
    found: `the chord is ${millimetres(chord)} in a propeller of ${millimetres(diameter)}`,
    needed: `a chord of at most ${GREATEST_CHORD} diameters`,
    mend: "Are chord and diameter in one unit? One looks like millimetres read as metres",
  };
}

function thicknessFault({ chord, thickness }: BladeStation): Fault | undefined {
  const isBlade = chord === 0 ? thickness >= 0 : thickness > 0 && thickness <= GREATEST_THICKNESS * chord;
  if (isBlade) return undefined;
  return {
    field: "thickness",
    code: "propeller.station-thickness",
    found: `the blade is ${millimetres(thickness)} thick on a chord of ${millimetres(chord)}`,
    needed: `a thickness above 0, up to ${GREATEST_THICKNESS * 100} % of the chord`,
    mend: "Thickness and chord may be exchanged, or in different units",
  };
}

function camberFault({ chord, camber }: BladeStation): Fault | undefined {
  if (chord === 0 || Math.abs(camber) <= GREATEST_CAMBER * chord) return undefined;
  return {
    field: "camber",
    code: "propeller.station-camber",
    found: `the camber is ${millimetres(camber)} on a chord of ${millimetres(chord)}`,
    needed: `up to ${GREATEST_CAMBER * 100} % of the chord`,
    mend: "Camber is the height of the mean line over the chord, not that of the back",
  };
}

function pitchFault({ pitchAngle }: BladeStation): Fault | undefined {
  if (Math.abs(pitchAngle) < Math.PI / 2) return undefined;
  return {
    field: "pitchAngle",
    code: "propeller.station-pitch",
    found: `the pitch angle is ${formatNumber(pitchAngle, 4)} rad`,
    needed: "less than a right angle, 1.571 rad",
    mend: `If it is ${formatNumber(pitchAngle, 4)}°, send ${formatNumber((pitchAngle * Math.PI) / 180, 4)} rad`,
  };
}

/** Neighbouring blades that lie over each other and are thicker than the gap between them are one body. */
function meetingFault(station: BladeStation, { bladeCount, hubDiameter }: BladeGeometry): Fault | undefined {
  const { radius, thickness } = station;
  const gap = ((2 * Math.PI * radius) / bladeCount) * Math.abs(Math.sin(station.pitchAngle));
  if (radius < hubDiameter / 2 || bladeCount === 1 || overlap(station, bladeCount) <= 1 || thickness < gap)
    return undefined;
  return {
    field: "chord",
    code: "propeller.blades-meet",
    found: `${bladeCount} blades lie over each other with ${millimetres(gap)} between them and are ${millimetres(thickness)} thick`,
    needed: "blades that leave room between them",
    mend: "A larger hub, fewer blades or a narrower root",
  };
}

/** Part of the circle that the blades cover at a station, Z c cos φ/(2 π r), 1; above 1 they lie over each other. */
export function overlap({ radius, chord, pitchAngle }: BladeStation, bladeCount: number): number {
  return (bladeCount * chord * Math.cos(pitchAngle)) / (2 * Math.PI * radius);
}

import type { PlacedThruster } from "../../../../../shared/model/vehicle/vehicle.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { freeName, MOST_THRUSTERS, shortName } from "../buildModel.ts";

const names = ({ thrusters }: VehicleBuild) => thrusters.map(({ name }) => name);

export function withThruster(build: VehicleBuild, at: number, change: Partial<PlacedThruster>): VehicleBuild {
  const now = build.thrusters[at];
  return now === undefined ? build : { ...build, thrusters: build.thrusters.with(at, { ...now, ...change }) };
}

/** One more, pushing ahead from the middle. */
export function withThrusterAdded(build: VehicleBuild): VehicleBuild {
  const added: PlacedThruster = {
    name: freeName("Thruster", names(build)),
    position: { x: 0, y: 0, z: 0 },
    direction: { x: 1, y: 0, z: 0 },
    spin: "clockwise",
    drive: build.drives[0]!.name,
  };
  return grown(build, build.thrusters.length, added);
}

/** The same on the other side of the vehicle, turning the other way. */
export function withThrusterMirrored(build: VehicleBuild, at: number): VehicleBuild {
  const one = build.thrusters[at];
  if (one === undefined) return build;
  const { position, direction } = one;
  return grown(build, at + 1, {
    ...one,
    name: freeName(mirroredName(one.name), names(build)),
    position: { ...position, y: 0 - position.y },
    direction: { ...direction, y: 0 - direction.y },
    spin: one.spin === "clockwise" ? "anticlockwise" : "clockwise",
  });
}

export function withoutThruster(build: VehicleBuild, at: number): VehicleBuild {
  return build.thrusters.length < 2 ? build : { ...build, thrusters: build.thrusters.toSpliced(at, 1) };
}

/** A position and its mirror image are one place where the thruster sits in the middle plane and pushes along it. */
export const isItsOwnMirror = ({ position, direction }: PlacedThruster): boolean =>
  position.y === 0 && direction.y === 0;

function grown(build: VehicleBuild, at: number, added: PlacedThruster): VehicleBuild {
  if (build.thrusters.length >= MOST_THRUSTERS) return build;
  return { ...build, thrusters: build.thrusters.toSpliced(at, 0, added) };
}

function mirroredName(name: string): string {
  if (/starboard/i.test(name)) return name.replace(/starboard/i, (word) => (word[0] === "S" ? "Port" : "port"));
  if (/port/i.test(name)) return name.replace(/port/i, (word) => (word[0] === "P" ? "Starboard" : "starboard"));
  return shortName(`${name}, mirrored`);
}

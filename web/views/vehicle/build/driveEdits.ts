import type { DriveChoice, VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { freeName, shortName } from "./buildModel.ts";

const MOST_DRIVES = 16;

/** A build with one drive changed; thrusters follow a new name. */
export function withDrive(build: VehicleBuild, at: number, change: (drive: DriveChoice) => DriveChoice): VehicleBuild {
  const now = build.drives[at];
  if (now === undefined) return build;
  const next = change(now);
  const thrusters = build.thrusters.map((one) => (one.drive === now.name ? { ...one, drive: next.name } : one));
  return { ...build, drives: build.drives.with(at, next), thrusters };
}

/** One more kind of thruster, like the last one until it is changed. */
export function withDriveAdded(build: VehicleBuild): VehicleBuild {
  const last = build.drives.at(-1)!;
  if (build.drives.length >= MOST_DRIVES) return build;
  const name = freeName(
    shortName(last.name),
    build.drives.map((one) => one.name),
  );
  return { ...build, drives: [...build.drives, { ...last, name }] };
}

export function withoutDrive(build: VehicleBuild, at: number): VehicleBuild {
  return usersOf(build, at).length > 0 || build.drives.length < 2
    ? build
    : { ...build, drives: build.drives.toSpliced(at, 1) };
}

/** Names of the thrusters that have a drive. */
export function usersOf({ drives, thrusters }: VehicleBuild, at: number): string[] {
  return thrusters.filter(({ drive }) => drive === drives[at]?.name).map(({ name }) => name);
}

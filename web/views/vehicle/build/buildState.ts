import { computed, signal } from "@preact/signals";
import type { Vehicle } from "../../../../shared/model/vehicle/vehicle.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import type { Problem } from "../../../../shared/quantity/problem.ts";
import { vehicleOf } from "../../../../shared/vehicle/build/vehicleOf.ts";
import { editProject } from "../../../app/edits.ts";
import { parts, project } from "../../../app/session.ts";
import { drivePropellers } from "../../drive/drivePropellers.ts";
import { shownPlace, withBuild, withCopy, withVehicles } from "./buildModel.ts";

/** The vehicles of the project, side by side. */
export const builds = computed((): readonly VehicleBuild[] => project.value?.document.vehicles ?? []);

const wantedPlace = signal(0);
/** Place of the vehicle on show; -1: there is none. */
export const chosenPlace = computed(() => shownPlace(builds.value, wantedPlace.value));
/** The vehicle on show; null while there is none. */
export const chosenBuild = computed((): VehicleBuild | null => builds.value[chosenPlace.value] ?? null);

export function chooseBuild(place: number): void {
  wantedPlace.value = place;
}

/** The vehicle on show, complete with its parts, or what keeps it from that. Null while there is none. */
export type Assembled = { readonly vehicle: Vehicle } | { readonly problems: readonly Problem[] };

export const assembled = computed((): Assembled | null => assemble(chosenBuild.value));
/** Every vehicle of the project in the same way, to lay them beside each other. */
export const allAssembled = computed(() => builds.value.map((build) => ({ build, ...assemble(build)! })));

/** The vehicle on show, complete in itself; null where a part is missing or there is none. */
export const vehicle = computed((): Vehicle | null => {
  const made = assembled.value;
  return made !== null && "vehicle" in made ? made.vehicle : null;
});

function assemble(build: VehicleBuild | null): Assembled | null {
  if (build === null) return null;
  const propellers = drivePropellers.value.map(({ propeller }) => propeller);
  return vehicleOf(build, parts.value, propellers, project.value!.document.water);
}

/** What a change makes of a build. It is asked when its turn has come, so that it sees what is stored then. */
export type BuildChange = (build: VehicleBuild) => VehicleBuild;

/**
 * Stores a changed vehicle, the one on show; undone by storing the one before. `what` was changed, in a word or two.
 * Resolves to false where it was refused, which is told.
 */
export function editBuild(change: BuildChange, what = ""): Promise<boolean> {
  const build = chosenBuild.value;
  if (build === null) return Promise.resolve(false);
  const place = chosenPlace.value;
  const label = `Changed ${build.name}${what && `: ${what}`}`;
  return editProject(
    label,
    (document) => {
      const now = document.vehicles?.[place];
      return now === undefined ? document : withVehicles(document, withBuild(document.vehicles!, place, change(now)));
    },
    { quiet: true },
  );
}

export async function addBuild(build: VehicleBuild): Promise<boolean> {
  const stored = await editProject(`Added ${build.name}`, (document) =>
    withVehicles(document, [...(document.vehicles ?? []), build]),
  );
  if (stored) chooseBuild(builds.value.length - 1);
  return stored;
}

export async function copyBuild(): Promise<void> {
  const place = chosenPlace.value;
  const label = `Copied ${chosenBuild.value?.name ?? ""}`;
  const copied = await editProject(label, (document) =>
    withVehicles(document, withCopy(document.vehicles ?? [], place)),
  );
  if (copied) chooseBuild(place + 1);
}

export async function removeBuild(): Promise<void> {
  const place = chosenPlace.value;
  const label = `Deleted ${chosenBuild.value?.name ?? ""}`;
  await editProject(label, (document) => withVehicles(document, (document.vehicles ?? []).toSpliced(place, 1)));
}

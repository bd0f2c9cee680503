import { computed, signal } from "@preact/signals";
import type { StoredDocument } from "../../../../shared/model/stored.ts";
import type { Vehicle } from "../../../../shared/model/vehicle/vehicle.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import type { Problem } from "../../../../shared/quantity/problem.ts";
import { type BuildFrom, vehicleOf } from "../../../../shared/vehicle/build/vehicleOf.ts";
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

/** A vehicle complete with its parts, or what keeps it from that. */
export type Assembled = { readonly vehicle: Vehicle } | { readonly problems: readonly Problem[] };

/** Every vehicle of the project, to lay them beside each other. */
export const allAssembled = computed(() => {
  // Without a project there is no water either.
  if (builds.value.length === 0) return [];
  const from = buildFrom.value;
  return builds.value.map((build) => ({ build, ...assemble(build, from) }));
});

/** The vehicle on show; null while there is none. */
export const assembled = computed((): Assembled | null => allAssembled.value[chosenPlace.value] ?? null);

/** The vehicle on show, complete in itself; null where a part is missing or there is none. */
export const vehicle = computed((): Vehicle | null => {
  const made = assembled.value;
  return made !== null && "vehicle" in made ? made.vehicle : null;
});

/** Parts, propellers and water that vehicles are completed with. */
const buildFrom = computed((): BuildFrom => {
  const byId = <T>(list: readonly StoredDocument<T>[]) => new Map(list.map(({ id, document }) => [id, document]));
  const { motors, controllers, gears, packs, tethers } = parts.value;
  return {
    water: project.value!.document.water,
    parts: {
      ...{ motors: byId(motors), controllers: byId(controllers), gears: byId(gears) },
      ...{ packs: byId(packs), tethers: byId(tethers) },
    },
    propellers: new Map(drivePropellers.value.map(({ name, propeller }) => [name, propeller])),
  };
});

/** More than the vehicles of a project and their last changes need not be kept. */
const MOST_REMEMBERED = 50;
const remembered = new Map<string, Vehicle>();

/** Equal vehicles are one object, so that what takes long to work out from a vehicle is worked out once. */
function oneOf(made: Vehicle): Vehicle {
  const key = JSON.stringify(made);
  const known = remembered.get(key);
  if (known) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(key, made);
  return made;
}

function assemble(build: VehicleBuild, from: BuildFrom): Assembled {
  const built = vehicleOf(build, from);
  return built.state === "complete" ? { vehicle: oneOf(built.vehicle) } : { problems: built.problems };
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

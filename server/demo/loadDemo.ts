import { randomUUID } from "node:crypto";
import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { Demo, DemoRun } from "../../samples/demo.ts";
import { type PartKind, PartKind as PartKinds, parsedPart } from "../../shared/model/parts/partKinds.ts";
import { Project } from "../../shared/model/project.ts";
import { Run } from "../../shared/model/run.ts";
import type { VehicleBuildInput } from "../../shared/model/vehicle/vehicleBuild.ts";
import { enterRun } from "../intake/newRun.ts";
import type { ReceivedFile } from "../store/fileVault.ts";
import type { Store } from "../store/store.ts";

type Keys = Readonly<Record<string, string>>;
/** For each kind of part: the id of each key of the demonstration. */
type Given = Readonly<Record<PartKind, Keys>>;

/**
 * Puts the demonstration into a store that has never held a project; does nothing otherwise.
 * The logs are kept first, then everything is entered together: killed half way, the next start begins anew.
 */
export async function loadDemo(store: Store, demo: Demo, folder: URL): Promise<void> {
  if (!store.projects.neverUsed()) return;
  const files = new Map<string, ReceivedFile>();
  for (const { file } of demo.runs) {
    const received = await store.files.receive(createReadStream(new URL(file, folder)));
    await store.files.keep(received);
    files.set(file, received);
  }
  store.transaction(() => {
    // Vehicles name parts and belong to the project, so the parts have their identities before there is a project.
    const given = identities(demo);
    const vehicles = demo.vehicles.map((vehicle) => withIdentities(vehicle, given));
    const { id } = store.projects.add(Project.parse({ ...demo.project, vehicles }));
    for (const kind of PartKinds.options) enterParts(store, id, demo, { kind, ids: given[kind] });
    for (const run of demo.runs) {
      const received = files.get(run.file) as ReceivedFile;
      enterRun(store, id, { file: received, run: document(run, received, given) });
    }
  });
}

function identities(demo: Demo): Given {
  const ofKind = (kind: PartKind): Keys =>
    Object.fromEntries(Object.keys(demo[kind]).map((key) => [key, randomUUID()]));
  return Object.fromEntries(PartKinds.options.map((kind) => [kind, ofKind(kind)])) as Given;
}

function enterParts<K extends PartKind>(
  store: Store,
  projectId: string,
  demo: Demo,
  { kind, ids }: { readonly kind: K; readonly ids: Keys },
): void {
  const shelf = store.parts(projectId, kind);
  for (const [key, part] of Object.entries(demo[kind])) {
    shelf.add(parsedPart(kind, part), ids[key]);
  }
}

/** A vehicle of the demonstration with identities in place of the keys of its parts. */
function withIdentities(
  vehicle: VehicleBuildInput,
  { motors, controllers, gears, packs, tethers }: Given,
): VehicleBuildInput {
  const named = (ids: Keys, key: string) => {
    const id = ids[key];
    if (id === undefined) throw new Error(`${vehicle.name} names a part "${key}" that the demonstration lacks`);
    return id;
  };
  return {
    ...vehicle,
    drives: vehicle.drives.map((drive) => ({
      ...drive,
      motorId: named(motors, drive.motorId),
      ...(drive.controllerId !== undefined && { controllerId: named(controllers, drive.controllerId) }),
      ...(drive.gearId !== undefined && { gearId: named(gears, drive.gearId) }),
    })),
    supply: { ...vehicle.supply, packId: named(packs, vehicle.supply.packId) },
    ...(vehicle.tether && { tether: { ...vehicle.tether, tetherId: named(tethers, vehicle.tether.tetherId) } }),
  };
}

function document(run: DemoRun, { sha256, size }: ReceivedFile, given: Given): Run {
  const { propellers, motors, controllers, instruments } = given;
  const { name, variant, mounting, note } = run;
  return Run.parse({
    name,
    variant,
    mounting,
    note,
    ...(run.purpose && { purpose: run.purpose }),
    ...(run.propeller !== undefined && { propellerId: propellers[run.propeller] }),
    file: { name: basename(run.file), sha256, size },
    recipe: {
      ...run.recipe,
      motorId: motors[run.motor],
      controllerId: controllers[run.controller],
      ...(run.thrustInstrument && { instrumentIds: { thrust: instruments[run.thrustInstrument] } }),
    },
    confirmed: true,
  });
}

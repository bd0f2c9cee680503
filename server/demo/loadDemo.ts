import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { Demo, DemoRun } from "../../samples/demo.ts";
import { PART_SCHEMAS, type PartKind, PartKind as PartKinds } from "../../shared/model/parts/partKinds.ts";
import { Project } from "../../shared/model/project.ts";
import { Run } from "../../shared/model/run.ts";
import { enterRun } from "../intake/newRun.ts";
import type { ReceivedFile } from "../store/fileVault.ts";
import type { Store } from "../store/store.ts";

type Keys = Readonly<Record<string, string>>;
/** For each kind of part: the id the store gave to each key of the demonstration. */
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
    const { id } = store.projects.add(Project.parse(demo.project));
    const given = Object.fromEntries(
      PartKinds.options.map((kind) => [kind, enterParts(store, id, demo, kind)]),
    ) as Given;
    for (const run of demo.runs) {
      const received = files.get(run.file) as ReceivedFile;
      enterRun(store, id, { file: received, run: document(run, received, given) });
    }
  });
}

function enterParts(store: Store, projectId: string, demo: Demo, kind: PartKind): Keys {
  const entered = Object.entries(demo[kind]).map(([key, part]) => {
    const shelf = store.parts(projectId, kind);
    return [key, shelf.add(PART_SCHEMAS[kind].parse(part) as never).id] as const;
  });
  return Object.fromEntries(entered);
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

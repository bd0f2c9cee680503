import type { PartKind, PartOf } from "../../shared/model/parts/partKinds.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { Recording } from "../../shared/model/recording.ts";
import { PROGRAM } from "../program.ts";
import type { Store } from "../store/store.ts";
import type { LiveJob } from "../work/jobs.ts";
import { instrumentsOf } from "../work/runJobs.ts";
import type { WholeLines } from "./growingLog.ts";

/** Steps that the trace of a recording is drawn in. */
const POINTS = 1200;

/** Everything that the result of a recording depends on now. A part that was deleted meanwhile counts as not stated. */
export function liveJob(store: Store, projectId: string, recording: Recording, whole: WholeLines): LiveJob {
  const { recipe, propellerId, purpose, fileName } = recording;
  const { path, sha256, bytes, lines } = whole;
  const propeller = partOf(store, projectId, "propellers", purpose === "propeller" ? propellerId : undefined);
  const motor = partOf(store, projectId, "motors", recipe.motorId);
  const controller = partOf(store, projectId, "controllers", recipe.controllerId);
  return {
    kind: "live",
    file: { path, sha256, name: fileName, size: bytes, ...(recipe.reading && { reading: recipe.reading }) },
    lines,
    recipe,
    ...(propeller && { propeller }),
    ...(motor && { motor }),
    ...(controller && { controller }),
    ...instrumentsOf(store, projectId, withoutDeleted(store, projectId, recipe)),
    points: POINTS,
    program: PROGRAM,
  };
}

function partOf<K extends PartKind>(store: Store, projectId: string, kind: K, id?: string): PartOf[K] | undefined {
  const shelf = store.parts(projectId, kind);
  return id !== undefined && shelf.has(id) ? shelf.find(id).document : undefined;
}

function withoutDeleted(store: Store, projectId: string, recipe: Recipe): Recipe {
  const shelf = store.parts(projectId, "instruments");
  const there = Object.entries(recipe.instrumentIds ?? {}).filter(([, id]) => shelf.has(id));
  return { ...recipe, instrumentIds: Object.fromEntries(there) };
}

import { ROLE_NAMES } from "../../shared/log/roleUnits.ts";
import { InstrumentRole, type UsedInstruments } from "../../shared/model/instrument.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { PROGRAM } from "../program.ts";
import type { Store } from "../store/store.ts";
import type { CompanionLog, InspectJob, LogFile, ReduceJob } from "./jobs.ts";

/** The log a run rests on. */
export function logOf(store: Store, { file, recipe }: Run): LogFile {
  return keptLog(store, file, recipe);
}

function keptLog(store: Store, { name, sha256, size }: Run["file"], { reading }: Pick<Recipe, "reading">): LogFile {
  return { path: store.files.path(sha256), sha256, name, size, ...(reading && { reading }) };
}

/** The electrical log recorded beside it, as `{ companion }`, or nothing. */
export function companionOf(store: Store, { companion }: Run): { readonly companion?: CompanionLog } {
  if (companion === undefined) return {};
  const { file, columns, lag } = companion;
  return { companion: { columns, lag, file: keptLog(store, file, companion) } };
}

/** The electrical log of a run that has one. Throws InputProblem `run.no-companion`. */
export function companionLog(store: Store, run: Run): CompanionLog {
  const { companion } = companionOf(store, run);
  if (companion) return companion;
  throw new InputProblem({
    code: "run.no-companion",
    where: `Run ${run.name}`,
    found: "The run has no electrical log of its own",
    needed: "a second log of the same run",
    mend: "Send it first",
  });
}

/** A first look at the log of a run, with what its readings would mean where its propeller is known. */
export function inspectJob(store: Store, projectId: string, run: Run): InspectJob {
  const { propellerId, confirmed, recipe } = run;
  const file = logOf(store, run);
  const [propellers, motors] = [store.parts(projectId, "propellers"), store.parts(projectId, "motors")];
  if (propellerId === undefined || !propellers.has(propellerId)) return { kind: "inspect", file };
  const motor = recipe.motorId !== undefined && motors.has(recipe.motorId) ? motors.find(recipe.motorId) : undefined;
  const propeller = propellers.find(propellerId).document;
  const stand = { propeller, ...(motor && { motor: motor.document }), ...instrumentsOf(store, projectId, recipe) };
  return { kind: "inspect", file, run: { recipe, confirmed, ...stand }, ...companionOf(store, run) };
}

/** Everything the reduction of a run depends on. Throws InputProblem `run.no-propeller` or `run.no-such-part`. */
export function reduceJob(store: Store, projectId: string, { document: run }: StoredDocument<Run>): ReduceJob {
  if (run.purpose !== "propeller") throw withoutPropeller(run);
  if (run.propellerId === undefined) throw noPropeller(run);
  checkParts(store, projectId, run);
  const { motorId, controllerId } = run.recipe;
  const part = <K extends "propellers" | "motors" | "controllers">(kind: K, id: string) =>
    store.parts(projectId, kind).find(id).document;
  return {
    kind: "reduce",
    file: logOf(store, run),
    recipe: run.recipe,
    ...companionOf(store, run),
    propeller: part("propellers", run.propellerId),
    ...(motorId !== undefined && { motor: part("motors", motorId) }),
    ...(controllerId !== undefined && { controller: part("controllers", controllerId) }),
    ...instrumentsOf(store, projectId, run.recipe),
    program: PROGRAM,
  };
}

/** The instruments behind the channels of a run. Throws NothingThere for one that was deleted. */
export function instrumentsOf(store: Store, projectId: string, { instrumentIds }: Recipe) {
  if (instrumentIds === undefined) return {};
  const shelf = store.parts(projectId, "instruments");
  const used = InstrumentRole.options.flatMap((role) => {
    const id = instrumentIds[role];
    return id === undefined ? [] : [[role, { id, instrument: shelf.find(id).document }] as const];
  });
  return { instruments: Object.fromEntries(used) as UsedInstruments };
}

/** Refuses a run that names a part its project does not have. Throws InputProblem `run.no-such-part`. */
export function checkParts(
  store: Store,
  projectId: string,
  { propellerId, recipe }: Pick<Run, "propellerId" | "recipe">,
): void {
  const named = [
    ["propellers", "document.propellerId", propellerId],
    ["motors", "document.recipe.motorId", recipe.motorId],
    ["controllers", "document.recipe.controllerId", recipe.controllerId],
  ] as const;
  for (const [kind, where, id] of named) {
    if (id !== undefined && !store.parts(projectId, kind).has(id)) throw noSuchPart(kind, where, id);
  }
  checkInstruments(store, projectId, recipe);
}

/** Refuses an instrument that is not there or measures something else. Throws InputProblem `run.no-such-part` or `run.other-role`. */
function checkInstruments(store: Store, projectId: string, { instrumentIds = {} }: Recipe): void {
  const shelf = store.parts(projectId, "instruments");
  for (const role of InstrumentRole.options) {
    const id = instrumentIds[role];
    const where = `document.recipe.instrumentIds.${role}`;
    if (id === undefined) continue;
    if (!shelf.has(id)) throw noSuchPart("instruments", where, id);
    const { name, role: measures } = shelf.find(id).document;
    if (measures !== role) throw otherRole(where, name, measures, role);
  }
}

/** Refuses a second log that was never received. Throws InputProblem `run.no-such-file`. */
export function checkCompanion(store: Store, { companion }: Run): void {
  if (companion === undefined || store.hasFile(companion.file.sha256)) return;
  throw new InputProblem({
    code: "run.no-such-file",
    where: "document.companion.file",
    found: `There is no file with the SHA-256 ${companion.file.sha256.slice(0, 12)}…`,
    needed: "a log that was sent to this run",
    mend: "Send the electrical log first, and name what comes back",
  });
}

/** Refuses a run that was given other bytes than it was made from. Throws InputProblem `run.other-file`. */
export function checkSameFile(before: Run, after: Run): void {
  const { sha256, size, name } = before.file;
  if (after.file.sha256 === sha256 && after.file.size === size && after.file.name === name) return;
  throw new InputProblem({
    code: "run.other-file",
    where: "document.file",
    found: `The run was made from ${name}, which is kept as it came`,
    needed: "the same file",
    mend: "Add the other log as a run of its own",
  });
}

function withoutPropeller({ name }: Run): InputProblem {
  return new InputProblem({
    code: "run.without-propeller",
    where: `Run ${name}`,
    found:
      "This is a run without propeller: it has no thrust and no coefficients, and tells the constants of the motor instead",
    needed: "a run with a propeller",
    mend: "Ask for its voltage, current and speed (…/electrical), or identify the motor from it under Parts",
  });
}

function noPropeller({ name }: Run): InputProblem {
  return new InputProblem({
    code: "run.no-propeller",
    where: `Run ${name}`,
    found: "It is not said which propeller was on the stand",
    needed: "a propeller, for its diameter",
    mend: "Choose the propeller of this run",
  });
}

function otherRole(where: string, name: string, measures: InstrumentRole, asked: InstrumentRole): InputProblem {
  return new InputProblem({
    code: "run.other-role",
    where,
    found: `${name} is an instrument for ${ROLE_NAMES[measures]}`,
    needed: `one for ${ROLE_NAMES[asked]}`,
    mend: "Choose another, or change what it measures",
  });
}

function noSuchPart(kind: string, where: string, id: string): InputProblem {
  return new InputProblem({
    code: "run.no-such-part",
    where,
    found: `There is none of the ${kind} with id ${id} in this project, or it was deleted`,
    needed: `one of the ${kind} of this project`,
    mend: "Choose another, or restore it",
  });
}

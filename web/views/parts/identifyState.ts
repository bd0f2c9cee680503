import { computed, effect, signal } from "@preact/signals";
import type { MotorIdentification } from "../../../shared/model/motorIdentification.ts";
import { MotorIdentificationRequest } from "../../../shared/model/motorIdentification.ts";
import { identifyMotor } from "../../../shared/motor/identifyMotor.ts";
import { likelyFullCommand, readingsFrom } from "../../../shared/motor/identifyReadings.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { readElectrical } from "../../api/client.ts";
import { openProjectId, partOf, runs } from "../../app/session.ts";
import { candidateRuns, type ElectricalState, runsToBeginWith } from "./identifyModel.ts";

/** The motor that is being identified; null while the dialog is closed. */
export const identifiedMotorId = signal<string | null>(null);
/** Runs a person ticked; null: those to begin with. */
const ticked = signal<ReadonlySet<string> | null>(null);
/** Command of full throttle as typed; null: the likely one. */
export const typedFullCommand = signal<number | null>(null);
/** Whether rows without a command, as in a typed table, were all at full throttle. */
export const uncommandedIsFull = signal(false);
/** Winding resistance measured by other means, with its standard uncertainty; null: none. */
export const statedResistance = signal<number | null>(null);
export const statedResistanceDoubt = signal<number | null>(null);
/** Plateaus by run and version, so that an edited run is read again. */
const electrical = signal<ReadonlyMap<string, ElectricalState>>(new Map());

export function openIdentification(motorId: string): void {
  identifiedMotorId.value = motorId;
  ticked.value = null;
  typedFullCommand.value = null;
  uncommandedIsFull.value = false;
  statedResistance.value = null;
  statedResistanceDoubt.value = null;
}

export const candidates = computed(() =>
  identifiedMotorId.value === null ? [] : candidateRuns(runs.value, identifiedMotorId.value),
);
export const chosen = computed(() => ticked.value ?? runsToBeginWith(candidates.value));

export function toggleRun(id: string): void {
  const next = new Set(chosen.value);
  if (!next.delete(id)) next.add(id);
  ticked.value = next;
}

const keyOf = (id: string) => `${id} ${runs.value.find((run) => run.id === id)?.version ?? 0}`;
export const electricalOf = (id: string): ElectricalState => electrical.value.get(keyOf(id));

/** Reads the plateaus of the candidates while the dialog is open; the returned function stops it. */
export function followCandidates(): () => void {
  const asked = new Set<string>();
  return effect(() => {
    for (const { id } of candidates.value) {
      const key = keyOf(id);
      if (asked.has(key)) continue;
      asked.add(key);
      const keep = (read: ElectricalState) => {
        electrical.value = new Map(electrical.peek()).set(key, read);
      };
      readElectrical(openProjectId(), id).then(keep, (thrown) => keep(sentenceOf(thrown)));
    }
  });
}

const readRuns = computed(() =>
  candidates.value.flatMap(({ id, document }) => {
    const run = electricalOf(id);
    return chosen.value.has(id) && run !== undefined && typeof run !== "string" ? [{ document, run }] : [];
  }),
);

/** Whether a chosen run has no command column. */
export const hasUncommanded = computed(() => readRuns.value.some(({ run }) => run.commandUnit === null));
export const commandUnit = computed(
  () => readRuns.value.find(({ run }) => run.commandUnit !== null)?.run.commandUnit ?? "",
);
/** Command taken as full throttle: as typed, else the likely one over all candidates. */
export const fullCommand = computed(
  () =>
    typedFullCommand.value ??
    likelyFullCommand(
      candidates.value.flatMap(({ id }) => {
        const run = electricalOf(id);
        return run !== undefined && typeof run !== "string" ? [run] : [];
      }),
    ),
);

export interface Identified {
  readonly result: MotorIdentification | null;
  readonly problem: string;
}

export const identified = computed((): Identified => {
  const used = readRuns.value;
  const waiting = candidates.value.some(({ id }) => chosen.value.has(id) && electricalOf(id) === undefined);
  if (waiting) return { result: null, problem: "Reading the runs …" };
  if (used.length === 0) return { result: null, problem: "Choose at least one run." };
  const controllerId = used.find(({ document }) => document.recipe.controllerId)?.document.recipe.controllerId;
  const readings = readingsFrom(
    used.map(({ document, run }) => ({
      name: document.name,
      purpose: document.purpose,
      run,
      fullCommand: run.commandUnit === null && uncommandedIsFull.value ? "all" : fullCommand.value,
    })),
  );
  const stated = statedResistance.value;
  try {
    const request = MotorIdentificationRequest.parse({
      ...readings,
      controllerResistance: partOf("controllers", controllerId)?.document.resistance ?? 0,
      stated:
        stated === null ? {} : { resistance: { value: stated, standardUncertainty: statedResistanceDoubt.value ?? 0 } },
    });
    return { result: identifyMotor(request), problem: "" };
  } catch (thrown) {
    return { result: null, problem: sentenceOf(thrown) };
  }
});

import type { LiveResult, Recording, StoredRecording } from "../../../../shared/model/recording.ts";
import type { Reduction } from "../../../../shared/model/reduction.ts";
import type { Run } from "../../../../shared/model/run.ts";
import { formatUncertain } from "../../../../shared/quantity/format.ts";
import { counts, joined } from "../../../app/words.ts";
import { counted } from "./countWords.ts";

/** What the answer of a recording rests on. */
export interface LiveState {
  readonly recording: StoredRecording;
  readonly result: LiveResult | null;
  /** This page reads a port for it. */
  readonly isReading: boolean;
}

/** The recording as the run it would be now; what is edited as a run goes back by `asRecording`. */
export function asRun({ document, held }: StoredRecording, result: LiveResult | null): Run {
  const { fileName, ...rest } = document;
  const columns = result?.columns ?? document.recipe.columns;
  const file = { name: fileName, sha256: result?.sha256 ?? "", size: held.bytes };
  return { ...rest, recipe: { ...rest.recipe, columns }, file };
}

/** An edit of a run as an edit of the recording that will be one. */
export function asRecordingEdit(change: (run: Run) => Run): (recording: Recording) => Recording {
  return ({ fileName, ...rest }) => {
    const {
      file: _file,
      companion: _companion,
      ...run
    } = change({
      ...rest,
      file: { name: fileName, sha256: "", size: 0 },
    });
    return { ...run, fileName };
  };
}

/** Why there is no coefficient yet, where more lines are all it takes. */
const MORE_IS_NEEDED: Readonly<Record<string, string>> = {
  "log.empty": "No row of numbers among them yet.",
  "log.no-numbers": "No row of numbers among them yet.",
  "log.one-column": "No row of numbers among them yet.",
  "bench.no-rows": "No row of numbers among them yet.",
  "bench.no-times": "No row of numbers among them yet.",
  "bench.too-few-plateaus":
    "A thrust coefficient needs two steps of throttle, each held for some seconds; not there yet.",
  "bench.no-thrust": "A thrust coefficient needs two steps of throttle at which it pushes; not there yet.",
  "bench.one-speed": "One step so far; the thrust coefficient needs a second one at another rotation rate.",
};

const NOTHING_YET = "No line has come yet. Connect the serial port of the stand, or let a program post its lines.";
const NOTHING_FROM_PORT = "The port is open and no line has come yet. Does the stand write, and at this baud rate?";

/** One sentence that answers "What does this log say so far?". */
export function liveAnswer({ recording, result, isReading }: LiveState): string {
  const { held, document } = recording;
  if (held.bytes === 0) return isReading ? NOTHING_FROM_PORT : NOTHING_YET;
  if (result === null) return `${counted(held.lines, "line")} so far. Looking at them …`;
  const rows = result.inspection?.rows ?? 0;
  const soFar = rows > 0 ? `${counted(rows, "row")} so far.` : `${counted(held.lines, "line")} so far.`;
  if (result.reduction !== null) return coefficientSoFar(result.reduction);
  const early = MORE_IS_NEEDED[result.problem?.code ?? ""];
  if (rows === 0) return `${soFar} ${early ?? result.problem?.message ?? ""}`.trim();
  const unnamed = unnamedColumns(document, result);
  if (unnamed.length > 0) return `${soFar} Say below which column is ${joined(unnamed)}.`;
  if (document.purpose !== "propeller")
    return `${soFar} A motor without propeller has no thrust coefficient; its constants come from the kept run.`;
  if (document.propellerId === undefined)
    return `${soFar} Say below which propeller is on the stand: coefficients go with its diameter.`;
  return `${soFar} ${early ?? `No thrust coefficient yet. ${result.problem?.message ?? ""}`}`;
}

/** Whether something waits for the person at the page, and not only for more lines. */
export function needsPerson({ recording, result }: Omit<LiveState, "isReading">): boolean {
  if (result === null || result.reduction !== null) return false;
  return result.problem !== null && !Object.hasOwn(MORE_IS_NEEDED, result.problem.code) && recording.held.bytes > 0;
}

function unnamedColumns({ purpose }: Recording, { columns }: LiveResult): string[] {
  const has = (role: string) => columns.some((use) => use.role === role);
  return [
    ...(purpose === "propeller" && !has("thrust") ? ["thrust"] : []),
    ...(has("rotationRate") ? [] : ["rotation rate"]),
  ];
}

function coefficientSoFar(reduction: Reduction): string {
  const used = reduction.plateaus.filter(({ used }) => used).length;
  const from = reduction.sweep ? "a ramp" : counts(used, "plateau");
  return `The thrust coefficient so far is ${formatUncertain(reduction.thrustCoefficient)}, from ${from}${zeroStillMissing(reduction)}.`;
}

/** What the zero of the scale still lacks, as the end of a sentence; empty where it lacks nothing. */
function zeroStillMissing({ tare: { windows }, plateaus }: Reduction): string {
  const first = plateaus[0]?.span.start ?? 0;
  const last = plateaus.at(-1)?.span.end ?? 0;
  const before = windows.some(({ start }) => start < first);
  const after = windows.some(({ end }) => end > last);
  if (before && after) return "; the zero is there before and after them";
  if (before) return "; the zero at the end is still missing: let it rest before you stop";
  if (after) return "; the zero before the first of them is missing";
  return "; no zero of the scale yet: let it rest for some seconds";
}

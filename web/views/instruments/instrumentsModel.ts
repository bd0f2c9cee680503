import type { Calibration } from "../../../shared/calibration/calibration.ts";
import { calibrationOf } from "../../../shared/calibration/calibrationOf.ts";
import { calibrationWarnings } from "../../../shared/calibration/calibrationWarnings.ts";
import { calibrationSentence, percent } from "../../../shared/calibration/calibrationWords.ts";
import { factorParts } from "../../../shared/calibration/factorParts.ts";
import type { Instrument, InstrumentRole, MethodKind } from "../../../shared/model/instrument.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { InputProblem } from "../../../shared/quantity/problem.ts";
import type { Warning } from "../../../shared/quantity/warning.ts";
import { counts } from "../../app/words.ts";

export const CHANNEL_NAMES: { readonly [R in InstrumentRole]: string } = {
  thrust: "Thrust",
  torque: "Torque",
  voltage: "Voltage",
  current: "Current",
  rotationRate: "Rotation rate",
};

/** How each method is offered. */
export const METHOD_NAMES: { readonly [K in MethodKind]: string } = {
  deadWeights: "Dead weights hung on the stand",
  lever: "Lever arms only; the scale is trusted",
  torqueArm: "Force of a scale on an arm",
  comparison: "Several readings beside a reference meter",
  reference: "One reading beside a reference meter",
  divider: "Voltage divider of two resistors",
  markers: "Blades or markers counted in a turn",
};

/** What an instrument is worth, or why it can not be told. */
export interface InstrumentLook {
  readonly sentence: string;
  readonly calibration: Calibration | null;
  readonly warnings: readonly Warning[];
  /** Causes of the doubt of the factor, greatest first: name and standard uncertainty in per cent. */
  readonly budget: readonly { readonly name: string; readonly text: string }[];
}

export function lookAt(instrument: Instrument): InstrumentLook {
  try {
    const calibration = calibrationOf(instrument);
    return {
      sentence: calibrationSentence(instrument, calibration),
      calibration,
      warnings: calibrationWarnings(instrument, calibration),
      budget: factorParts(calibration).map(({ name, relative }) => ({ name, text: percent(relative) })),
    };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { sentence: thrown.message, calibration: null, warnings: [], budget: [] };
  }
}

export interface InstrumentRow {
  readonly id: string;
  readonly name: string;
  readonly channel: string;
  readonly method: string;
  readonly look: InstrumentLook;
  readonly note: string;
  /** "6 runs", empty where none. */
  readonly use: string;
}

export function instrumentRows(
  stored: readonly StoredDocument<Instrument>[],
  runs: readonly StoredDocument<Run>[],
): InstrumentRow[] {
  return stored.map(({ id, document }) => ({
    id,
    name: document.name,
    channel: CHANNEL_NAMES[document.role],
    method: METHOD_NAMES[document.calibration.kind],
    look: lookAt(document),
    note: document.note,
    use: useOf(id, runs),
  }));
}

/** In how many runs an instrument stands behind a channel. */
export function useOf(id: string, runs: readonly StoredDocument<Run>[]): string {
  const count = runs.filter(({ document }) => Object.values(document.recipe.instrumentIds ?? {}).includes(id)).length;
  return count === 0 ? "" : counts(count, "run");
}

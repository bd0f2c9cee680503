import { pointsOf } from "../../../shared/calibration/calibrationTable.ts";
import { readLog } from "../../../shared/log/readLog.ts";
import { Instrument, type InstrumentRole, METHODS_OF, type MethodKind } from "../../../shared/model/instrument.ts";
import { STANDARD_GRAVITY } from "../../../shared/quantity/constants.ts";
import { numberFrom } from "../parts/partDraft.ts";

/** A row of the table as it is typed. */
export interface DraftRow {
  readonly applied: string;
  readonly reading: string;
}

/** What stands in the form: SI numbers or null, texts, rows as typed. Fields of other methods keep what was in them. */
export interface InstrumentDraft {
  readonly name: string;
  readonly role: InstrumentRole;
  readonly kind: MethodKind;
  readonly note: string;
  readonly appliedUnit: string;
  readonly readingUnit: string;
  readonly rows: readonly DraftRow[];
  readonly resolution: number | null;
  /** Relative half-widths. */
  readonly appliedTolerance: number | null;
  readonly readingTolerance: number | null;
  readonly resistorTolerance: number | null;
  readonly gravity: number | null;
  readonly hungAt: "scale" | "propeller";
  readonly scaleArm: number | null;
  readonly scaleArmTolerance: number | null;
  readonly propellerArm: number | null;
  readonly propellerArmTolerance: number | null;
  readonly arm: number | null;
  readonly armTolerance: number | null;
  readonly reference: DraftRow;
  readonly upperResistance: number | null;
  readonly lowerResistance: number | null;
  readonly pulsesPerTurn: number | null;
}

const NO_ROW: DraftRow = { applied: "", reading: "" };
const UNITS: { readonly [R in InstrumentRole]: readonly [applied: string, reading: string] } = {
  thrust: ["g", "gf"],
  torque: ["g", "N·m"],
  voltage: ["V", "V"],
  current: ["A", "A"],
  rotationRate: ["rpm", "rpm"],
};

/** Nothing known yet of an instrument for `role`. */
export function emptyDraft(role: InstrumentRole = "thrust"): InstrumentDraft {
  const [appliedUnit, readingUnit] = UNITS[role];
  return {
    ...{ name: "", role, kind: METHODS_OF[role][0]!, note: "", appliedUnit, readingUnit },
    rows: Array.from({ length: 5 }, () => NO_ROW),
    ...{ resolution: null, appliedTolerance: null, readingTolerance: null, resistorTolerance: null },
    ...{ gravity: STANDARD_GRAVITY, hungAt: "propeller", scaleArm: null, scaleArmTolerance: null },
    ...{ propellerArm: null, propellerArmTolerance: null, arm: null, armTolerance: null, reference: NO_ROW },
    ...{ upperResistance: null, lowerResistance: null, pulsesPerTurn: null },
  };
}

/** The draft for another channel: the first method and the usual units of it; name, note and rows stay. */
export function withRole(draft: InstrumentDraft, role: InstrumentRole): InstrumentDraft {
  const { kind, appliedUnit, readingUnit } = emptyDraft(role);
  return { ...draft, role, kind, appliedUnit, readingUnit };
}

/** A stored instrument in the form. */
export function draftOfInstrument({ name, role, note, calibration: method, resolution }: Instrument): InstrumentDraft {
  const row = ({ applied, reading }: { applied: number; reading: number }) => ({
    applied: String(applied),
    reading: String(reading),
  });
  const arms = "lever" in method ? method.lever : method.kind === "lever" ? method : undefined;
  const arm = "arm" in method ? method.arm : undefined;
  return {
    ...emptyDraft(role),
    ...{ name, note, kind: method.kind, resolution: resolution ?? null },
    ...("appliedUnit" in method && { appliedUnit: method.appliedUnit }),
    ...("readingUnit" in method && { readingUnit: method.readingUnit }),
    ...("points" in method && { rows: [...method.points.map(row), NO_ROW] }),
    ...("appliedTolerance" in method && { appliedTolerance: method.appliedTolerance }),
    ...("readingTolerance" in method && { readingTolerance: method.readingTolerance }),
    ...("gravity" in method && { gravity: method.gravity, hungAt: method.lever ? "scale" : "propeller" }),
    ...(arms && {
      ...{ scaleArm: arms.scaleArm.length, scaleArmTolerance: arms.scaleArm.tolerance },
      ...{ propellerArm: arms.propellerArm.length, propellerArmTolerance: arms.propellerArm.tolerance },
    }),
    ...(arm && { arm: arm.length, armTolerance: arm.tolerance }),
    ...(method.kind === "reference" && { reference: row(method), appliedUnit: method.unit }),
    ...(method.kind === "divider" && method),
    ...(method.kind === "markers" && { pulsesPerTurn: method.pulsesPerTurn }),
    kind: method.kind,
  };
}

/** The document of a draft, or what is still missing, whole sentences. */
export function instrumentOf(draft: InstrumentDraft): { instrument: Instrument | null; missing: readonly string[] } {
  const missing: string[] = [];
  const calibration = methodOf(draft, missing);
  const { name, role, note, resolution } = draft;
  const hasTable = draft.kind === "deadWeights" || draft.kind === "comparison";
  if (missing.length > 0) return { instrument: null, missing };
  const read = Instrument.safeParse({
    ...{ name: name.trim() || "New instrument", role, note, calibration },
    ...(hasTable && resolution !== null && resolution > 0 && { resolution }),
  });
  if (read.success) return { instrument: read.data, missing };
  const { path, message } = read.error.issues[0]!;
  return { instrument: null, missing: [`${path.map(String).join(" ")}: ${message}.`] };
}

function methodOf(draft: InstrumentDraft, missing: string[]): object {
  const needed = (value: number | null, what: string): number => {
    if (value === null || !(value > 0)) missing.push(`Needed: ${what}.`);
    return value ?? 0;
  };
  const arm = (length: number | null, tolerance: number | null, what: string) => ({
    length: needed(length, what),
    tolerance: tolerance ?? 0,
  });
  const arms = () => ({
    scaleArm: arm(draft.scaleArm, draft.scaleArmTolerance, "the arm of the scale"),
    propellerArm: arm(draft.propellerArm, draft.propellerArmTolerance, "the arm of the propeller"),
  });
  const { kind, appliedUnit, readingUnit } = draft;
  const appliedTolerance = draft.appliedTolerance ?? 0;
  const readingTolerance = draft.readingTolerance ?? 0;
  const table = () => ({ kind, appliedUnit, readingUnit, appliedTolerance, points: pointsIn(draft.rows, missing) });
  switch (kind) {
    case "deadWeights":
      return {
        ...table(),
        gravity: draft.gravity ?? STANDARD_GRAVITY,
        ...(draft.role === "thrust" && draft.hungAt === "scale" && { lever: arms() }),
        ...(draft.role === "torque" && { arm: arm(draft.arm, draft.armTolerance, "the arm of the weights") }),
      };
    case "comparison":
      return table();
    case "lever":
      return { kind, ...arms(), readingTolerance };
    case "torqueArm":
      return { kind, readingUnit, readingTolerance, arm: arm(draft.arm, draft.armTolerance, "the arm of the scale") };
    case "reference": {
      const [point] = pointsIn([draft.reference], missing);
      if (!point) missing.push("Needed: what the meter read and what the log read.");
      return { kind, unit: appliedUnit, appliedTolerance, ...point };
    }
    case "divider":
      return {
        kind,
        upperResistance: needed(draft.upperResistance, "the resistor from the supply to the tap"),
        lowerResistance: needed(draft.lowerResistance, "the resistor from the tap to ground"),
        resistorTolerance: draft.resistorTolerance ?? 0,
      };
    case "markers":
      return { kind, pulsesPerTurn: needed(draft.pulsesPerTurn, "the number of blades or markers") };
  }
}

/** The rows that are filled; one that is half filled or unreadable is told. */
function pointsIn(rows: readonly DraftRow[], missing: string[]): { applied: number; reading: number }[] {
  const points = rows.flatMap(({ applied, reading }, at) => {
    if (applied.trim() === "" && reading.trim() === "") return [];
    const point = { applied: numberFrom(applied), reading: numberFrom(reading) };
    if (point.applied !== null && point.reading !== null) return [{ applied: point.applied, reading: point.reading }];
    missing.push(`Row ${at + 1} needs two numbers, and has "${applied}" and "${reading}".`);
    return [];
  });
  if (rows.length > 1 && points.length < 3) missing.push(`Needed: three points or more; ${points.length} so far.`);
  return points;
}

/** What was pasted, as rows, with the units of its header if it has one; null where it is no table of two columns. */
export function pasted(text: string): (Pick<InstrumentDraft, "rows"> & Partial<InstrumentDraft>) | null {
  if (!/[\r\n]/.test(text.trim())) return null;
  try {
    const { appliedUnit, readingUnit, points } = pointsOf(readLog(new TextEncoder().encode(text), "pasted table"));
    const rows = points.map(({ applied, reading }) => ({ applied: String(applied), reading: String(reading) }));
    return {
      rows: [...rows, NO_ROW],
      ...(appliedUnit !== "" && { appliedUnit }),
      ...(readingUnit !== "" && { readingUnit }),
    };
  } catch {
    return null;
  }
}

/** One cell changed; the last row is always an empty one to go on with. */
export function withCell(
  rows: readonly DraftRow[],
  at: number,
  column: keyof DraftRow,
  text: string,
): readonly DraftRow[] {
  const next = rows.with(at, { ...rows[at]!, [column]: text });
  const last = next.at(-1)!;
  return last.applied === "" && last.reading === "" ? next : [...next, NO_ROW];
}

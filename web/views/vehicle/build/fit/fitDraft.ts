import type { LogTable } from "../../../../../shared/log/logTable.ts";
import type { DragColumn, DragColumnUse, DragQuantity } from "../../../../../shared/model/vehicle/dragChannels.ts";
import type { DragFitData, TerminalData } from "../../../../../shared/model/vehicle/dragFit.ts";
import { InputProblem, OutOfDomain } from "../../../../../shared/quantity/problem.ts";
import type { Warning } from "../../../../../shared/quantity/warning.ts";
import { type DragChannels, dragChannels } from "../../../../../shared/vehicle/drag/dragChannels.ts";
import { thinnedColumns } from "../../../../../shared/vehicle/drag/thinnedColumns.ts";

export type FitMethod = DragFitData["method"];

/** What is asked besides the log; numbers are SI, relative uncertainties are shares. */
export interface FitAsked {
  readonly method: FitMethod;
  /** Coast-down: what the log holds. Timed runs: what each row states. */
  readonly by: "speed" | "distance";
  readonly hasLinear: boolean;
  /** The rows of timed runs go there and back in turn. */
  readonly alternates: boolean;
  /** With the water it encloses, kg. */
  readonly mass: number;
  readonly massDoubt: number;
  /** Of the run that is on the table, N; null until it is typed. */
  readonly netWeight: number | null;
  /** Steady from this time of the log on, s; null: from the first row. */
  readonly steadyFrom: number | null;
  /** Only rows from this time of the log on and up to that one, s. */
  readonly from: number | null;
  readonly to: number | null;
  /** Of what stands first and second in the method: speed and force, values, thrust and speed, net weight and depth. */
  readonly doubts: readonly [number, number];
  /** Columns that a person named. */
  readonly stated: readonly DragColumn[];
  /** Runs at terminal speed that were read before. */
  readonly runs: TerminalData["runs"];
  readonly note: string;
}

export const FRESH_ASK: Omit<FitAsked, "mass" | "massDoubt"> = {
  ...{ method: "tow", by: "speed", hasLinear: false, alternates: false, netWeight: null, steadyFrom: null },
  ...{ from: null, to: null, doubts: [0.02, 0.02], stated: [], runs: [], note: "" },
};

/** Quantities that the table must hold. */
export function neededOf({ method, by }: Pick<FitAsked, "method" | "by">): readonly DragQuantity[] {
  switch (method) {
    case "tow":
      return ["speed", "force"];
    case "coastDown":
      return ["time", by];
    case "timedRuns":
      return by === "speed" ? ["force", "speed"] : ["force", "distance", "time"];
    case "terminal":
      return ["time", "depth"];
  }
}

/** What was read from the table, or why it can not be used. */
export interface ReadFit {
  readonly data: DragFitData | null;
  readonly uses: readonly DragColumnUse[];
  readonly warnings: readonly Warning[];
  readonly problem: string;
  /** Rows read and rows kept, where some were averaged together. */
  readonly thinned: { readonly from: number; readonly to: number } | null;
}

const NOTHING: ReadFit = { data: null, uses: [], warnings: [], problem: "", thinned: null };

/** The measurement as the document keeps it, from a table and what was asked. */
export function readFit(table: LogTable | null, asked: FitAsked, density: number): ReadFit {
  if (table === null) {
    const isEnough = asked.method === "terminal" && asked.runs.length > 0;
    return isEnough ? { ...NOTHING, data: dataOf({}, asked, density) } : NOTHING;
  }
  try {
    const channels = dragChannels(table, { needed: neededOf(asked), stated: asked.stated });
    const whole = columnsOf(channels, asked);
    const columns = asked.method === "timedRuns" ? whole : thinnedColumns(whole);
    const [from, to] = [lengthOf(whole), lengthOf(columns)];
    return {
      ...{ uses: channels.uses, warnings: channels.warnings, problem: "" },
      data: dataOf(columns, asked, density),
      thinned: from === to ? null : { from, to },
    };
  } catch (thrown) {
    if (thrown instanceof InputProblem || thrown instanceof OutOfDomain) return { ...NOTHING, problem: thrown.message };
    throw thrown;
  }
}

type Columns = Readonly<Record<string, readonly number[]>>;
const lengthOf = (columns: Columns) => Math.max(0, ...Object.values(columns).map(({ length }) => length));

/** The columns that the method uses, within the stretch that was chosen. */
function columnsOf({ columns }: DragChannels, asked: FitAsked): Columns {
  const wanted = [...neededOf(asked), ...(asked.method === "tow" ? (["time"] as const) : [])];
  const taken = Object.fromEntries(wanted.flatMap((name) => (columns[name] ? [[name, columns[name]]] : [])));
  const { time } = taken;
  const { from, to } = asked;
  if (time === undefined || asked.method === "timedRuns" || (from === null && to === null)) return taken;
  const inside = time.map((t) => (from === null || t >= from) && (to === null || t <= to));
  if (!inside.includes(true)) {
    throw new InputProblem({
      code: "vehicle.fit-too-few",
      where: "rows",
      found: `no row lies in the stretch that was chosen; the log goes from ${time[0]} s to ${time.at(-1)} s`,
      needed: "a stretch inside the log",
      mend: "Change where it begins and ends",
    });
  }
  return Object.fromEntries(Object.entries(taken).map(([name, values]) => [name, values.filter((_, i) => inside[i])]));
}

function dataOf(columns: Columns, asked: FitAsked, density: number): DragFitData | null {
  const { method, by, doubts, note, mass, massDoubt } = asked;
  const [first, second] = doubts;
  const shared = { density, ...(note.trim() !== "" && { note: note.trim() }) };
  const model = asked.hasLinear ? "quadraticLinear" : "quadratic";
  const { time, speed, force, distance, depth } = columns as { [name: string]: number[] };
  switch (method) {
    case "tow":
      return {
        ...{ ...shared, method, model, speed: speed!, force: force! },
        ...(time && { time }),
        ...{ speedRelativeUncertainty: first, forceRelativeUncertainty: second },
      };
    case "coastDown":
      return {
        ...{ ...shared, method, model, measured: by, time: time!, values: (by === "speed" ? speed : distance)! },
        mass: { value: mass, standardUncertainty: massDoubt },
        valuesRelativeUncertainty: first,
      };
    case "timedRuns":
      return {
        ...{ ...shared, method, runs: timedRuns(columns, asked) },
        ...{ thrustRelativeUncertainty: first, speedRelativeUncertainty: second },
      };
    case "terminal": {
      const runs = [...asked.runs, ...(time && depth ? terminalRun(time, depth, asked) : [])];
      if (runs.length === 0) return null;
      return { ...shared, method, runs, netWeightRelativeUncertainty: first, depthRelativeUncertainty: second };
    }
  }
}

function timedRuns({ force, speed, distance, time }: Columns, { by, alternates }: FitAsked) {
  return (force as readonly number[]).map((thrust, i) => ({
    thrust,
    ...(by === "speed" ? { speed: speed![i]! } : { distance: distance![i]!, duration: time![i]! }),
    ...(alternates && { way: i % 2 === 0 ? ("there" as const) : ("back" as const) }),
  }));
}

/** The run on the table; without its net weight it says nothing yet. */
function terminalRun(time: number[], depth: number[], { netWeight, steadyFrom }: FitAsked): TerminalData["runs"] {
  if (netWeight === null) return [];
  return [{ netWeight, time, depth, ...(steadyFrom !== null && { steadyFrom }) }];
}

/** What was asked for data that is kept already, so that it can be changed. */
export function askedOf(data: DragFitData, mass: { readonly value: number; readonly doubt: number }): FitAsked {
  const base: FitAsked = { ...FRESH_ASK, method: data.method, mass: mass.value, massDoubt: mass.doubt };
  const noted = { ...base, note: data.note ?? "" };
  switch (data.method) {
    case "tow":
      return {
        ...{ ...noted, hasLinear: data.model === "quadraticLinear" },
        doubts: [data.speedRelativeUncertainty, data.forceRelativeUncertainty],
      };
    case "coastDown":
      return {
        ...{ ...noted, by: data.measured, hasLinear: data.model === "quadraticLinear" },
        ...{ mass: data.mass.value, massDoubt: data.mass.standardUncertainty },
        doubts: [data.valuesRelativeUncertainty, 0.02],
      };
    case "timedRuns":
      return {
        ...{ ...noted, by: data.runs[0]?.speed === undefined ? "distance" : "speed" },
        alternates: data.runs.some(({ way }) => way !== undefined),
        doubts: [data.thrustRelativeUncertainty, data.speedRelativeUncertainty],
      };
    case "terminal":
      return {
        ...{ ...noted, runs: data.runs },
        doubts: [data.netWeightRelativeUncertainty, data.depthRelativeUncertainty],
      };
  }
}

/** Kept data with what is asked besides the log changed, where no new log was given. */
export function withAsked(data: DragFitData, asked: FitAsked, density: number): DragFitData {
  if (data.method !== asked.method) return data;
  if (data.method === "timedRuns") {
    const [thrustRelativeUncertainty, speedRelativeUncertainty] = asked.doubts;
    return { ...data, density, thrustRelativeUncertainty, speedRelativeUncertainty };
  }
  if (data.method === "tow") {
    const { speed, force, time } = data;
    return dataOf({ speed, force, ...(time && { time }) }, asked, density) ?? data;
  }
  // What a log of a coast-down holds does not change by asking.
  if (data.method === "coastDown") {
    return dataOf({ time: data.time, [data.measured]: data.values }, { ...asked, by: data.measured }, density) ?? data;
  }
  return dataOf({}, asked, density) ?? data;
}

import { useMemo, useState } from "preact/hooks";
import type { LogTable } from "../../../../../shared/log/logTable.ts";
import { readLog } from "../../../../../shared/log/readLog.ts";
import type { DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { sentenceOf } from "../../../../api/apiProblem.ts";
import { Caution } from "../../../../app/Caution.tsx";
import { Dialog } from "../../../../app/Dialog.tsx";
import { Warnings } from "../../../../app/Warnings.tsx";
import type { DragWay } from "../drag/directions.ts";
import { waterProperties } from "../drag/dragState.ts";
import { withAxisAddedMass } from "./addedMassOf.ts";
import { ColumnChoices } from "./ColumnChoices.tsx";
import { FitFields } from "./FitFields.tsx";
import { FitResult } from "./FitResult.tsx";
import { askedOf, type FitAsked, FRESH_ASK, readFit, withAsked } from "./fitDraft.ts";
import { TableInput } from "./TableInput.tsx";

interface FitDialogProps {
  readonly title: string;
  readonly build: VehicleBuild;
  readonly way: DragWay;
  /** What is kept already; null for a new fit. */
  readonly data: DragFitData | null;
  readonly onKeep: (data: DragFitData) => Promise<boolean>;
  readonly onClose: () => void;
}

/** A log or a table read into a drag: columns with reasons, a picture of measured against fitted, and what it comes to. */
export function FitDialog({ title, build, way, data, onKeep, onClose }: FitDialogProps) {
  const [asked, setAsked] = useState(() => firstAsked(build, way, data));
  const [bytes, setBytes] = useState<Uint8Array | null>(null);
  const { table, unread } = useMemo(() => tableOf(bytes), [bytes]);
  const density = waterProperties.value?.density ?? 1000;
  const read = useMemo(() => readFit(table, asked, density), [table, asked, density]);
  const made = read.data ?? (data !== null && table === null ? withAsked(data, asked, density) : null);
  const shown = useMemo(() => made && withAxisAddedMass(made, build, way), [made]);
  const keep = async () => {
    if (made !== null && (await onKeep(made))) onClose();
  };
  const set = (change: Partial<FitAsked>) => setAsked((now) => ({ ...now, ...change }));
  return (
    <Dialog title={title} onClose={onClose}>
      <div class="build-fit">
        <FitFields
          asked={asked}
          set={set}
          hasTime={read.uses.some(({ quantity }) => quantity === "time")}
          canChangeMethod={data === null || table !== null || asked.runs.length === 0}
        />
        <TableInput key={asked.method} method={asked.method} hasKept={data !== null} onTable={setBytes} />
        {(unread || read.problem) && <p class="warning">{unread || read.problem}</p>}
        {table && <ColumnChoices {...{ table, asked, set }} uses={read.uses} />}
        <Warnings items={read.warnings} />
        {read.thinned && (
          <p class="hint">
            {read.thinned.from} rows are kept as {read.thinned.to}: neighbours are averaged, which loses nothing that
            the fit could use.
          </p>
        )}
        {asked.method === "terminal" && (
          <RunsRead {...{ asked, set }} canAdd={table !== null && asked.netWeight !== null} read={read.data} />
        )}
        {shown && <FitResult data={shown} />}
        <Caution about="drive" />
        <div class="row form-buttons">
          <button type="button" class="primary" disabled={made === null} onClick={() => void keep()}>
            Use this drag
          </button>
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </div>
      </div>
    </Dialog>
  );
}

/** What is asked before anything is typed. */
function firstAsked({ mass }: VehicleBuild, way: DragWay, data: DragFitData | null): FitAsked {
  const known = { value: mass.value, doubt: mass.standardUncertainty };
  if (data !== null) return askedOf(data, known);
  const isVertical = way === "down" || way === "up";
  return { ...FRESH_ASK, method: isVertical ? "terminal" : "tow", mass: known.value, massDoubt: known.doubt };
}

function tableOf(bytes: Uint8Array | null): { readonly table: LogTable | null; readonly unread: string } {
  if (bytes === null || bytes.length === 0) return { table: null, unread: "" };
  try {
    return { table: readLog(bytes, "table"), unread: "" };
  } catch (thrown) {
    return { table: null, unread: sentenceOf(thrown) };
  }
}

interface RunsReadProps {
  readonly asked: FitAsked;
  readonly set: (change: Partial<FitAsked>) => void;
  readonly canAdd: boolean;
  readonly read: DragFitData | null;
}

/** Dives at terminal speed: each with its own net weight. */
function RunsRead({ asked, set, canAdd, read }: RunsReadProps) {
  return (
    <>
      {asked.runs.length > 0 && (
        <ul class="build-runs">
          {asked.runs.map(({ netWeight, time }, at) => (
            <li key={at}>
              Run {at + 1}: net weight {netWeight} N, {time.length} rows{" "}
              <button
                type="button"
                class="quiet"
                aria-label={`Remove run ${at + 1}`}
                onClick={() => set({ runs: asked.runs.toSpliced(at, 1) })}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <button
        type="button"
        disabled={!canAdd || read?.method !== "terminal"}
        onClick={() => read?.method === "terminal" && set({ runs: read.runs, netWeight: null, steadyFrom: null })}
      >
        Keep this run and read another
      </button>
    </>
  );
}

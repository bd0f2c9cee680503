import { useState } from "preact/hooks";
import { ABOUT_WEIGHTS } from "../../app/cautionWords.ts";
import { Dialog } from "../../app/Dialog.tsx";
import { addPart, editPart, removePart } from "../../app/edits.ts";
import { partOf, parts, runs } from "../../app/session.ts";
import { InstrumentForm } from "./InstrumentForm.tsx";
import { type InstrumentRow, instrumentRows, useOf } from "./instrumentsModel.ts";
import "./instruments.css";

/** The measuring instruments of the stand, each with what its calibration is worth. */
export function InstrumentsSection() {
  // Null: no form is open; an empty id: a new instrument.
  const [open, setOpen] = useState<string | null>(null);
  const rows = instrumentRows(parts.value.instruments, runs.value);
  return (
    <section class="parts-kind" aria-labelledby="parts-instruments">
      <div class="parts-head">
        <h2 id="parts-instruments">Instruments</h2>
        <button type="button" onClick={() => setOpen("")}>
          Add an instrument
        </button>
      </div>
      <p class="hint">
        Load cell, lever, torque arm, voltage divider, current sensor, tachometer: calibrated once, shared by all runs
        that name them under Bench. A new calibration reduces those runs again.
      </p>
      {rows.length > 0 && (
        <ul class="instruments">
          {rows.map((row) => (
            <InstrumentCard key={row.id} row={row} onEdit={() => setOpen(row.id)} />
          ))}
        </ul>
      )}
      {open !== null && <EditDialog id={open} onClose={() => setOpen(null)} />}
    </section>
  );
}

function InstrumentCard({ row, onEdit }: { readonly row: InstrumentRow; readonly onEdit: () => void }) {
  const { id, name, channel, method, look, note, use } = row;
  const worth = look.warnings.length;
  return (
    <li class="card">
      <h3>{name}</h3>
      <p>{look.sentence}</p>
      <p class="hint">
        {channel}. {method}. {use === "" ? "In no run yet." : `In ${use}.`}
        {worth > 0 && ` ${worth === 1 ? "One thing" : `${worth} things`} to mend: open it to see.`} {note}
      </p>
      <div class="parts-buttons">
        <button type="button" class="quiet" aria-label={`Open ${name}`} onClick={onEdit}>
          Open
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Delete ${name}`}
          disabled={use !== ""}
          title={use === "" ? undefined : `In ${use}: choose another there first`}
          onClick={() => void removePart("instruments", id)}
        >
          Delete
        </button>
      </div>
    </li>
  );
}

function EditDialog({ id, onClose }: { readonly id: string; readonly onClose: () => void }) {
  const instrument = id === "" ? null : (partOf("instruments", id)?.document ?? null);
  const close = (stored: boolean) => {
    if (stored) onClose();
  };
  return (
    <Dialog title={instrument ? instrument.name : "Add an instrument"} onClose={onClose}>
      <p class="hint">{ABOUT_WEIGHTS}</p>
      <InstrumentForm
        instrument={instrument}
        use={useOf(id, runs.value)}
        onCancel={onClose}
        onSave={(document) =>
          void (instrument ? editPart("instruments", id, document) : addPart("instruments", document)).then(close)
        }
      />
    </Dialog>
  );
}

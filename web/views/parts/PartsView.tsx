import { useState } from "preact/hooks";
import { partsTableAddress } from "../../api/client.ts";
import { Caution } from "../../app/Caution.tsx";
import { ABOUT_PACKS } from "../../app/cautionWords.ts";
import { Dialog } from "../../app/Dialog.tsx";
import { addPart, editPart, removePart } from "../../app/edits.ts";
import { Screen } from "../../app/Screen.tsx";
import { openProjectId, partOf, parts, runs } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { InstrumentsSection } from "../instruments/InstrumentsSection.tsx";
import { BladeShapeDialog, shapedPropellerId } from "./blade/BladeShapeDialog.tsx";
import { IdentifyDialog } from "./IdentifyDialog.tsx";
import { identifiedMotorId, openIdentification } from "./identifyState.ts";
import { PartForm } from "./PartForm.tsx";
import { type FormKind, KIND_HINTS, KIND_NAMES, type PartList, partsModel } from "./partsModel.ts";
import { ImportDialog } from "./table/ImportDialog.tsx";
import "./parts.css";

interface Editing {
  readonly kind: FormKind;
  /** Null for a new part. */
  readonly id: string | null;
}

export default function PartsView() {
  const [editing, setEditing] = useState<Editing | null>(null);
  const [importing, setImporting] = useState<FormKind | null>(null);
  const model = partsModel(parts.value, runs.value);
  return (
    <Screen question="What can a thruster be built from?" answer={model.answer} tone={model.tone}>
      {model.lists.map((list) => (
        <KindSection
          key={list.kind}
          list={list}
          onEdit={(id) => setEditing({ kind: list.kind, id })}
          onImport={() => setImporting(list.kind)}
        />
      ))}
      <InstrumentsSection />
      <Caution about="parts" />
      {shapedPropellerId.value !== null && <BladeShapeDialog propellerId={shapedPropellerId.value} />}
      {identifiedMotorId.value !== null && <IdentifyDialog motorId={identifiedMotorId.value} />}
      {editing && <EditDialog editing={editing} onClose={() => setEditing(null)} />}
      {importing && <ImportDialog kind={importing} onClose={() => setImporting(null)} />}
    </Screen>
  );
}

interface KindSectionProps {
  readonly list: PartList;
  readonly onEdit: (id: string | null) => void;
  readonly onImport: () => void;
}

function KindSection({ list, onEdit, onImport }: KindSectionProps) {
  const { kind, heading, rows } = list;
  const many = heading.toLowerCase();
  return (
    <section class="parts-kind" aria-labelledby={`parts-${kind}`}>
      <div class="parts-head">
        <h2 id={`parts-${kind}`}>{heading}</h2>
        <div class="row">
          {rows.length > 0 && (
            <a class="button" href={partsTableAddress(openProjectId(), kind)} download={`${kind}.csv`}>
              Save {many} as CSV
            </a>
          )}
          <button type="button" onClick={onImport}>
            Import {many}
          </button>
          <button type="button" onClick={() => onEdit(null)}>
            Add a {KIND_NAMES[kind].one}
          </button>
        </div>
      </div>
      <p class="hint">{KIND_HINTS[kind]}</p>
      {rows.length > 0 && <KindTable list={list} onEdit={onEdit} />}
      {rows.map((row) => (
        <Warnings
          key={row.id}
          title={`To know about ${row.name}`}
          items={row.doubts.map(({ code, message }) => ({ code, message: `${row.name}: ${message}` }))}
        />
      ))}
    </section>
  );
}

function KindTable({ list: { kind, heading, columns, rows }, onEdit }: Omit<KindSectionProps, "onImport">) {
  const used = rows.some(({ use }) => use !== "");
  return (
    <TableBox label={`${heading}, table`}>
      <table>
        <thead>
          <tr>
            <th scope="col">Name</th>
            {columns.map(({ key, label, symbol }) => (
              <th key={key} scope="col">
                {label} {symbol && <PrintedSymbol text={symbol} />}
              </th>
            ))}
            {used && <th scope="col">In use</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {row.name}
                {row.note && <p class="parts-note">{row.note}</p>}
                <PartButtons kind={kind} row={row} onEdit={onEdit} />
              </th>
              {row.cells.map((text, at) => (
                <td key={columns[at]!.key}>{text}</td>
              ))}
              {used && <td>{row.use}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

interface PartButtonsProps {
  readonly kind: FormKind;
  readonly row: PartList["rows"][number];
  readonly onEdit: (id: string) => void;
}

function PartButtons({ kind, row: { id, name }, onEdit }: PartButtonsProps) {
  const button = (words: string, label: string, run: () => void) => (
    <button type="button" class="quiet" aria-label={label} onClick={run}>
      {words}
    </button>
  );
  return (
    <div class="parts-buttons">
      {button("Change", `Change ${name}`, () => onEdit(id))}
      {button("Delete", `Delete ${name}`, () => void removePart(kind, id))}
      {kind === "propellers" &&
        button("Blade shape", `Blade shape of ${name}`, () => {
          shapedPropellerId.value = id;
        })}
      {kind === "motors" && button("Identify from runs", `Identify from runs: ${name}`, () => openIdentification(id))}
    </div>
  );
}

function EditDialog({ editing: { kind, id }, onClose }: { readonly editing: Editing; readonly onClose: () => void }) {
  const part = id === null ? undefined : partOf(kind, id)?.document;
  const close = (stored: boolean) => {
    if (stored) onClose();
  };
  return (
    <Dialog title={part ? `Change ${part.name}` : `Add a ${KIND_NAMES[kind].one}`} onClose={onClose}>
      <p class="hint">Write each quantity with its unit: 76 mm, 900 rpm/V, 85 mΩ.</p>
      {kind === "packs" && <p class="hint">{ABOUT_PACKS}</p>}
      <PartForm
        kind={kind}
        part={part ?? null}
        voltage={parts.value.packs[0]?.document.openCircuitVoltage}
        onCancel={onClose}
        onSave={(document) => void (id === null ? addPart(kind, document) : editPart(kind, id, document)).then(close)}
      />
    </Dialog>
  );
}

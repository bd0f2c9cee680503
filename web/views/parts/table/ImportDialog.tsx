import type { ComponentProps } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { PartsTableChoices } from "../../../../shared/model/partsTable.ts";
import { textOfBytes } from "../../../../shared/partsTable/tableText.ts";
import { InputProblem } from "../../../../shared/quantity/problem.ts";
import { Dialog } from "../../../app/Dialog.tsx";
import { importParts } from "../../../app/edits.ts";
import { parts } from "../../../app/session.ts";
import { FileDrop } from "../../../forms/FileDrop.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import { type FormKind, KIND_NAMES } from "../partsModel.ts";
import { ImportColumns } from "./ImportColumns.tsx";
import { ImportOutcome } from "./ImportOutcome.tsx";
import { ImportRows } from "./ImportRows.tsx";
import { ImportUnits } from "./ImportUnits.tsx";
import { NO_CHOICES, tableLook } from "./tableModel.ts";
import "./table.css";

interface ImportDialogProps {
  readonly kind: FormKind;
  readonly onClose: () => void;
}

/** A table of parts, from any spreadsheet or file: what its columns hold, what its rows become, and then the import. */
export function ImportDialog({ kind, onClose }: ImportDialogProps) {
  const { source, choices, look, refused, setChoices, take, takeFile } = useTable(kind);
  return (
    <Dialog title={`Import ${KIND_NAMES[kind].many.toLowerCase()} from a table`} onClose={onClose}>
      <div class="parts-import">
        <p class="hint">
          One row a {KIND_NAMES[kind].one}, with a head: name, then whatever the table has, in any order and unit.
          Nothing is stored before you have seen what becomes of it.
        </p>
        <FileDrop
          label={source.text === "" ? "Drop a table here" : source.name}
          accept=".csv,.tsv,.txt,text/*"
          onFiles={([file]) => file && void takeFile(file)}
        />
        <TextField
          label="Or paste it"
          value={source.text}
          lines={look.state === "table" ? 3 : 6}
          onChange={(text) => take("the table", text)}
        />
        {refused !== "" && (
          <p class="field-message" role="alert">
            {refused}
          </p>
        )}
        {look.state === "table" && (
          <Preview
            {...{ kind, choices }}
            preview={look.preview}
            onChoices={setChoices}
            onCancel={onClose}
            onImport={(label) =>
              void importParts(kind, label, { ...source, choices }).then((done) => done && onClose())
            }
          />
        )}
      </div>
    </Dialog>
  );
}

/** The table in hand, what a person chose of it, and what it looks like then. */
function useTable(kind: FormKind) {
  const [source, setSource] = useState({ name: "the table", text: "" });
  const [choices, setChoices] = useState<PartsTableChoices>(NO_CHOICES);
  const [unread, setUnread] = useState("");
  const stored = parts.value[kind];
  const voltage = parts.value.packs[0]?.document.openCircuitVoltage;
  const look = useMemo(
    () => tableLook(source.text, { kind, name: source.name, choices, stored, voltage }),
    [source, choices, stored, voltage],
  );
  const take = (name: string, text: string) => {
    setSource({ name, text });
    setChoices(NO_CHOICES);
    setUnread("");
  };
  const takeFile = async (file: File) => {
    try {
      take(file.name, textOfBytes(new Uint8Array(await file.arrayBuffer()), file.name));
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      take(file.name, "");
      setUnread(thrown.message);
    }
  };
  const refused = unread || (look.state === "refused" ? look.why : "");
  return { source, choices, look, refused, setChoices, take, takeFile };
}

/** What the table becomes, and what is asked of it before. */
function Preview({ onCancel, onImport, ...part }: ComponentProps<typeof ImportOutcome>) {
  return (
    <>
      <ImportUnits {...part} />
      <ImportColumns {...part} />
      <ImportRows {...part} />
      <ImportOutcome {...part} onCancel={onCancel} onImport={onImport} />
    </>
  );
}
